import { expect, test } from 'vitest';
import { knifeEdges } from '../../../src/mesh/index.ts';
import { box, meshOf } from '../../export/shapes.ts';

const degrees = (value: number): number => (value * Math.PI) / 180;

/** A prism over a triangle with an angle `a` at the origin, its sides 10 mm, 30 mm high. */
const wedge = (a: number) => {
  const foot = [
    [0, 0],
    [10, 0],
    [10 * Math.cos(a), 10 * Math.sin(a)],
  ];
  const at = (z: number) => foot.map(([x, y]) => [x, y, z] as const);
  return meshOf(
    [...at(0), ...at(30)],
    [
      [0, 2, 1],
      [3, 4, 5],
      [0, 1, 4],
      [0, 4, 3],
      [1, 2, 5],
      [1, 5, 4],
      [2, 0, 3],
      [2, 3, 5],
    ],
  );
};

test('the sharp edge of a wedge, its length, angle and middle', () => {
  const found = knifeEdges(wedge(degrees(25)), degrees(40));
  expect(found?.length).toBeCloseTo(30, 5);
  expect(found?.sharpestRad).toBeCloseTo(degrees(25), 5);
  expect(found?.place).toEqual([0, 0, 15]);
});

test('a blunt wedge and a box have none; nor has the same wedge as a hollow', () => {
  expect(knifeEdges(wedge(degrees(45)), degrees(40))).toBe(undefined);
  expect(knifeEdges(box([3, 4, 5]), degrees(40))).toBe(undefined);
  const { positions, triangles } = wedge(degrees(25));
  const inward = triangles.map((_, i) => triangles[i - (i % 3) + [0, 2, 1][i % 3]]);
  expect(knifeEdges({ positions, triangles: inward }, degrees(40))).toBe(undefined);
});
