import { dot, type Vec3 } from '../../src/geometry/index.ts';
import { type Axes, plainAxes } from './vector.ts';

/**
 * A form to be laid into clay: a signed distance in mm (negative inside; near the surface true to a few percent) and
 * the box round the form.
 */
export interface Shape {
  readonly min: Vec3;
  readonly max: Vec3;
  distance(x: number, y: number, z: number): number;
}

const boxRound = (center: Vec3, reach: number): Pick<Shape, 'min' | 'max'> => ({
  min: [center[0] - reach, center[1] - reach, center[2] - reach],
  max: [center[0] + reach, center[1] + reach, center[2] + reach],
});

/** An ellipsoid with half axes `radii` along `axes`. Distance: |p/r| (|p/r| - 1) / |p/r^2|, first order. */
export function ellipsoid(center: Vec3, radii: Vec3, axes: Axes = plainAxes): Shape {
  const [cx, cy, cz] = center;
  const [a, b, c] = radii;
  const [u, v, w] = axes;
  return {
    ...boxRound(center, Math.max(a, b, c)),
    distance: (x, y, z) => {
      const [dx, dy, dz] = [x - cx, y - cy, z - cz];
      const p = (dx * u[0] + dy * u[1] + dz * u[2]) / a;
      const q = (dx * v[0] + dy * v[1] + dz * v[2]) / b;
      const r = (dx * w[0] + dy * w[1] + dz * w[2]) / c;
      const size = Math.sqrt(p * p + q * q + r * r);
      const slope = Math.sqrt((p / a) ** 2 + (q / b) ** 2 + (r / c) ** 2);
      return slope > 1e-9 ? (size * (size - 1)) / slope : -Math.min(a, b, c);
    },
  };
}

/** A round rod between two points, tapering from radius `ra` to `rb`, with round ends. */
export function rod(a: Vec3, b: Vec3, ra: number, rb: number): Shape {
  const d: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const length2 = dot(d, d);
  const reach = Math.max(ra, rb);
  const low = (k: 0 | 1 | 2): number => Math.min(a[k], b[k]) - reach;
  const high = (k: 0 | 1 | 2): number => Math.max(a[k], b[k]) + reach;
  return {
    min: [low(0), low(1), low(2)],
    max: [high(0), high(1), high(2)],
    distance: (x, y, z) => {
      const [px, py, pz] = [x - a[0], y - a[1], z - a[2]];
      const t = length2 > 0 ? Math.min(1, Math.max(0, (px * d[0] + py * d[1] + pz * d[2]) / length2)) : 0;
      const [qx, qy, qz] = [px - t * d[0], py - t * d[1], pz - t * d[2]];
      return Math.sqrt(qx * qx + qy * qy + qz * qz) - ra - (rb - ra) * t;
    },
  };
}

/** Rods along a line; `radius(t)` in mm for t from 0 to 1 along its points. */
export const strand = (line: readonly Vec3[], radius: (t: number) => number): Shape[] =>
  line
    .slice(1)
    .map((point, i) =>
      rod(line[i], point, radius(i / (line.length - 1)), radius((i + 1) / (line.length - 1))),
    );

/** A lying ring: a rod of radius `thick` bent round the z axis at distance `radius`, at height z. */
export const ring = (radius: number, thick: number, height: number): Shape => ({
  min: [-radius - thick, -radius - thick, height - thick],
  max: [radius + thick, radius + thick, height + thick],
  distance: (x, y, z) => Math.hypot(Math.hypot(x, y) - radius, z - height) - thick,
});

/** An upright round plate about (x, y) from z = low to high, its edges rounded by `edge`. */
export const plate = (
  [cx, cy]: readonly [number, number],
  radius: number,
  low: number,
  high: number,
  edge: number,
): Shape => ({
  min: [cx - radius, cy - radius, low],
  max: [cx + radius, cy + radius, high],
  distance: (x, y, z) => {
    const p = Math.hypot(x - cx, y - cy) - radius + edge;
    const q = Math.abs(z - (low + high) / 2) - (high - low) / 2 + edge;
    return Math.hypot(Math.max(p, 0), Math.max(q, 0)) + Math.min(Math.max(p, q), 0) - edge;
  },
});
