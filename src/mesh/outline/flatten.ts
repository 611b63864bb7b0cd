import { type Point2, pointsOf, segmentsFor } from '../../geometry/index.ts';

// Curves are drawn as points on the curve, no chord farther from it than `chordError` (same unit as the points).

/** A curve that would need more chords is far larger than any disc. */
const mostSteps = 10_000;

/** Whole ellipse with half axes as vectors u, v about c, counter-clockwise from c + u where u to v is a left turn. */
export const ellipsePoints = (c: Point2, u: Point2, v: Point2, chordError: number): Point2[] =>
  arcPoints(c, u, v, 0, 2 * Math.PI, chordError).slice(0, -1);

/** Points of c + u cos t + v sin t for t from `from` to `to` (rad), both ends included. */
export function arcPoints(
  c: Point2,
  u: Point2,
  v: Point2,
  from: number,
  to: number,
  chordError: number,
): Point2[] {
  // The same steps as for a circle that surely holds the ellipse, whether or not u and v are square: the error shrinks.
  const circle = Math.hypot(Math.hypot(...u), Math.hypot(...v));
  if (!(circle > 0)) return [[c[0] + u[0], c[1] + u[1]]];
  const whole = Math.min(mostSteps, segmentsFor(circle, Math.max(chordError, circle * 1e-7)));
  const steps = Math.max(1, Math.ceil((whole * Math.abs(to - from)) / (2 * Math.PI) - 1e-9));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = from + ((to - from) * i) / steps;
    return [
      c[0] + u[0] * Math.cos(t) + v[0] * Math.sin(t),
      c[1] + u[1] * Math.cos(t) + v[1] * Math.sin(t),
    ] as const;
  });
}

/**
 * Cubic Bezier curve without its first point. A curve split into n equal steps of its parameter is nowhere farther
 * from its chords than M / (8 n2), M the greatest second derivative: 6 times the greater second difference.
 */
export function cubicPoints(a: Point2, b: Point2, c: Point2, d: Point2, chordError: number): Point2[] {
  const bend = (p: Point2, q: Point2, r: Point2): number =>
    Math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1]);
  const most = 6 * Math.max(bend(a, b, c), bend(b, c, d));
  const steps = Math.min(mostSteps, Math.max(1, Math.ceil(Math.sqrt(most / (8 * chordError)))));
  return Array.from({ length: steps }, (_, i) => {
    const t = (i + 1) / steps;
    const s = 1 - t;
    const at = (axis: 0 | 1): number =>
      s * s * s * a[axis] + 3 * s * s * t * b[axis] + 3 * s * t * t * c[axis] + t * t * t * d[axis];
    return i === steps - 1 ? d : ([at(0), at(1)] as const);
  });
}

/** Quadratic Bezier curve without its first point, as the cubic of the same shape. */
export function quadraticPoints(a: Point2, b: Point2, c: Point2, chordError: number): Point2[] {
  const third = (p: Point2): Point2 => [(p[0] + 2 * b[0]) / 3, (p[1] + 2 * b[1]) / 3];
  return cubicPoints(a, third(a), third(c), c, chordError);
}

/**
 * Arc from a to b of a given bulge, the tangent of a quarter of its angle, positive counter-clockwise (DXF
 * reference, LWPOLYLINE group 42); without its first point.
 */
export function bulgePoints(a: Point2, b: Point2, bulge: number, chordError: number): Point2[] {
  const corners = [{ at: a, bulge }, { at: b }];
  return pointsOf({ kind: 'track', closed: false, corners }, chordError).slice(1);
}
