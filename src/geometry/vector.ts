import type { Vec3 } from './triangles.ts';

export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Half way between two points; of a box, its middle. */
export const midpoint = (a: Vec3, b: Vec3): Vec3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];

/** Cross product of two sides of the face a, b, c of a list of positions: its normal, twice its area long. */
export function sidesCrossed(p: ArrayLike<number>, a: number, b: number, c: number): Vec3 {
  const i = a * 3;
  const j = b * 3;
  const k = c * 3;
  // Numbers by themselves: for millions of faces lists of them cost five times as much.
  const ux = p[j] - p[i];
  const uy = p[j + 1] - p[i + 1];
  const uz = p[j + 2] - p[i + 2];
  const vx = p[k] - p[i];
  const vy = p[k + 1] - p[i + 1];
  const vz = p[k + 2] - p[i + 2];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}
