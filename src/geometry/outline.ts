import { circumscribed, defaultChordError, segmentsFor } from './segments.ts';

export type Point2 = readonly [number, number];

/**
 * A corner of a path, mm, and how the path goes on from it to the next: straight, or along an arc whose `bulge` is the
 * tangent of a quarter of its angle, positive counter-clockwise (DXF reference, LWPOLYLINE group 42). An arc spans
 * less than a full turn.
 */
export interface Corner {
  readonly at: Point2;
  readonly bulge?: number;
}

/** Straight and arc segments in order. The last corner of a closed path goes on to the first; its bulge counts. */
export interface Track {
  readonly kind: 'track';
  readonly closed: boolean;
  readonly corners: readonly Corner[];
}

/** A full circle, mm; clockwise where it is a hole. */
export interface Circle {
  readonly kind: 'circle';
  readonly center: Point2;
  readonly radius: number;
  readonly clockwise: boolean;
}

export type Path = Track | Circle;

/**
 * Paths in one plane, mm, y up. Closed ones enclose material on their left: outer edges counter-clockwise, holes
 * clockwise. Arcs stay arcs until a kernel or a printer needs segments. Open paths are lines to be drawn.
 */
export type Outline = readonly Path[];

export const circle = (center: Point2, radius: number): Circle =>
  positive({ center, radius, clockwise: false });

export const hole = (center: Point2, radius: number): Circle => positive({ center, radius, clockwise: true });

function positive(one: Omit<Circle, 'kind'>): Circle {
  if (!(one.radius > 0)) throw new RangeError(`a circle of radius ${one.radius}: it must be > 0`);
  return { kind: 'circle', ...one };
}

/** A closed path with straight sides. */
export const polygon = (points: readonly Point2[]): Track => ({
  kind: 'track',
  closed: true,
  corners: points.map((at) => ({ at })),
});

/** An open path with straight sides. */
export const line = (...points: readonly Point2[]): Track => ({ ...polygon(points), closed: false });

/** An open arc about a center, counter-clockwise from one angle to a greater one (rad), less than a turn apart. */
export function arc([x, y]: Point2, radius: number, fromRad: number, toRad: number): Track {
  const end = (angle: number): Point2 => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  const bulge = Math.tan((toRad - fromRad) / 4);
  return { kind: 'track', closed: false, corners: [{ at: end(fromRad), bulge }, { at: end(toRad) }] };
}

/** The same path run the other way: an edge becomes a hole. */
export function reversed(path: Path): Path {
  if (path.kind === 'circle') return { ...path, clockwise: !path.clockwise };
  const { corners } = path;
  const count = corners.length;
  const backward = corners.map((_, i): Corner => {
    const { at } = corners[count - 1 - i];
    const before = corners[(2 * count - 2 - i) % count].bulge ?? 0;
    return before !== 0 && (path.closed || i < count - 1) ? { at, bulge: -before } : { at };
  });
  return { ...path, corners: backward };
}

/** Turned counter-clockwise about the origin (rad), then moved. */
export function placed(path: Path, turnRad: number, [dx, dy]: Point2): Path {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const move = ([x, y]: Point2): Point2 => [c * x - s * y + dx, s * x + c * y + dy];
  if (path.kind === 'circle') return { ...path, center: move(path.center) };
  return { ...path, corners: path.corners.map((corner) => ({ ...corner, at: move(corner.at) })) };
}

/** One segment of a track. `center`, `radius` and angles (rad, the sweep signed) where it is an arc. */
export interface Segment {
  readonly from: Point2;
  readonly to: Point2;
  readonly arc?: {
    readonly center: Point2;
    readonly radius: number;
    readonly fromRad: number;
    readonly sweepRad: number;
  };
}

export function segmentsOf({ corners, closed }: Track): Segment[] {
  return corners.slice(0, closed ? undefined : -1).map(({ at, bulge = 0 }, i) => {
    const to = corners[(i + 1) % corners.length].at;
    return { from: at, to, ...(bulge !== 0 && apart(at, to) && { arc: arcOf(at, to, bulge) }) };
  });
}

const apart = (a: Point2, b: Point2): boolean => a[0] !== b[0] || a[1] !== b[1];

/** The center lies on the chord's bisector, (1 - bulge2) / (4 bulge) of the chord to its left. */
function arcOf(a: Point2, b: Point2, bulge: number): NonNullable<Segment['arc']> {
  const side = (1 - bulge * bulge) / (4 * bulge);
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const center: Point2 = [(a[0] + b[0]) / 2 - side * dy, (a[1] + b[1]) / 2 + side * dx];
  const [ux, uy] = [a[0] - center[0], a[1] - center[1]];
  return { center, radius: Math.hypot(ux, uy), fromRad: Math.atan2(uy, ux), sweepRad: 4 * Math.atan(bulge) };
}

/**
 * Closed paths as polygons no farther than `chordError` mm from the true edge. Of a `pin` the polygons lie wholly
 * within the outline (rounds inscribed, its holes circumscribed); of a `hole` they wholly cover it. Open paths have no
 * inside: RangeError.
 */
