import { toDegrees } from '../geometry/index.ts';

/** A mass in g at a place in the mold frame, mm; negative for what is taken away. */
export interface PointMass {
  readonly massG: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** An unbalance vector, g.mm. */
export type Unbalance = readonly [x: number, y: number];

/** Static unbalance: the sum of m r over all masses, g.mm. */
export const staticUnbalance = (masses: readonly PointMass[]): Unbalance => [
  masses.reduce((sum, { massG, x }) => sum + massG * x, 0),
  masses.reduce((sum, { massG, y }) => sum + massG * y, 0),
];

/**
 * Unbalance carried to two planes square to the axis at heights `a` and `b` (mm), g.mm: each mass is shared by the
 * lever rule, so that static unbalance and couple stay the same (ISO 21940-11, rigid rotors in two planes).
 */
export function planeUnbalances(
  masses: readonly PointMass[],
  a: number,
  b: number,
): { readonly a: Unbalance; readonly b: Unbalance } {
  if (!(a !== b)) throw new RangeError('planeUnbalances: the planes are one');
  const share = (m: PointMass, far: number, near: number): PointMass => ({
    ...m,
    massG: (m.massG * (far - m.z)) / (far - near),
  });
  return {
    a: staticUnbalance(masses.map((one) => share(one, b, a))),
    b: staticUnbalance(masses.map((one) => share(one, a, b))),
  };
}

/**
 * Permissible unbalance in g.mm: U = 1000 G m / omega = 30000 G m / (pi n), G the balance grade in mm/s, m the mass of the whole rotor in
 * kg (ISO 21940-11:2016, formerly ISO 1940-1).
 */
export const permissibleUnbalance = (gradeMmS: number, massKg: number, speedRpm: number): number =>
  (30_000 * gradeMmS * massKg) / (Math.PI * speedRpm);

/**
 * The share of it allowed in the planes `a` and `b` for a center of mass at `center` (heights in mm): by the lever
 * rule, held between 0.3 and 0.7 (ISO 21940-11).
 */
export function planeShares(
  center: number,
  a: number,
  b: number,
): { readonly a: number; readonly b: number } {
  const within = (share: number): number => Math.min(0.7, Math.max(0.3, share));
  return { a: within((b - center) / (b - a)), b: within((center - a) / (b - a)) };
}

/** Length of an unbalance vector, g.mm. */
export const sizeOf = ([x, y]: Unbalance): number => Math.hypot(x, y);

/** Its angle in degrees, 0 to 360, counter-clockwise from +x; 0 for none. */
export function angleOf([x, y]: Unbalance): number {
  const degrees = toDegrees(Math.atan2(y, x));
  return degrees < 0 ? degrees + 360 : degrees + 0;
}
