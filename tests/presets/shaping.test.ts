import { expect, test } from 'vitest';
import { Clay } from '../../presets/shaping/clay.ts';
import { bend, lineThrough, type Point2 } from '../../presets/shaping/curve.ts';
import { ellipsoid, plate, ring, rod, type Shape } from '../../presets/shaping/shapes.ts';
import { sheet, signedDistance } from '../../presets/shaping/sheet.ts';
import { axesAlong } from '../../presets/shaping/vector.ts';
import { boundsOf, dot, type Vec3 } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { volumeOf } from './solidity.ts';

const kernel = await loadKernel();

const shaped = (forms: readonly Shape[], cell = 0.25) => {
  const low = (axis: 0 | 1 | 2): number => Math.min(...forms.map(({ min }) => min[axis]));
  const high = (axis: 0 | 1 | 2): number => Math.max(...forms.map(({ max }) => max[axis]));
  return new Clay([low(0), low(1), low(2)], [high(0), high(1), high(2)], cell)
    .add(forms)
    .toMesh(kernel, 'form');
};

// Closed forms of elementary solid geometry. Softening and flat faces err with the square of the cell, so two cell
// sizes give the limit (Richardson's extrapolation).
test.each<[string, Shape, number]>([
  ['ball', ellipsoid([1, 2, 3], [5, 5, 5]), (4 / 3) * Math.PI * 125],
  ['ellipsoid', ellipsoid([0, 0, 0], [6, 4, 3]), (4 / 3) * Math.PI * 72],
  ['round-ended rod', rod([0, 0, 0], [6, 3, 2], 2, 2), Math.PI * 4 * 7 + (4 / 3) * Math.PI * 8],
  ['ring', ring(8, 2, 1), 2 * Math.PI ** 2 * 8 * 4],
])('%s has the volume of its closed form', (_, form, volume) => {
  const [coarse, fine] = [0.4, 0.2].map((cell) => volumeOf(shaped([form], cell)));
  expect(Math.abs(coarse / volume - 1)).toBeLessThan(0.06);
  expect(Math.abs((4 * fine - coarse) / 3 / volume - 1)).toBeLessThan(0.002);
});

test('a form stands on z = 0 and is as large as it should be', () => {
  const { min, max } = boundsOf(shaped([ellipsoid([0, 0, 7], [5, 4, 3])]).positions);
  expect(min[2]).toBe(0);
  expect(max[2]).toBeCloseTo(6, 1);
  expect(max[0] - min[0]).toBeCloseTo(10, 1);
});

test('carving takes away what adding put there', () => {
  const block = plate([0, 0], 6, 0, 4, 0.1);
  const hole = plate([0, 0], 2, -1, 5, 0.1);
  const mesh = new Clay(block.min, block.max, 0.25).add([block]).carve([hole]).toMesh(kernel, 'washer');
  expect(volumeOf(mesh) / (Math.PI * (36 - 4) * 4)).toBeCloseTo(1, 1.5);
});

test('a rounding adds metal where two forms meet and nowhere else', () => {
  const [a, b] = [rod([-6, 0, 0], [6, 0, 0], 2, 2), rod([0, -6, 0], [0, 6, 0], 2, 2)];
  const cross = (blend: number) =>
    new Clay([-8, -8, -2.5], [8, 8, 2.5], 0.25).add([a]).add([b], blend).toMesh(kernel, 'cross');
  const [sharp, round] = [cross(0), cross(1.5)];
  expect(volumeOf(round)).toBeGreaterThan(volumeOf(sharp) * 1.005);
  const ends = [sharp, round].map(({ positions }) => boundsOf(positions).max[0]);
  expect(ends[1]).toBeCloseTo(ends[0], 6);
});

test('a flat square sheet is as thick as asked for', () => {
  const outline: Point2[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ];
  const form = sheet({ outline, middle: () => 5, half: 0.6 });
  expect(form.distance(5, 5, 5)).toBeCloseTo(-0.6, 12);
  expect(form.distance(5, 5, 5.6)).toBeCloseTo(0, 12);
  expect(form.distance(5, 0, 5)).toBeCloseTo(0, 12);
  expect(form.distance(13, 5, 5)).toBeCloseTo(3, 12);
});

test('distance to an outline: inside negative, corners by Pythagoras', () => {
  const square: Point2[] = [
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ];
  expect(signedDistance(square, 1, 2)).toBeCloseTo(-1, 12);
  expect(signedDistance(square, 7, 8)).toBeCloseTo(5, 12);
});

test('a line goes through its points and a bend follows Bernstein', () => {
  const points: Vec3[] = [
    [0, 0, 0],
    [1, 2, 0],
    [3, 1, 1],
  ];
  const line = lineThrough(points, 4);
  expect(line).toHaveLength(9);
  expect([line[0], line[4], line[8]]).toEqual(points);
  const [, half] = bend(
    [
      [0, 0],
      [0, 8],
      [8, 8],
      [8, 0],
    ],
    2,
  );
  // At t = 1/2 the weights are 1/8, 3/8, 3/8, 1/8.
  expect(half).toEqual([4, 6]);
});

test('axes along a direction are of length 1 and square to each other', () => {
  const axes = axesAlong([3, 1, -2], [0, 0, 1]);
  for (const [i, a] of axes.entries())
    for (const [k, b] of axes.entries()) expect(dot(a, b)).toBeCloseTo(i === k ? 1 : 0, 12);
  expect(axes[2][2]).toBeGreaterThan(0);
});
