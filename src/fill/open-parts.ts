import type { Vec3 } from '../geometry/index.ts';
import { type Cells, cellAt, middleOf, sides, wall } from './cells.ts';
import { nearestPoints } from './clearance.ts';

/** In `OpenParts.part`: not open. */
export const notOpen = -1;

/** Where a ball as wide as metal and air need to pass each other finds room. */
export interface OpenParts {
  /** Number of the open part a cell belongs to, or `notOpen`. */
  readonly part: Int32Array;
  readonly parts: number;
  /** How far a cell is from what is open, mm; 0 and less within. */
  readonly beyond: Float32Array;
}

/** An open part is too small to be one where its widest ball is less than so many needed ones, and it than so many across. */
const smallWidest = 1.3;
const smallAcross = 6;

/**
 * Morphological opening (Serra, Image Analysis and Mathematical Morphology, 1982) by balls of `needed` mm, which differs
 * from place to place: their middles are the cells with so much clearance, and all within reach of one is open. Small
 * parts are taken for widenings of a neck.
 */
export function openParts(cells: Cells, clearance: Float32Array, needed: Float32Array): OpenParts {
  const { count, cell, at, low, beside } = cells;
  const middles = new Float32Array(3 * count).fill(Number.NaN);
  for (let c = 0; c < count; c++)
    if (clearance[c] >= needed[c])
      for (let x = 0; x < 3; x++) middles[3 * c + x] = low[x] + at[3 * c + x] * cell;
  const beyond = nearestPoints(cells, middles);
  for (let c = 0; c < count; c++) beyond[c] -= needed[c];
  const part = new Int32Array(count).fill(notOpen);
  const isOpen = (c: number): boolean => beyond[c] <= cell / 2;
  const members = new Int32Array(count);
  let parts = 0;
  for (let first = 0; first < count; first++) {
    if (part[first] !== notOpen || !isOpen(first)) continue;
    part[first] = parts;
    members[0] = first;
    let found = 1;
    for (let k = 0; k < found; k++)
      for (let s = sides * members[k]; s < sides * members[k] + sides; s++) {
        const n = beside[s];
        if (n === wall || part[n] !== notOpen || !isOpen(n)) continue;
        part[n] = parts;
        members[found++] = n;
      }
    const all = members.subarray(0, found);
    if (!isSmall(cells, all, clearance, needed)) parts++;
    else for (const c of all) part[c] = small;
  }
  for (let c = 0; c < count; c++)
    if (part[c] === small) {
      part[c] = notOpen;
      // As deep as can be: a neck, whatever is round it.
      beyond[c] = Number.POSITIVE_INFINITY;
    }
  return { part, parts, beyond };
}

const small = -2;

function isSmall(
  { at, cell }: Cells,
  members: Int32Array,
  clearance: Float32Array,
  needed: Float32Array,
): boolean {
  const most = smallAcross * needed[members[0]];
  const least: number[] = [...at.subarray(3 * members[0], 3 * members[0] + 3)];
  const greatest = [...least];
  for (const c of members) {
    if (clearance[c] >= smallWidest * needed[c]) return false;
    for (let x = 0; x < 3; x++) {
      const value = at[3 * c + x];
      if (value < least[x]) least[x] = value;
      if (value > greatest[x]) greatest[x] = value;
    }
  }
  return Math.hypot(...greatest.map((value, x) => value - least[x] + 1)) * cell < most;
}

/** For each cell the open part nearest to it along the room, `notOpen` where there is none: parts grow at one pace. */
export function nearestParts({ count, beside }: Cells, { part }: OpenParts): Int32Array {
  const nearest = part.slice();
  const queue = new Int32Array(count);
  let [head, tail] = [0, 0];
  for (let c = 0; c < count; c++) if (part[c] !== notOpen) queue[tail++] = c;
  while (head < tail) {
    const c = queue[head++];
    for (let s = sides * c; s < sides * c + sides; s++) {
      const n = beside[s];
      if (n === wall || nearest[n] !== notOpen) continue;
      nearest[n] = nearest[c];
      queue[tail++] = n;
    }
  }
  return nearest;
}

/** Length of the straight way from a cell to the wall in a direction (of length 1), mm. */
export function reachAlong(cells: Cells, c: number, direction: Vec3): number {
  const { cell, walls } = cells;
  const from = middleOf(cells, c);
  const at = (far: number): Vec3 => [
    from[0] + far * direction[0],
    from[1] + far * direction[1],
    from[2] + far * direction[2],
  ];
  let [last, far] = [c, 0];
  for (let next = cellAt(cells, at(cell / 4)); next !== wall; next = cellAt(cells, at(far + cell / 4))) {
    last = next;
    far += cell / 4;
  }
  // The nearest of the walls that cut the lines through the last cell, as the way comes to it.
  const middle = middleOf(cells, last);
  let reach = Number.POSITIVE_INFINITY;
  for (let axis = 0; axis < 3; axis++) {
    const offset = walls[3 * last + axis];
    if (offset * direction[axis] > 0)
      reach = Math.min(reach, (middle[axis] + offset - from[axis]) / direction[axis]);
  }
  return Number.isFinite(reach) ? Math.max(0, reach) : far;
}
