import { cross, type Vec3 } from '../../src/geometry/index.ts';

/** a + b t */
export const along = (a: Vec3, b: Vec3, t = 1): Vec3 => [a[0] + b[0] * t, a[1] + b[1] * t, a[2] + b[2] * t];

export const between = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** The vector at length 1; it must have a length. */
export function unit(a: Vec3): Vec3 {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}

/** Three directions at right angles to each other: length, width, thickness. */
export type Axes = readonly [Vec3, Vec3, Vec3];

export const plainAxes: Axes = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Axes with the first along `length` and the third as near to `up` as that allows; they must not be parallel. */
export function axesAlong(length: Vec3, up: Vec3): Axes {
  const first = unit(length);
  const second = unit(cross(up, first));
  return [first, second, cross(first, second)];
}
