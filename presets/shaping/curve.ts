import type { Vec3 } from '../../src/geometry/index.ts';

/** A smooth line through the points (Catmull-Rom, `steps` pieces from each point to the next), ends included. */
export function lineThrough(points: readonly Vec3[], steps: number): Vec3[] {
  const line: Vec3[] = [];
  const last = points.length - 1;
  for (let i = 0; i < last; i++) {
    const [a, b, c, d] = [
      points[Math.max(0, i - 1)],
      points[i],
      points[i + 1],
      points[Math.min(last, i + 2)],
    ];
    for (let k = 0; k < steps; k++) {
      const t = k / steps;
      const at = (axis: 0 | 1 | 2): number =>
        b[axis] +
        (t / 2) *
          (c[axis] -
            a[axis] +
            t *
              (2 * a[axis] -
                5 * b[axis] +
                4 * c[axis] -
                d[axis] +
                t * (3 * (b[axis] - c[axis]) + d[axis] - a[axis])));
      line.push([at(0), at(1), at(2)]);
    }
  }
  line.push(points[last]);
  return line;
}

export type Point2 = readonly [number, number];

/** A cubic Bezier curve in `steps` pieces, without its last point. */
export function bend([a, b, c, d]: readonly [Point2, Point2, Point2, Point2], steps: number): Point2[] {
  return Array.from({ length: steps }, (_, k): Point2 => {
    const t = k / steps;
    const s = 1 - t;
    const [p, q, r, u] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return [a[0] * p + b[0] * q + c[0] * r + d[0] * u, a[1] * p + b[1] * q + c[1] * r + d[1] * u];
  });
}
