import type { ShownCavity } from '../../fill/index.ts';

type Triple = readonly [number, number, number];

/** The order in which metal comes to the places of a cavity, as the picture takes it: a lattice with a byte for each place. */
export interface FillGrid {
  readonly cell: number;
  /** Middle of the place at (0, 0, 0), mm; places along x, y and z. */
  readonly low: Triple;
  readonly size: Triple;
  /** 1 at first to `lastOrder` at last; `neverFilled` where metal does not come; 0 outside of all cells. */
  readonly order: Uint8Array;
}

export const lastOrder = 254;
export const neverFilled = 255;

/** Places round the cells that take their neighbors' order, so that a wall between two middles has one: a cube's corner is three away. */
const rim = 3;

/** From a cavity's cells and their order. The lattice lies in the mold frame turned back by `turnRad`, as the cells do. */
export function fillGrid({ cell, middles }: ShownCavity, order: Float32Array, turnRad: number): FillGrid {
  const at = latticePlaces(middles, cell, turnRad);
  const [first, size] = extentOf(at);
  const [mx, my, mz] = size.map((n) => n + 2 * rim);
  const bytes = new Uint8Array(mx * my * mz);
  const steps = [1, mx, mx * my];
  for (let c = 0; c < order.length; c++) {
    let place = 0;
    for (let axis = 0; axis < 3; axis++) place += (at[3 * c + axis] - first[axis] + rim) * steps[axis];
    bytes[place] = Number.isNaN(order[c]) ? neverFilled : 1 + Math.round((lastOrder - 1) * order[c]);
  }
  for (let round = 0; round < rim; round++) spread(bytes, steps);
  const [x, y, z] = first.map((n) => (n - rim + 0.5) * cell);
  return { cell, low: [x, y, z], size: [mx, my, mz], order: bytes };
}

/** Whole places of the lattice that cells lie on: it goes through the middle of the frame. */
function latticePlaces(middles: Float32Array, cell: number, turnRad: number): Int32Array {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const at = new Int32Array(middles.length);
  for (let i = 0; i < middles.length; i += 3) {
    const [x, y] = [middles[i], middles[i + 1]];
    at[i] = Math.round((c * x + s * y) / cell - 0.5);
    at[i + 1] = Math.round((c * y - s * x) / cell - 0.5);
    at[i + 2] = Math.round(middles[i + 2] / cell - 0.5);
  }
  return at;
}

function extentOf(at: Int32Array): [Triple, Triple] {
  const low = [at[0], at[1], at[2]];
  const high = [...low];
  for (let i = 0; i < at.length; i++) {
    const axis = i % 3;
    if (at[i] < low[axis]) low[axis] = at[i];
    if (at[i] > high[axis]) high[axis] = at[i];
  }
  const [x, y, z] = low;
  return [
    [x, y, z],
    [high[0] - x + 1, high[1] - y + 1, high[2] - z + 1],
  ];
}

/** Each place without an order takes that of a neighbor that has one. */
function spread(order: Uint8Array, steps: readonly number[]): void {
  const before = order.slice();
  for (let p = 0; p < order.length; p++) {
    if (before[p] === 0) continue;
    for (const step of steps) for (const n of [p - step, p + step]) if (before[n] === 0) order[n] = before[p];
  }
}