export function polygonsOf(outline: Outline, as: 'pin' | 'hole', chordError = defaultChordError): Point2[][] {
  return outline.map((path) => {
    if (path.kind === 'circle') return circlePolygon(path, as, chordError);
    if (!path.closed) throw new RangeError('polygonsOf: an open path encloses nothing');
    return segmentsOf(path).flatMap((segment) => chords(segment, as, chordError).slice(0, -1));
  });
}

/** A path as points to be drawn, on the path, ends included; of closed ones the first point is not repeated. */
export function pointsOf(path: Path, chordError = defaultChordError): Point2[] {
  if (path.kind === 'circle') return circlePolygon({ ...path, clockwise: false }, 'pin', chordError);
  const points = segmentsOf(path).flatMap((segment) => onArc(segment, chordError).slice(0, -1));
  return path.closed ? points : [...points, path.corners[path.corners.length - 1].at];
}

/** A turn to the left is an edge bent outward: its chords lie inside. */
function circlePolygon(
  { center, radius, clockwise }: Circle,
  as: 'pin' | 'hole',
  chordError: number,
): Point2[] {
  const count = segmentsFor(radius, chordError);
  const drawn = clockwise === (as === 'pin') ? circumscribed(radius, count) : radius;
  const turn = clockwise ? -1 : 1;
  return Array.from({ length: count }, (_, i) => {
    const angle = (turn * 2 * Math.PI * i) / count;
    return [center[0] + drawn * Math.cos(angle), center[1] + drawn * Math.sin(angle)];
  });
}

function chords(segment: Segment, as: 'pin' | 'hole', chordError: number): Point2[] {
  const { arc: bend, from, to } = segment;
  if (!bend) return [from, to];
  const { center, radius, fromRad, sweepRad } = bend;
  if (sweepRad > 0 === (as === 'pin')) return onArc(segment, chordError);
  const count = stepsIn(radius, sweepRad, chordError);
  const step = sweepRad / count;
  // Tangents at both ends and between: their corners lie half a step in, on the far side of the arc.
  const drawn = radius / Math.cos(step / 2);
  const corners = Array.from({ length: count }, (_, i): Point2 => {
    const angle = fromRad + (i + 0.5) * step;
    return [center[0] + drawn * Math.cos(angle), center[1] + drawn * Math.sin(angle)];
  });
  return [from, ...corners, to];
}

function onArc({ arc: bend, from, to }: Segment, chordError: number): Point2[] {
  if (!bend) return [from, to];
  const { center, radius, fromRad, sweepRad } = bend;
  const count = stepsIn(radius, sweepRad, chordError);
  const inner = Array.from({ length: count - 1 }, (_, i): Point2 => {
    const angle = fromRad + (sweepRad * (i + 1)) / count;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
  return [from, ...inner, to];
}

const stepsIn = (radius: number, sweepRad: number, chordError: number): number =>
  Math.max(2, Math.ceil((segmentsFor(radius, chordError) * Math.abs(sweepRad)) / (2 * Math.PI) - 1e-9));

/**
 * Area enclosed, mm2, holes taken off: shoelace formula, and for each arc the segment between it and its chord,
 * r2 (t - sin t) / 2. Open paths enclose nothing.
 */
export function areaOf(outline: Outline): number {
  return outline.reduce((sum, path) => {
    if (path.kind === 'circle') return sum + (path.clockwise ? -1 : 1) * Math.PI * path.radius ** 2;
    if (!path.closed) return sum;
    return segmentsOf(path).reduce((area, { from, to, arc: bend }) => {
      const cap = bend ? (bend.radius ** 2 * (bend.sweepRad - Math.sin(bend.sweepRad))) / 2 : 0;
      return area + (from[0] * to[1] - to[0] * from[1]) / 2 + cap;
    }, sum);
  }, 0);
}

export interface Bounds2 {
  readonly min: Point2;
  readonly max: Point2;
}

/** The box round all points, also where an arc bends past its ends. Of nothing: RangeError. */
export function boundsOfOutline(outline: Outline): Bounds2 {
  const points = outline.flatMap((path) =>
    path.kind === 'circle'
      ? quarters(path.center, path.radius)
      : path.corners.map(({ at }) => at).concat(bends(path)),
  );
  if (points.length === 0) throw new RangeError('boundsOfOutline: there is nothing');
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
  return { min: [least(xs), least(ys)], max: [most(xs), most(ys)] };
}

const quarters = ([x, y]: Point2, r: number): Point2[] => [
  [x + r, y],
  [x, y + r],
  [x - r, y],
  [x, y - r],
];

/** Where arcs reach farthest along x or y. */
function bends(path: Track): Point2[] {
  return segmentsOf(path).flatMap(({ arc: bend }) => {
    if (!bend) return [];
    const { center, radius, fromRad, sweepRad } = bend;
    return quarters(center, radius).filter((_, quarter) => {
      const turn = ((quarter * Math.PI) / 2 - fromRad) * Math.sign(sweepRad);
      const onward = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI));
      return onward < Math.abs(sweepRad);
    });
  });
}
