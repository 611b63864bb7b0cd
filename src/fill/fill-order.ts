import { type Cells, sides, wall } from './cells.ts';
import type { Ranks } from './potential.ts';
import { RankQueue } from './rank-queue.ts';

/** In `Filling`: metal never comes there. */
export const never = -1;

/** When metal comes, counted in cells filled before; `never` where the room has no way from a source. */
export interface Filling {
  readonly filled: Int32Array;
  /** When metal first runs over a cell, at the latest when it is filled. */
  readonly wet: Int32Array;
  /** Cells in the order they are filled. */
  readonly sequence: Int32Array;
}

/**
 * The order in which one stream fills a room: metal runs down the steepest way, fills the hollow it comes to up to the
 * lowest rim and spills over that (fill-spill-merge, Barnes, Callaghan, Wickert, Earth Surf. Dynam. 9, 2021, with a
 * priority queue, Barnes, Lehman, Mulla, Comput. Geosci. 62, 2014). Each time the lowest cell that metal has come to is
 * asked: one with lower neighbors not yet come to is only wetted, and the steepest of them is come to; any other is filled.
 */
export function fillFrom(cells: Cells, { rank, byRank }: Ranks, sources: readonly number[]): Filling {
  const { beside, count } = cells;
  const filled = new Int32Array(count).fill(never);
  const wet = new Int32Array(count).fill(never);
  const sequence = new Int32Array(count);
  const reached = new Uint8Array(count);
  const queue = new RankQueue(count);
  let time = 0;
  for (const source of sources) {
    reached[source] = 1;
    queue.add(rank[source]);
  }
  for (let lowest = queue.least(); lowest >= 0; lowest = queue.least()) {
    const c = byRank[lowest];
    let steepest = lowest;
    for (let s = sides * c; s < sides * c + sides; s++) {
      const n = beside[s];
      if (n !== wall && reached[n] === 0 && rank[n] < steepest) steepest = rank[n];
    }
    if (wet[c] === never) wet[c] = time;
    if (steepest < lowest) {
      reached[byRank[steepest]] = 1;
      queue.add(steepest);
      continue;
    }
    queue.remove(lowest);
    filled[c] = time;
    sequence[time++] = c;
    for (let s = sides * c; s < sides * c + sides; s++) {
      const n = beside[s];
      if (n === wall || reached[n] !== 0) continue;
      reached[n] = 1;
      queue.add(rank[n]);
    }
  }
  return { filled, wet, sequence: sequence.subarray(0, time) };
}
