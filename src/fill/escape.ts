import { type Cells, sides, wall } from './cells.ts';
import { RankQueue } from './rank-queue.ts';

/** When each cell is shut to air, as ranks without ties; `bySeal` the cells in that order. */
export interface Seals {
  readonly rank: Int32Array;
  readonly bySeal: Int32Array;
}

/** In `escapeRanks`: no way out from the beginning. */
export const shut = -1;

/**
 * For each cell the rank of the seal that ends the last way out for its air: over all ways to an escape the greatest of
 * the least seal on it, the cell's own among them (Priority-Flood with a plain queue for what is not lower, Barnes,
 * Lehman, Mulla, Comput. Geosci. 62, 2014, turned upside down). Air of a cell is trapped where that comes before its own
 * seal; the cell with that seal is the one that shut it in.
 */
export function escapeRanks(cells: Cells, { rank, bySeal }: Seals, escapes: readonly number[]): Int32Array {
  const { beside, count } = cells;
  const out = new Int32Array(count).fill(shut);
  const queue = new RankQueue(count);
  const stack = new Int32Array(count);
  // The latest seal first.
  const last = count - 1;
  for (const c of escapes) {
    out[c] = rank[c];
    queue.add(last - rank[c]);
  }
  for (let key = queue.least(); key >= 0; key = queue.least()) {
    queue.remove(key);
    const level = last - key;
    let open = 1;
    stack[0] = bySeal[level];
    while (open > 0) {
      const c = stack[--open];
      for (let s = sides * c; s < sides * c + sides; s++) {
        const n = beside[s];
        if (n === wall || out[n] !== shut) continue;
        if (rank[n] >= level) {
          out[n] = level;
          stack[open++] = n;
        } else {
          out[n] = rank[n];
          queue.add(last - rank[n]);
        }
      }
    }
  }
  return out;
}
