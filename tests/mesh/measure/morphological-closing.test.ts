import { expect, test } from 'vitest';
import { closedByMill, meshBetween, patchesBetween } from '../../../src/mesh/index.ts';
import { volumeOf } from '../../parts/example-mold.ts';
import { pairEdges } from '../../parts/pairing.ts';

const gridOf = (half: number, cell: number) => {
  const n = Math.floor((2 * half) / cell) + 1;
  return { cell, x0: -half, y0: -half, nx: n, ny: n };
};

function field(half: number, cell: number, height: (x: number, y: number) => number) {
  const grid = gridOf(half, cell);
  const top = new Float32Array(grid.nx * grid.ny).map((_, node) =>
    height(-half + (node % grid.nx) * cell, -half + Math.floor(node / grid.nx) * cell),
  );
  return { ...grid, top };
}

test('a flat mill leaves (1 - pi/4) R2 in each corner of a square pocket', () => {
  const map = field(6, 0.1, (x, y) => (Math.max(Math.abs(x), Math.abs(y)) < 5.05 ? -3 : 0));
  const { top: lower, ...grid } = map;
  const fields = { grid, lower, upper: closedByMill(map, { radius: 2, kind: 'flat' }) };
  const spots = patchesBetween(fields, 0.05);
  expect(spots).toHaveLength(4);
  for (const { area, volume, deepest } of spots) {
    // Two straight sides R long and a quarter circle, along which half a cell is not counted; never more than true.
    const [exact, edge] = [(1 - Math.PI / 4) * 4, (2 + Math.PI / 2) * 2];
    expect(area).toBeGreaterThan(exact - (edge * map.cell) / 2);
    expect(area).toBeLessThan(exact);
    expect(volume / (3 * area)).toBeCloseTo(1, 6);
    expect(deepest).toBeCloseTo(3, 6);
  }
  const mesh = meshBetween(fields, spots);
  expect(pairEdges(mesh).unpaired).toBe(0);
  expect(volumeOf(mesh)).toBeCloseTo(
    spots.reduce((sum, { volume }) => sum + volume, 0),
    3,
  );
});

test('a round pocket takes a mill that is smaller, whole; none that is larger', () => {
  const map = field(6, 0.1, (x, y) => (Math.hypot(x, y) < 4 ? -2 : 0));
  const { top: lower, ...grid } = map;
  const left = (radius: number) =>
    patchesBetween({ grid, lower, upper: closedByMill(map, { radius, kind: 'flat' }) }, 0.05);
  expect(left(2.5)).toEqual([]);
  const [whole] = left(4.3);
  expect(whole.area / (Math.PI * 16)).toBeGreaterThan(0.9);
});

test('a ball of radius R stops R / sin a - R over the foot of a V groove of half angle a', () => {
  const [r, a] = [2, Math.PI / 4];
  const map = field(9, 0.1, (x) => Math.min(0, Math.abs(x) / Math.tan(a) - 6));
  const upper = closedByMill(map, { radius: r, kind: 'ball' });
  const middle = Math.floor(map.ny / 2) * map.nx + Math.floor(map.nx / 2);
  expect(upper[middle] - map.top[middle]).toBeCloseTo(r / Math.sin(a) - r, 2);
  // The ball touches the walls R cos a from the middle: beyond, nothing is left.
  const beyond = middle + Math.ceil((r * Math.cos(a)) / map.cell) + 3;
  expect(upper[beyond] - map.top[beyond]).toBeLessThan(0.005);
});

test('slopes and humps are reached by either end; off the mesh the mill goes freely', () => {
  const map = field(6, 0.1, (x, y) => (Math.hypot(x, y) > 5 ? Number.NaN : 0.4 * x - 0.1 * (x * x + y * y)));
  for (const kind of ['flat', 'ball'] as const) {
    const upper = closedByMill(map, { radius: 1.5, kind });
    const worst = upper.reduce((most, z, k) => (Number.isNaN(z) ? most : Math.max(most, z - map.top[k])), 0);
    expect(worst).toBeLessThan(1e-5);
    expect(upper.filter((z) => z === Number.NEGATIVE_INFINITY)).toHaveLength(0);
  }
});
