import { expect, test } from 'vitest';
import { weldEqual, weldNear } from '../../../src/mesh/repair/weld.ts';
import { asMesh, ball, box, soup } from '../rough-shapes.ts';

const float = (shape: Parameters<typeof soup>[0]) => {
  const { positions, triangles } = soup(shape);
  return { positions: Float32Array.from(positions), triangles };
};

test('a soup becomes the mesh it was drawn from: points of a ball by Euler, V = 2 + F / 2', () => {
  const welded = weldEqual(float(ball(10, 32)));
  expect(welded.positions.length / 3).toBe(2 + welded.triangles.length / 3 / 2);
});

test('nothing to weld: the same object comes back', () => {
  const mesh = asMesh(box([1, 2, 3]));
  expect(weldEqual(mesh)).toBe(mesh);
});

test('points no face uses are left out', () => {
  const mesh = asMesh(box([1, 2, 3]));
  const positions = Float32Array.from([9, 9, 9, ...mesh.positions]);
  const welded = weldEqual({ positions, triangles: mesh.triangles.map((v) => v + 1) });
  expect(welded).toEqual(mesh);
});

test('near points are joined within the tolerance only, and only where allowed', () => {
  const positions = Float32Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 1e-4, 0, 0, 1.001, 0, 0, 0, 1, 1);
  const mesh = { positions, triangles: Uint32Array.of(0, 1, 2, 3, 4, 5) };
  const all = new Uint8Array(6).fill(1);
  const joined = weldNear(mesh, all, 2e-4);
  expect(joined.joined).toBe(1);
  expect(joined.farthest).toBeCloseTo(1e-4, 8);
  expect(joined.mesh.positions.length / 3).toBe(5);
  expect(weldNear(mesh, all, 2e-3).joined).toBe(2);
  expect(weldNear(mesh, new Uint8Array(6), 1).joined).toBe(0);
});

test('across the cells of the search grid too', () => {
  const positions = Float32Array.of(0.99999, 0, 0, 5, 0, 0, 0, 5, 0, 1.00001, 0, 0);
  const mesh = { positions, triangles: Uint32Array.of(0, 1, 2, 3, 2, 1) };
  expect(weldNear(mesh, new Uint8Array(4).fill(1), 1).joined).toBe(1);
});
