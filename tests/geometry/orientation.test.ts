import { expect, test } from 'vitest';
import { orientation } from '../../src/geometry/orientation.ts';

/** The determinant in whole numbers of 2^-40 mm, by its own expansion along the first row. */
function sideInWhole(p: Float32Array): number {
  const to = (point: number, axis: number): bigint =>
    BigInt(p[point * 3 + axis] * 2 ** 40) - BigInt(p[9 + axis] * 2 ** 40);
  const minor = (y: number, z: number): bigint => to(1, y) * to(2, z) - to(1, z) * to(2, y);
  const volume = to(0, 0) * minor(1, 2) - to(0, 1) * minor(0, 2) + to(0, 2) * minor(0, 1);
  // Seen so that the three run counter-clockwise, what is below is over 0.
  return volume > 0n ? 1 : volume < 0n ? -1 : 0;
}

/** Numbers between -1 and 1, the same in every run (Park and Miller, 1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16807 * state) % 2147483647;
    return (2 * state) / 2147483647 - 1;
  };
}

// On the grid of solids handed out, beside it, and farther out than its short way is good for.
test.each([
  ['on whole steps', 2 ** -20, 15],
  ['on whole steps, far out', 2 ** -14, 250],
  ['at the end of what the short way takes', 1, 256],
  ['beyond it', 1, 4000],
  ['on finer steps', 2 ** -24, 0.5],
])('the side of a point in, or a step off, the plane of three is exact: %s', (_, step, reach) => {
  const random = seeded(11);
  const near = (value: number): number => Math.round(value / step) * step;
  const sides = new Set<number>();
  for (let i = 0; i < 2000; i++) {
    const p = Float32Array.from({ length: 12 }, () => near(reach * random()));
    const [u, v] = [Math.round(random()), Math.round(random())];
    for (let axis = 0; axis < 3; axis++) {
      const off = i % 3 === 0 ? step * Math.sign(random()) : 0;
      const along = u * (p[3 + axis] - p[axis]) + v * (p[6 + axis] - p[axis]);
      p[9 + axis] = p[axis] + along + off;
    }
    sides.add(sideInWhole(p));
    expect(Math.sign(orientation(p, 0, 1, 2, 3)) + 0, `${p}`).toBe(sideInWhole(p));
  }
  expect([...sides].sort()).toEqual([-1, 0, 1].sort());
});
