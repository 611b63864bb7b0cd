import { type Corner, type Point2, pointsOf } from '../../geometry/index.ts';

/** How far chords may lie off a rounded bend, mm: less than a knife wanders. */
const chordError = 0.02;
/** Radius of a bend's middle line in widths, and the least of it: under half the inner side would fold. Common practice, no published source. */
const [usualBend, leastBend] = [1, 0.6];

/** A bend that has no room for its radius. */
export interface Tight {
  readonly at: Point2;
  readonly radius: number;
  readonly least: number;
}

/**
 * Way points joined by straight pieces and rounded where they meet, so that a knife can follow: as a line of points. Bends take what
 * room their neighbors leave; one that finds too little for the channel's width is told.
 */
export function rounded(points: readonly Point2[], width: number): Point2[] | Tight {
  const corners: Corner[] = [{ at: points[0] }];
  for (let i = 1; i < points.length - 1; i++) {
    const [before, at, after] = [points[i - 1], points[i], points[i + 1]];
    const [a, b] = [toward(at, before), toward(at, after)];
    const turn = Math.atan2(
      -(a.way[0] * b.way[1] - a.way[1] * b.way[0]),
      -(a.way[0] * b.way[0] + a.way[1] * b.way[1]),
    );
    if (Math.abs(turn) < 1e-6) continue;
    const room = Math.min(
      i === 1 ? a.length : a.length / 2,
      i === points.length - 2 ? b.length : b.length / 2,
    );
    const tangent = Math.tan(Math.abs(turn) / 2);
    const radius = Math.min(usualBend * width, room / tangent);
    if (radius < leastBend * width) return { at, radius, least: leastBend * width };
    const reach = radius * tangent;
    const on = ({ way }: { readonly way: Point2 }): Point2 => [
      at[0] + way[0] * reach,
      at[1] + way[1] * reach,
    ];
    corners.push({ at: on(a), bulge: Math.tan(turn / 4) }, { at: on(b) });
  }
  corners.push({ at: points[points.length - 1] });
  return withoutRepeats(pointsOf({ kind: 'track', closed: false, corners }, chordError));
}

/** From the first point to the last along an arc that turns by so much, counter-clockwise where it is positive. */
export const arcWay = (from: Point2, to: Point2, arcRad: number): Point2[] =>
  withoutRepeats(
    pointsOf(
      { kind: 'track', closed: false, corners: [{ at: from, bulge: Math.tan(arcRad / 4) }, { at: to }] },
      chordError,
    ),
  );

function toward(from: Point2, to: Point2): { readonly way: Point2; readonly length: number } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return { way: length > 0 ? [dx / length, dy / length] : [1, 0], length };
}

/** A bend that takes all of a piece leaves its ends in one place, but for rounding. */
const withoutRepeats = (points: readonly Point2[]): Point2[] =>
  points.filter(([x, y], i) => i === 0 || Math.hypot(x - points[i - 1][0], y - points[i - 1][1]) > 1e-6);
