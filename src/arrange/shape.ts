import type { Point2 } from '../geometry/index.ts';

/** Signed distances from an outline on a grid, mm: negative inside. */
interface DistanceField {
  readonly x0: number;
  readonly y0: number;
  readonly cell: number;
  readonly nx: number;
  readonly ny: number;
  readonly values: Float32Array;
}

/** What lies on the disc, seen from above, in its own frame: mm. */
export interface Shape {
  /** Counter-clockwise. */
  readonly outline: readonly Point2[];
  /**
   * Circles that lie in it, x, y and radius of each: points of the outline have radius 0. Outlines alone would let two
   * things rest wholly on each other; a circle inside asks for its radius more.
   */
  readonly circles: Float64Array;
  readonly field: DistanceField;
  /** Radius of the circle about its origin that holds it. */
  readonly reach: number;
  readonly area: number;
}

/** An outline's corners may be off by this much in the search, mm, or this share of its reach; the limits there are wider by more. */
const plainWithin = { most: 0.03, share: 0.001 };
/** Circles that reach so near an outline's point stand for it, mm. */
const covered = 0.012;

/** `margin` is how far off the outline distances are known: at least the widest limit and the largest circle of others. */
export function shapeOf(given: readonly Point2[], margin: number): Shape {
  const reach = Math.max(...given.map(([x, y]) => Math.hypot(x, y)));
  const corners = plain(given, Math.min(plainWithin.most, plainWithin.share * reach));
  const field = fieldOf(corners, margin, reach);
  return {
    outline: given,
    circles: circlesIn(corners, field, reach),
    field,
    reach,
    area: areaInside(corners),
  };
}

export const areaInside = (ring: readonly Point2[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length];
    return sum + (x * v - u * y) / 2;
  }, 0);

function fieldOf(outline: readonly Point2[], margin: number, reach: number): DistanceField {
  const cell = Math.max(0.15, reach / 40);
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const x0 = Math.min(...xs) - margin;
  const y0 = Math.min(...ys) - margin;
  const nx = Math.ceil((Math.max(...xs) + margin - x0) / cell) + 2;
  const ny = Math.ceil((Math.max(...ys) + margin - y0) / cell) + 2;
  const values = new Float32Array(nx * ny);
  const away = distanceTo(outline);
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) values[j * nx + i] = away(x0 + i * cell, y0 + j * cell);
  return { x0, y0, cell, nx, ny, values };
}

/** Signed distance from a ring, exact. */
function distanceTo(ring: readonly Point2[]): (x: number, y: number) => number {
  const sides = new Float64Array(ring.length * 5);
  for (const [k, [x, y]] of ring.entries()) {
    const [u, v] = ring[(k + 1) % ring.length];
    sides.set([x, y, u - x, v - y, (u - x) ** 2 + (v - y) ** 2 || 1], k * 5);
  }
  return (x, y) => {
    let least = Number.POSITIVE_INFINITY;
    let inside = false;
    for (let k = 0; k < sides.length; k += 5) {
      const [px, py, dx, dy] = [x - sides[k], y - sides[k + 1], sides[k + 2], sides[k + 3]];
      const t = Math.min(1, Math.max(0, (px * dx + py * dy) / sides[k + 4]));
      const square = (px - t * dx) ** 2 + (py - t * dy) ** 2;
      if (square < least) least = square;
      if (py < 0 !== py - dy < 0 && px < (dx * py) / dy) inside = !inside;
    }
    return inside ? -Math.sqrt(least) : Math.sqrt(least);
  };
}

/** The largest circle first, then those of a lattice, then points of the outline, each where those before do not hold it. */
function circlesIn(outline: readonly Point2[], field: DistanceField, reach: number): Float64Array {
  const away = distanceTo(outline);
  const kept: [number, number, number][] = [];
  const isHeld = (x: number, y: number, r: number) =>
    kept.some(([u, v, s]) => Math.hypot(x - u, y - v) + r <= s + covered);
  const take = (x: number, y: number, r: number): void => {
    if (!isHeld(x, y, r)) kept.push([x, y, r]);
  };
  const lattice = (step: number): [number, number, number][] => {
    const found: [number, number, number][] = [];
    const n = Math.ceil(reach / step);
    for (let j = -n; j <= n; j++)
      for (let i = -n; i <= n; i++) {
        const depth = -away(i * step, j * step);
        if (depth > 0.6 * step) found.push([i * step, j * step, depth]);
      }
    return found.sort((a, b) => b[2] - a[2]);
  };
  for (const [x, y, r] of lattice(Math.max(field.cell, reach / 5))) take(x, y, r);
  for (const [x, y] of alongRing(outline, Math.max(1, reach / 12))) take(x, y, 0);
  return Float64Array.from(kept.flat());
}

/** Its corners, and points between them no farther apart than a step. */
function alongRing(ring: readonly Point2[], step: number): Point2[] {
  return ring.flatMap(([x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length];
    const parts = Math.max(1, Math.ceil(Math.hypot(u - x, v - y) / step));
    return Array.from(
      { length: parts },
      (_, i): Point2 => [x + ((u - x) * i) / parts, y + ((v - y) * i) / parts],
    );
  });
}

/** Fewer corners, none left out that lies farther than `within` from the line that stays (Douglas and Peucker, 1973). */
function plain(ring: readonly Point2[], within: number): Point2[] {
  if (ring.length < 5) return [...ring];
  const far = ring.reduce(
    (best, [x, y], i) => {
      const away = Math.hypot(x - ring[0][0], y - ring[0][1]);
      return away > best.away ? { i, away } : best;
    },
    { i: 0, away: -1 },
  ).i;
  const closed = [...ring, ring[0]];
  return [...thin(closed, 0, far, within), ...thin(closed, far, ring.length, within)];
}

/** From one corner up to another, without the last. */
function thin(line: readonly Point2[], from: number, to: number, within: number): Point2[] {
  const [[ax, ay], [bx, by]] = [line[from], line[to]];
  const length = Math.hypot(bx - ax, by - ay) || 1;
  let [most, at] = [within, -1];
  for (let k = from + 1; k < to; k++) {
    const away = Math.abs((bx - ax) * (line[k][1] - ay) - (by - ay) * (line[k][0] - ax)) / length;
    if (away > most) [most, at] = [away, k];
  }
  return at < 0 ? [line[from]] : [...thin(line, from, at, within), ...thin(line, at, to, within)];
}
