import type { Grid } from '../../geometry/index.ts';
import type { Intervals } from './intervals.ts';

/**
 * Evens heights at some nodes by `times` steps of diffusion (half way to the mean of the four neighbors), put back
 * into their intervals after each step. With `among` only these nodes are looked at, so that nothing flows in from
 * beside them. In place.
 */
export function diffuse(
  heights: Float32Array,
  nodes: readonly number[],
  { nx }: Grid,
  { lo, hi }: Intervals,
  times: number,
  among = false,
): void {
  const taken = among ? new Uint8Array(heights.length) : undefined;
  if (taken) for (const k of nodes) taken[k] = 1;
  const next = new Float32Array(nodes.length);
  for (let time = 0; time < times; time++) {
    for (let n = 0; n < nodes.length; n++) {
      const k = nodes[n];
      const mean = taken
        ? meanAmong(heights, taken, k, nx)
        : (heights[k - 1] + heights[k + 1] + heights[k - nx] + heights[k + nx]) / 4;
      next[n] = Math.min(Math.max((heights[k] + mean) / 2, lo[k]), hi[k]);
    }
    for (let n = 0; n < nodes.length; n++) heights[nodes[n]] = next[n];
  }
}

function meanAmong(heights: Float32Array, taken: Uint8Array, k: number, nx: number): number {
  let sum = 0;
  let count = 0;
  for (const neighbor of [k - 1, k + 1, k - nx, k + nx]) {
    if (!taken[neighbor]) continue;
    sum += heights[neighbor];
    count++;
  }
  return count > 0 ? sum / count : heights[k];
}
