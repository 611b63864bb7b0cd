import type { Point2 } from '../../geometry/index.ts';
import { type Ring, ringArea } from '../measure/silhouette.ts';

/** Paths joined end to end where their ends lie within `reach` mm. A path whose ends meet is closed. */
export function joinEnds(
  open: readonly (readonly Point2[])[],
  reach: number,
): { closed: Ring[]; open: Ring[] } {
  const left = open.map((path) => [...path]);
  const closed: Ring[] = [];
  const still: Ring[] = [];
  for (let path = left.shift(); path; path = left.shift()) {
    while (!meets(path, reach)) {
      const end = path[path.length - 1];
      const at = left.findIndex(
        (other) => near(other[0], end, reach) || near(other[other.length - 1], end, reach),
      );
      if (at < 0) break;
      const [next] = left.splice(at, 1);
      if (!near(next[0], end, reach)) next.reverse();
      path.push(...next.slice(1));
    }
    if (meets(path, reach)) closed.push(path.slice(0, -1));
    else still.push(path);
  }
  return { closed, open: still };
}

const near = (a: Point2, b: Point2, reach: number): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= reach;

const meets = (path: readonly Point2[], reach: number): boolean =>
  path.length > 3 && near(path[0], path[path.length - 1], reach);

/** Without points closer than `least` mm to the one before, and without a repeated first point. */
export function withoutRepeats(ring: Ring, least: number): Ring {
  const kept = ring.filter((point, i) => i === 0 || !near(point, ring[i - 1], least));
  while (kept.length > 1 && near(kept[0], kept[kept.length - 1], least)) kept.pop();
  return kept;
}

/** Outer rings counter-clockwise, holes clockwise, islands in holes counter-clockwise again: by how many hold them. */
export function orientByNesting(rings: readonly Ring[]): Ring[] {
  return rings.map((ring, i) => {
    const depth = rings.filter((other, j) => j !== i && holds(other, ring[0])).length;
    return ringArea(ring) > 0 === (depth % 2 === 0) ? ring : [...ring].reverse();
  });
}

/** Whether a point is inside a ring (even-odd rule). */
function holds(ring: Ring, [x, y]: Point2): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[i];
    const [bx, by] = ring[j];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

interface Side {
  readonly ring: number;
  readonly index: number;
  readonly count: number;
  readonly a: Point2;
  readonly b: Point2;
  readonly low: number;
  readonly high: number;
}

/** A place where rings cross or touch each other or themselves, neighbours in a ring apart; none where all is clear. */
export function crossingOf(rings: readonly Ring[]): Point2 | undefined {
  const sides = rings.flatMap((points, ring) =>
    points.map((a, index): Side => {
      const b = points[(index + 1) % points.length];
      return {
        ring,
        index,
        count: points.length,
        a,
        b,
        low: Math.min(a[0], b[0]),
        high: Math.max(a[0], b[0]),
      };
    }),
  );
  sides.sort((p, q) => p.low - q.low);
  let active: Side[] = [];
  for (const side of sides) {
    active = active.filter(({ high }) => high >= side.low);
    for (const other of active) {
      const at = areNeighbours(side, other) ? foldBack(side, other) : meetingPoint(side, other);
      if (at) return at;
    }
    active.push(side);
  }
  return undefined;
}

const areNeighbours = (p: Side, q: Side): boolean =>
  p.ring === q.ring && ((p.index + 1) % p.count === q.index || (q.index + 1) % q.count === p.index);

const cross = (o: Point2, a: Point2, b: Point2): number =>
  (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);

/** Sides that share a corner cross only where one runs back over the other. */
function foldBack(p: Side, q: Side): Point2 | undefined {
  const [before, after] = (p.index + 1) % p.count === q.index ? [p, q] : [q, p];
  const corner = before.b;
  const back =
    (before.a[0] - corner[0]) * (after.b[0] - corner[0]) +
      (before.a[1] - corner[1]) * (after.b[1] - corner[1]) >
    0;
  return back && cross(corner, before.a, after.b) === 0 ? corner : undefined;
}

function meetingPoint(p: Side, q: Side): Point2 | undefined {
  const [d1, d2] = [cross(p.a, p.b, q.a), cross(p.a, p.b, q.b)];
  const [d3, d4] = [cross(q.a, q.b, p.a), cross(q.a, q.b, p.b)];
  if (d1 * d2 < 0 && d3 * d4 < 0) {
    const t = d3 / (d3 - d4);
    return [p.a[0] + t * (p.b[0] - p.a[0]), p.a[1] + t * (p.b[1] - p.a[1])];
  }
  if (d1 === 0 && between(p, q.a)) return q.a;
  if (d2 === 0 && between(p, q.b)) return q.b;
  if (d3 === 0 && between(q, p.a)) return p.a;
  if (d4 === 0 && between(q, p.b)) return p.b;
  return undefined;
}

const between = ({ a, b }: Side, [x, y]: Point2): boolean =>
  x >= Math.min(a[0], b[0]) &&
  x <= Math.max(a[0], b[0]) &&
  y >= Math.min(a[1], b[1]) &&
  y <= Math.max(a[1], b[1]);
