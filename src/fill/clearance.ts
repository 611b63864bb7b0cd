import { type Cells, sides, wall } from './cells.ts';

/** More passes than a room of ordinary shape needs; a spiral only gets a little less exact. */
const mostPasses = 24;

/**
 * Carries points from cell to cell until each has the nearest that any cell beside it knows (vector distance transform,
 * Danielsson, Comput. Graph. Image Process. 14, 1980), and gives the distances, mm. `points` holds x, y, z for each cell,
 * NaN where none is known yet, and is filled in.
 */
export function nearestPoints(cells: Cells, points: Float32Array): Float32Array {
  const { count, at, low, cell, beside } = cells;
  const square = new Float32Array(count).fill(Number.POSITIVE_INFINITY);
  const to = (c: number, n: number): number =>
    (points[3 * n] - low[0] - at[3 * c] * cell) ** 2 +
    (points[3 * n + 1] - low[1] - at[3 * c + 1] * cell) ** 2 +
    (points[3 * n + 2] - low[2] - at[3 * c + 2] * cell) ** 2;
  for (let c = 0; c < count; c++) if (!Number.isNaN(points[3 * c])) square[c] = to(c, c);
  // One bit for each side whose neighbor has changed since would cost more than asking again.
  let changed = true;
  const ask = (c: number, first: number): void => {
    for (let s = sides * c + first; s < sides * c + sides; s += 2) {
      const n = beside[s];
      if (n === wall || square[n] === Number.POSITIVE_INFINITY) continue;
      const far = to(c, n);
      // A step of float32 more is no gain, and would be taken round in circles.
      if (!(far < square[c] * 0.999999)) continue;
      square[c] = far;
      points[3 * c] = points[3 * n];
      points[3 * c + 1] = points[3 * n + 1];
      points[3 * c + 2] = points[3 * n + 2];
      changed = true;
    }
  };
  for (let pass = 0; changed && pass < mostPasses; pass++) {
    changed = false;
    for (let c = 0; c < count; c++) ask(c, 0);
    for (let c = count - 1; c >= 0; c--) ask(c, 1);
  }
  for (let c = 0; c < count; c++) square[c] = Math.sqrt(square[c]);
  return square;
}

/** Distance of each cell's middle from the nearest wall, mm. */
export function clearanceOf(cells: Cells): Float32Array {
  const { count, at, low, cell, walls } = cells;
  const points = new Float32Array(3 * count).fill(Number.NaN);
  for (let c = 0; c < count; c++) {
    let nearest = -1;
    for (let axis = 0; axis < 3; axis++) {
      const offset = Math.abs(walls[3 * c + axis]);
      if (nearest < 0 ? !Number.isNaN(offset) : offset < Math.abs(walls[3 * c + nearest])) nearest = axis;
    }
    if (nearest < 0) continue;
    for (let axis = 0; axis < 3; axis++)
      points[3 * c + axis] =
        low[axis] + at[3 * c + axis] * cell + (axis === nearest ? walls[3 * c + axis] : 0);
  }
  return nearestPoints(cells, points);
}
