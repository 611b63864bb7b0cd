import type { Cells } from './cells.ts';
import { ranksOf, sortedBy } from './sort.ts';

/** How the mold turns: rpm, and gravity along -z in m/s2. */
export interface SpinField {
  readonly speedRpm: number;
  readonly gravity: number;
}

/** Angular speed squared, 1/s2. */
export const omegaSquared = ({ speedRpm }: SpinField): number => ((speedRpm * Math.PI) / 30) ** 2;

/**
 * Potential of a liquid at rest in the frame of the disc (-omega^2 r^2 / 2 + g z) over omega^2 / 2, in mm2: less is
 * lower. So without gravity it does not depend on the speed.
 */
export const potentialAt = (field: SpinField, x: number, y: number, z: number): number =>
  lift(field) * z - x * x - y * y;

const lift = (field: SpinField): number => (2000 * field.gravity) / omegaSquared(field);

/** Pressure (Pa) of metal at one potential under a free surface at another, both in mm2. */
export const pressureUnder = (
  field: SpinField,
  densityKgM3: number,
  head: number,
  potential: number,
): number => 0.5e-6 * densityKgM3 * omegaSquared(field) * (head - potential);

/** What pulls on the metal at a place, m/s2: omega^2 r outward, g down. */
export const pullAt = (field: SpinField, x: number, y: number): number =>
  Math.hypot(omegaSquared(field) * Math.hypot(x, y) * 1e-3, field.gravity);

/** Cells by their potential, lowest first; no two share a rank, equal potentials by number. */
export interface Ranks {
  readonly potential: Float32Array;
  readonly rank: Int32Array;
  readonly byRank: Int32Array;
}

const steps = 0xffffffff;

export function rankCells({ at, low, cell, count }: Cells, field: SpinField): Ranks {
  const potential = new Float32Array(count);
  const exact = new Float64Array(count);
  const rise = lift(field);
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let c = 0; c < count; c++) {
    const x = low[0] + at[3 * c] * cell;
    const y = low[1] + at[3 * c + 1] * cell;
    const value = rise * (low[2] + at[3 * c + 2] * cell) - x * x - y * y;
    exact[c] = value;
    potential[c] = value;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const scale = most > least ? steps / (most - least) : 0;
  const keys = Uint32Array.from(exact, (value) => (value - least) * scale);
  const byRank = sortedBy(keys);
  return { potential, rank: ranksOf(byRank), byRank };
}
