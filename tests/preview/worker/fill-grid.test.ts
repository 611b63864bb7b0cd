import { expect, test } from 'vitest';
import { fillGrid, lastOrder, neverFilled } from '../../../src/preview/worker/fill-grid.ts';

// Three cells in a row along x of a frame that is turned by 40 degrees: the lattice is found again from the middles.
const cell = 0.4;
const turnRad = (40 * Math.PI) / 180;
const own = [50, 51, 52].map((i) => [(i + 0.5) * cell, -0.2, 1.4] as const);
const middles = Float32Array.from(
  own.flatMap(([x, y, z]) => [
    Math.cos(turnRad) * x - Math.sin(turnRad) * y,
    Math.sin(turnRad) * x + Math.cos(turnRad) * y,
    z,
  ]),
);
const cavity = { cell, middles, cellsAt: () => new Int32Array(0), fill: () => undefined };
const { low, size, order } = fillGrid(cavity, Float32Array.of(1, 0, Number.NaN), turnRad);
const at = (x: number, y: number, z: number): number => {
  const [i, j, k] = [x, y, z].map((value, axis) => Math.round((value - low[axis]) / cell));
  return order[(k * size[1] + j) * size[0] + i];
};

test('each cell has its order at its place, first to last, or that metal never comes', () => {
  expect(own.map(([x, y, z]) => at(x, y, z))).toEqual([lastOrder, 1, neverFilled]);
});

test('a wall beside a cell has its order, also past a corner of the cube; what is farther has none', () => {
  const [x, y, z] = own[0];
  expect(at(x - cell, y, z)).toBe(lastOrder);
  expect(at(x - cell, y - cell, z - cell)).toBe(lastOrder);
  expect(at(x, y + 3 * cell, z)).toBe(lastOrder);
  expect(order[0]).toBe(0);
});
