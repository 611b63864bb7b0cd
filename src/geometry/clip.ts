import type { Point2 } from './outline.ts';

/**
 * What of a polygon lies within a convex, counter-clockwise one (Sutherland and Hodgman, Communications of the ACM 17,
 * 1974); nothing where they have no area in common. Pieces of a hollow polygon stay joined along the convex one's sides.
 */
export function clipped(subject: readonly Point2[], convex: readonly Point2[]): Point2[] {
  let left = [...subject];
  for (const [k, a] of convex.entries()) {
    const b = convex[(k + 1) % convex.length];
    const side = ([x, y]: Point2): number => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
    left = left.flatMap((point, i) => {
      const before = left[(i + left.length - 1) % left.length];
      const [s, t] = [side(before), side(point)];
      const crossing = s > 0 !== t > 0 ? [between(before, point, s / (s - t))] : [];
      return t > 0 ? [...crossing, point] : crossing;
    });
  }
  return left;
}

const between = (p: Point2, q: Point2, t: number): Point2 => [
  p[0] + t * (q[0] - p[0]),
  p[1] + t * (q[1] - p[1]),
];

/** Least distance of two polygons' sides, and the point halfway between where they are nearest; sides that cross are not looked for. */
export function sidesApart(
  one: readonly Point2[],
  other: readonly Point2[],
): { readonly distance: number; readonly middle: Point2 } {
  let [distance, middle]: [number, Point2] = [Number.POSITIVE_INFINITY, [0, 0]];
  const look = (corners: readonly Point2[], sides: readonly Point2[]): void => {
    for (const corner of corners) {
      for (const [i, end] of sides.entries()) {
        const at = nearestOn(sides[(i + sides.length - 1) % sides.length], end, corner);
        const away = Math.hypot(at[0] - corner[0], at[1] - corner[1]);
        if (away < distance) [distance, middle] = [away, between(at, corner, 0.5)];
      }
    }
  };
  look(one, other);
  look(other, one);
  return { distance, middle };
}

function nearestOn(from: Point2, to: Point2, [x, y]: Point2): Point2 {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((x - from[0]) * dx + (y - from[1]) * dy) / square : 0;
  return between(from, to, Math.min(1, Math.max(0, along)));
}
