/**
 * Bond number (by the half width a meniscus can tilt over) up to which heavy metal stands over air in a leg and stays:
 * contact angles in degrees, measured in the metal.
 *
 * `tube`: round tube, limit of a meniscus against tilting, solved numerically from the equation of Young and Laplace;
 * at 90 degrees the square of 1.8412, first zero of J1'. `plane`: between two walls, pi^2 / 4 at 90 degrees and solved the
 * same way at 110; at 145 and 160 two-phase flow runs exchange metal and air sooner than that limit says, and the values
 * lie between their brackets (`tests/published/fill/runs.ts`).
 */
const limits: readonly { readonly angle: number; readonly tube: number; readonly plane: number }[] = [
  { angle: 90, tube: 3.39, plane: 2.467 },
  { angle: 110, tube: 3.222, plane: 2.356 },
  { angle: 145, tube: 2.226, plane: 1.3 },
  { angle: 160, tube: 1.629, plane: 0.97 },
];

/** Contact angle of liquid tin on what does not wet: the table's third row, at which the usual Bond number is meant. */
export const usualAngle = 145;

/** How much more holds a meniscus on the sharp edge of a mouth than inside a leg; by two-phase flow runs. */
const edgeFactor = 2;

/** One assumption about what holds a meniscus: Bond number in a round leg at the usual angle, and the contact angle, degrees. */
export interface LockRule {
  readonly bond: number;
  readonly angle: number;
}

/**
 * What is not known is assumed in several ways; the first is the usual one. Range by two-phase flow runs: its upper end is
 * what a mouth's edge holds (a square leg of 4.0 is locked there, one of 5.8 is not), and inside a leg half of that holds.
 */
export const usualBond = 2.3;
export const leastBond = 1.3;
export const mostBond = 5;

function limitAt(angle: number): { readonly tube: number; readonly plane: number } {
  const over = limits.findIndex((row) => row.angle >= angle);
  if (over < 0) return limits[limits.length - 1];
  if (over === 0) return limits[0];
  const [a, b] = [limits[over - 1], limits[over]];
  const share = (angle - a.angle) / (b.angle - a.angle);
  return { tube: a.tube + share * (b.tube - a.tube), plane: a.plane + share * (b.plane - a.plane) };
}

/** Two limits of the Bond number by an opening's larger half width: inside a leg, and on the edge of its mouth. */
export interface LockLimits {
  readonly leg: number;
  readonly edge: number;
}

/**
 * Limits for an opening whose smaller half width is `flatness` times its larger one: 1 is round or square, 0 a gap between
 * two walls. In between along a straight line: our own choice.
 */
export function lockLimits({ bond, angle }: LockRule, flatness: number): LockLimits {
  const at = limitAt(angle);
  const usual = limitAt(usualAngle);
  const shape = (at.plane + (at.tube - at.plane) * Math.min(1, flatness)) / usual.tube;
  const leg = Math.min(bond, mostBond / edgeFactor) * shape;
  return { leg, edge: edgeFactor * leg };
}
