import { type Cells, sides, wall } from './cells.ts';

/** More passes than a room of ordinary shape needs; a spiral only gets a little less exact. */
const mostPasses = 24;

/**
 * Carries points from cell to cell until each has the nearest that any cell beside it knows (vector distance transform,
 * Danielsson, Comput. Graph. Image Process. 14, 1980), and gives the distances, mm. `points` holds x, y, z for each cell,
 * NaN where none is known yet, and is filled in.
 */
export function nearestPoints(cells: Cells, points: Float32Array): Float32Array {
  const { count } = cells;
  const square = new Float32Array(count).fill(Number.POSITIVE_INFINITY);
  for (let c = 0; c < count; c++) if (!Number.isNaN(points[3 * c])) square[c] = squareTo(cells, points, c, c);
  let changes = 1;
  for (let pass = 0; changes > 0 && pass < mostPasses; pass++) {
    changes = 0;
    for (let c = 0; c < count; c++) changes += askBeside(cells, points, square, c, 0);
    for (let c = count - 1; c >= 0; c--) changes += askBeside(cells, points, square, c, 1);
  }
  for (let c = 0; c < count; c++) square[c] = Math.sqrt(square[c]);
  return square;
}

/** Square of the distance of a cell from the point another knows. */
function squareTo({ at, low, cell }: Cells, points: Float32Array, c: number, knows: number): number {
  const x = points[3 * knows] - low[0] - at[3 * c] * cell;
  const y = points[3 * knows + 1] - low[1] - at[3 * c + 1] * cell;
  const z = points[3 * knows + 2] - low[2] - at[3 * c + 2] * cell;
  return x * x + y * y + z * z;
}

/** Takes over the nearest point known beside a cell toward -x, -y and -z (`first` 0) or +x, +y and +z (1); 1 where it did. */
function askBeside(
  cells: Cells,
  points: Float32Array,
  square: Float32Array,
  c: number,
  first: 0 | 1,
): number {
  // Nothing is nearer than the cell's own middle.
  if (square[c] === 0) return 0;
  const { beside } = cells;
  let from = wall;
  for (let s = sides * c + first; s < sides * c + sides; s += 2) {
    const n = beside[s];
    if (n === wall || square[n] === Number.POSITIVE_INFINITY) continue;
    const far = squareTo(cells, points, c, n);
    // A step of float32 more is no gain, and would be taken round in circles.
    if (!(far < square[c] * 0.999999)) continue;
    square[c] = far;
    from = n;
  }
  if (from === wall) return 0;
  points[3 * c] = points[3 * from];
  points[3 * c + 1] = points[3 * from + 1];
  points[3 * c + 2] = points[3 * from + 2];
  return 1;
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
