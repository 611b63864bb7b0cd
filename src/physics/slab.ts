/**
 * Heat conduction across a slab heated alike from both faces. x runs from the middle (0) to a face (1), in half
 * thicknesses; Fo = diffusivity time / half thickness^2.
 *
 * Each face exchanges heat with its surroundings through a film (Biot number Bi = h L / k) and carries a lumped
 * capacity, a lid of even temperature: m = (lid's heat capacity per area) / (rho c L). With no film resistance
 * (Bi infinite) faces have the surroundings' temperature and the lid does not matter.
 *
 * Exact: separation of variables gives modes cos(zeta x) with zeta tan(zeta) = Bi - m zeta^2, orthogonal with a point
 * mass m at the face. For m = 0 these are the modes of Incropera, Fundamentals of Heat and Mass Transfer, sec. 5.5,
 * and Cengel, Heat and Mass Transfer, ch. 4; the lumped face is in Carslaw and Jaeger, Conduction of Heat in Solids,
 * on boundaries in contact with a well-stirred fluid or perfect conductor (section from memory).
 */
export interface SlabFaces {
  readonly biot: number;
  readonly lumped: number;
}

/** Ideal platens: the faces have their temperature at once. */
export const fixedFaces: SlabFaces = { biot: Number.POSITIVE_INFINITY, lumped: 0 };

/** One mode: its root, and its share of an even temperature of 1. */
export interface Mode {
  readonly zeta: number;
  readonly share: number;
}

/** Enough for Fo down to 0.0005: the next one is then damped by e^-30 and more. */
const modeCount = 80;

/** The first modes, in order. Throws RangeError where Bi is not more than 0 or the lumped capacity is negative. */
export function slabModes(faces: SlabFaces, count = modeCount): Mode[] {
  const { biot, lumped } = faces;
  if (!(biot > 0) || !(lumped >= 0)) throw new RangeError(`no slab with Bi ${biot} and lumped ${lumped}`);
  return Array.from({ length: count }, (_, n) => {
    const zeta = root(faces, n);
    const [s, c] = [Math.sin(zeta), Math.cos(zeta)];
    const fixed = biot === Number.POSITIVE_INFINITY;
    const mass = fixed ? 0 : lumped;
    const even = s / zeta + mass * c;
    const norm = 0.5 + (s * c) / (2 * zeta) + mass * c * c;
    return { zeta, share: even / norm };
  });
}

/**
 * The n-th root (from 0) of zeta tan(zeta) = Bi - m zeta^2, by bisection. Between its poles the left side rises through
 * all values and the right side falls: one root in ((n - 1/2) pi, (n + 1/2) pi), the first in (0, pi/2).
 */
function root({ biot, lumped }: SlabFaces, n: number): number {
  const high = (n + 0.5) * Math.PI;
  if (biot === Number.POSITIVE_INFINITY) return high;
  let [a, b] = [n === 0 ? 0 : (n - 0.5) * Math.PI, high];
  const sign = n % 2 === 0 ? 1 : -1;
  for (let i = 0; i < 100; i++) {
    const z = (a + b) / 2;
    // Multiplied by cos(zeta), whose sign is the same all over the interval, so that there are no poles.
    const over = sign * (z * Math.sin(z) - (biot - lumped * z * z) * Math.cos(z));
    if (over > 0) b = z;
    else a = z;
  }
  return (a + b) / 2;
}

/** What is left at x of an even temperature difference of 1 after the surroundings change by 1: 1 at Fo = 0. */
export const slabLeft = (modes: readonly Mode[], fo: number, x: number): number =>
  modes.reduce((sum, { zeta, share }) => sum + share * Math.exp(-zeta * zeta * fo) * Math.cos(zeta * x), 0);

/** The Fo at which `left` is left at the middle, by bisection; for 0 < left < 1. */
export function fourierFor(modes: readonly Mode[], left: number): number {
  let [a, b] = [0.001, 1];
  while (slabLeft(modes, b, 0) > left) b *= 2;
  for (let i = 0; i < 80; i++) {
    const fo = (a + b) / 2;
    if (slabLeft(modes, fo, 0) > left) a = fo;
    else b = fo;
  }
  return (a + b) / 2;
}
