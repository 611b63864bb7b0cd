import type { Point2 } from '../../geometry/index.ts';

/** A point of a closed ring, and from which of its corners the side begins that it lies on. */
export interface OnRing {
  readonly at: Point2;
  readonly side: number;
}

const sub = (a: Point2, b: Point2): Point2 => [a[0] - b[0], a[1] - b[1]];
const cross = (a: Point2, b: Point2): number => a[0] * b[1] - a[1] * b[0];
const dot = (a: Point2, b: Point2): number => a[0] * b[0] + a[1] * b[1];

function nearestOn(a: Point2, b: Point2, p: Point2): Point2 {
  const d = sub(b, a);
  const square = dot(d, d);
  const t = square > 0 ? Math.min(1, Math.max(0, dot(sub(p, a), d) / square)) : 0;
  return [a[0] + d[0] * t, a[1] + d[1] * t];
}

export function nearestOnRing(ring: readonly Point2[], p: Point2): OnRing {
  let [best, least]: [OnRing, number] = [{ at: ring[0], side: 0 }, Number.POSITIVE_INFINITY];
  for (let side = 0; side < ring.length; side++) {
    const at = nearestOn(ring[side], ring[(side + 1) % ring.length], p);
    const away = Math.hypot(at[0] - p[0], at[1] - p[1]);
    if (away < least) [best, least] = [{ at, side }, away];
  }
  return best;
}

/** Where a ray (a unit vector) crosses the ring, nearest first. */
export function ringCrossings(ring: readonly Point2[], from: Point2, way: Point2): OnRing[] {
  const found = ring.flatMap((a, side) => {
    const b = ring[(side + 1) % ring.length];
    const [s, t] = [cross(way, sub(a, from)), cross(way, sub(b, from))];
    if (s > 0 === t > 0) return [];
    const k = s / (s - t);
    const at: Point2 = [a[0] + (b[0] - a[0]) * k, a[1] + (b[1] - a[1]) * k];
    const along = dot(sub(at, from), way);
    return along >= 0 ? [{ at, side, along }] : [];
  });
  return found.sort((a, b) => a.along - b.along || a.side - b.side);
}

export function isInRing(ring: readonly Point2[], [x, y]: Point2): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [[ax, ay], [bx, by]] = [ring[i], ring[j]];
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}

/** Whether two straight pieces cross. */
const areCrossing = (a: Point2, b: Point2, c: Point2, d: Point2): boolean =>
  cross(sub(b, a), sub(c, a)) > 0 !== cross(sub(b, a), sub(d, a)) > 0 &&
  cross(sub(d, c), sub(a, c)) > 0 !== cross(sub(d, c), sub(b, c)) > 0;

/** Least distance of two straight pieces; 0 where they cross. */
export function piecesApart(a: Point2, b: Point2, c: Point2, d: Point2): number {
  if (areCrossing(a, b, c, d)) return 0;
  return Math.min(away(a, c, d), away(b, c, d), away(c, a, b), away(d, a, b));
}

function away(p: Point2, from: Point2, to: Point2): number {
  const at = nearestOn(from, to, p);
  return Math.hypot(at[0] - p[0], at[1] - p[1]);
}

/** The lengths of a path that lie in a ring, from its beginning: where each piece begins and ends, mm. */
export function spansIn(path: readonly Point2[], ring: readonly Point2[]): [number, number][] {
  const spans: [number, number][] = [];
  let passed = 0;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const way: Point2 = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    const along = ringCrossings(ring, a, way).map(({ at }) => dot(sub(at, a), way));
    const cuts = [0, ...along.filter((s) => s > 0 && s < length), length];
    for (let k = 1; k < cuts.length; k++) {
      const middle = (cuts[k - 1] + cuts[k]) / 2;
      if (!isInRing(ring, [a[0] + way[0] * middle, a[1] + way[1] * middle])) continue;
      const [from, to] = [passed + cuts[k - 1], passed + cuts[k]];
      const last = spans.at(-1);
      if (last && from - last[1] < 1e-9) last[1] = to;
      else spans.push([from, to]);
    }
    passed += length;
  }
  return spans;
}
