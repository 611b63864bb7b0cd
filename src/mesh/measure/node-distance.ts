import type { Grid } from '../../geometry/index.ts';

/** A rectangle of a grid: `nx` x `ny` nodes from (i0, j0), in rows. */
export interface Window {
  readonly i0: number;
  readonly j0: number;
  readonly nx: number;
  readonly ny: number;
}

/**
 * Distance (mm) from each node of a window to the nearest node of the whole grid that `marks` holds a number for (not
 * NaN); Infinity where it holds none. Exact in the plane to float32: along the columns first, then along the rows the
 * lower envelope of the parabolas that stand on what was found (Felzenszwalb, Huttenlocher, Theory of Computing 8
 * (2012) 415-428).
 */
export function nodeDistances(marks: Float32Array, grid: Grid, window: Window): Float32Array {
  const columns = columnDistances(marks, grid, window);
  const distances = new Float32Array(window.nx * window.ny);
  const envelope = new Envelope(grid.nx);
  for (let j = 0, k = 0; j < window.ny; j++) {
    const row = j * grid.nx;
    envelope.over(columns, row);
    for (let i = window.i0; i < window.i0 + window.nx; i++, k++) {
      if (columns[row + i] > 0) distances[k] = grid.cell * Math.sqrt(envelope.squareOver(i));
    }
  }
  return distances;
}

/** In cells, to the nearest marked node of the same column; Infinity where there is none. Whole rows of the window. */
function columnDistances(marks: Float32Array, { nx, ny }: Grid, { j0, ny: rows }: Window): Float32Array {
  const found = new Float32Array(nx * rows);
  const last = new Float32Array(nx).fill(Number.POSITIVE_INFINITY);
  for (let j = 0; j < j0 + rows; j++) {
    const into = (j - j0) * nx;
    for (let i = 0; i < nx; i++) {
      const mark = marks[j * nx + i];
      last[i] = Number.isNaN(mark) ? last[i] + 1 : 0;
      if (into >= 0) found[into + i] = last[i];
    }
  }
  last.fill(Number.POSITIVE_INFINITY);
  for (let j = ny - 1; j >= j0; j--) {
    const into = (j - j0) * nx;
    for (let i = 0; i < nx; i++) {
      const mark = marks[j * nx + i];
      last[i] = Number.isNaN(mark) ? last[i] + 1 : 0;
      if (j < j0 + rows && last[i] < found[into + i]) found[into + i] = last[i];
    }
  }
  return found;
}

/** The lowest of parabolas of one width along a row, each standing on its node as high as its height squared. */
class Envelope {
  /** Where each parabola that is lowest somewhere stands, how high (squared), and from where on it is lowest. */
  private readonly at: Int32Array;
  private readonly foot: Float64Array;
  private readonly from: Float64Array;
  private count = 0;
  private now = 0;

  constructor(private readonly nodes: number) {
    this.at = new Int32Array(nodes);
    this.foot = new Float64Array(nodes);
    this.from = new Float64Array(nodes);
  }

  /** Takes a row of heights, left to right; infinite ones have no parabola. */
  over(heights: Float32Array, start: number): void {
    const { at, foot, from, nodes } = this;
    let count = 0;
    for (let i = 0; i < nodes; i++) {
      const height = heights[start + i];
      if (height === Number.POSITIVE_INFINITY) continue;
      // Between two others on the ground it is lowest on its own node alone, where nobody asks.
      const between = i > 0 && i < nodes - 1 && heights[start + i - 1] + heights[start + i + 1] === 0;
      if (height === 0 && between) continue;
      const square = height * height;
      let meet = Number.NEGATIVE_INFINITY;
      for (; count > 0; count--) {
        const other = at[count - 1];
        meet = (square - foot[count - 1] + i * i - other * other) / (2 * (i - other));
        if (meet > from[count - 1]) break;
        meet = Number.NEGATIVE_INFINITY;
      }
      at[count] = i;
      foot[count] = square;
      from[count++] = meet;
    }
    this.count = count;
    this.now = 0;
  }

  /** Square of the envelope's height over a node off the ground; to be asked from left to right. */
  squareOver(i: number): number {
    const { at, foot, from, count } = this;
    if (count === 0) return Number.POSITIVE_INFINITY;
    let { now } = this;
    while (now + 1 < count && from[now + 1] <= i) now++;
    this.now = now;
    const across = i - at[now];
    return across * across + foot[now];
  }
}
