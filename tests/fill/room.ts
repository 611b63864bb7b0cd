import { type Cells, noteWall, numbered, sides, wall } from '../../src/fill/cells.ts';

/** Cells where `inside` says so, as of a room with walls half a cell beside the last middles. */
export function room(
  size: readonly [number, number, number],
  cell: number,
  low: readonly [number, number, number],
  inside: (x: number, y: number, z: number) => boolean,
  planar = false,
): Cells {
  const numbers = new Int32Array(size[0] * size[1] * size[2]).fill(wall);
  for (let k = 0, p = 0; k < size[2]; k++)
    for (let j = 0; j < size[1]; j++)
      for (let i = 0; i < size[0]; i++, p++)
        if (inside(low[0] + i * cell, low[1] + j * cell, low[2] + k * cell)) numbers[p] = 0;
  const cells: Cells = { ...numbered(numbers, { cell, low, size }), ...(planar && { planar: true }) };
  for (let c = 0; c < cells.count; c++)
    for (let s = 0; s < sides; s++) {
      const axis = s >> 1;
      if (cells.beside[sides * c + s] !== wall || (planar && axis === 1)) continue;
      const middle = low[axis] + cells.at[3 * c + axis] * cell;
      noteWall(cells, c, axis, middle + (s % 2 === 0 ? -cell : cell) / 2);
    }
  return cells;
}
