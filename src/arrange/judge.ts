import type { Point2 } from '../geometry/index.ts';
import type { Fixed, Kind, Problem } from './problem.ts';

/** Like pieces evenly round the axis, as they are written: the first one's place, the turn against the radius. */
export interface Laid {
  readonly kind: Kind;
  readonly copies: number;
  readonly radius: number;
  readonly angleRad: number;
  readonly turnRad: number;
  readonly leanRad: number;
  readonly mouth: number;
}

/** A limit that is not kept, mm. */
export interface Broken {
  readonly what: 'wall' | 'rim' | 'well' | 'fixed' | 'gate' | 'gates' | 'own' | 'no-gate';
  readonly one: string;
  /** Which of the laid orbits `one` is of. */
  readonly orbit: number;
  readonly other?: string;
  readonly measured: number;
  readonly limit: number;
}

interface Thing {
  readonly id: string;
  readonly orbit: number;
  readonly outline: readonly Point2[];
  readonly gate?: { readonly line: readonly [Point2, Point2]; readonly width: number } | undefined;
  readonly fixed?: Fixed;
  /** Its gate leans so far that it passes the well by. */
  readonly passes?: boolean;
  readonly level: number;
}

/** Rounding of sums in a place, mm. */
const slack = 1e-9;

/**
 * Holds a layout to its limits by the exact outlines, as it is written: sides against sides. Shares nothing with what
 * looked for it. `wall` is the least between two pieces.
 */
export function judge({ ground, fixed }: Problem, laid: readonly Laid[]) {
  const pieces = laid.flatMap((one, orbit) => thingsOf(one, orbit, ground.well?.radius));
  const still = fixed.map(
    (one): Thing => ({
      id: one.id,
      orbit: -1,
      outline: placed(one.shape.outline, one),
      fixed: one,
      level: one.level ?? 0,
    }),
  );
  const rise = (height: number): number => (ground.slope === undefined ? 0 : Math.abs(height) / ground.slope);
  const broken: Broken[] = [];
  let wall = Number.POSITIVE_INFINITY;
  const hold = (
    what: Broken['what'],
    one: Thing,
    other: Thing | undefined,
    measured: number,
    limit: number,
  ): void => {
    if (measured < limit - slack)
      broken.push({
        what,
        one: one.id,
        orbit: one.orbit,
        ...(other && { other: other.id }),
        measured,
        limit,
      });
  };
  for (const [i, one] of pieces.entries()) {
    // As long in its own piece as it is wide: then it runs along the outline.
    if (one.gate) hold('own', one, undefined, one.gate.width - lengthIn(one.outline, one.gate.line), 0);
    if (one.passes) broken.push({ what: 'no-gate', one: one.id, orbit: one.orbit, measured: 0, limit: 0 });
    hold(
      'rim',
      one,
      undefined,
      ground.radius - Math.max(...one.outline.map((at) => Math.hypot(...at))),
      Math.max(ground.rim, rise(one.level)),
    );
    if (ground.well) {
      const gap = gapTo(one.outline, [[0, 0]]) - ground.well.radius;
      hold('well', one, undefined, gap, Math.max(ground.well.limit, rise(one.level)));
    }
    for (const other of pieces.slice(i + 1)) {
      const limit = Math.max(ground.wall, rise(one.level - other.level));
      const gap = ringsApart(one.outline, other.outline, Math.max(wall, limit));
      wall = Math.min(wall, gap);
      hold('wall', one, other, gap, limit);
      if (one.gate && other.gate) {
        const width = (one.gate.width + other.gate.width) / 2;
        hold('gates', one, other, linesApart(one.gate.line, other.gate.line) - width, ground.gateGap);
      }
    }
    for (const other of still) {
      const { limit: own, gateLimit, isPiece } = other.fixed as Fixed;
      const limit = Math.max(own, rise(one.level - other.level));
      const gap = ringsApart(one.outline, other.outline, Math.max(limit, isPiece ? wall : 0));
      if (isPiece) wall = Math.min(wall, gap);
      hold('fixed', one, other, gap, limit);
      if (one.gate)
        hold('gate', one, other, gapTo(other.outline, one.gate.line) - one.gate.width / 2, gateLimit);
    }
    for (const other of pieces)
      if (one.gate && other !== one)
        hold('gate', one, other, gapTo(other.outline, one.gate.line) - one.gate.width / 2, ground.wall);
  }
  return { broken, wall };
}

/** Walls between pieces that stay, where they are near. */
export function fixedWalls(fixed: readonly Fixed[]) {
  const pieces = fixed.filter(({ isPiece }) => isPiece);
  const outlines = pieces.map((one) => placed(one.shape.outline, one));
  return pieces.flatMap(({ id: one, limit }, i) =>
    pieces.slice(i + 1).map(({ id: other }, k) => ({
      ...{ one, other },
      measured: ringsApart(outlines[i], outlines[i + 1 + k], limit),
    })),
  );
}

const placed = (
  outline: readonly Point2[],
  { x, y, turnRad }: { readonly x: number; readonly y: number; readonly turnRad: number },
): Point2[] => {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return outline.map(([u, v]) => [x + c * u - s * v, y + s * u + c * v]);
};

function thingsOf(
  { kind, copies, radius, angleRad, turnRad, leanRad, mouth }: Laid,
  orbit: number,
  well?: number,
): Thing[] {
  return Array.from({ length: copies }, (_, k): Thing => {
    const angle = angleRad + (2 * Math.PI * k) / copies;
    const at = { x: radius * Math.cos(angle), y: radius * Math.sin(angle), turnRad: angle + turnRad };
    const opening = kind.gate?.mouths[mouth];
    const [from] = opening ? placed([opening.within], at) : [];
    const line = from && well !== undefined ? gateLine(from, leanRad, well) : undefined;
    return {
      id: `${kind.id} ${k + 1}`,
      orbit,
      outline: placed(kind.shape.outline, at),
      ...(line && kind.gate && { gate: { line, width: kind.gate.width } }),
      passes: from !== undefined && line === undefined,
      level: kind.level ?? 0,
    };
  });
}

/** From a point straight to a circle round the axis, leaning clockwise from the way to the axis by the lean. */
function gateLine([x, y]: Point2, leanRad: number, well: number): [Point2, Point2] | undefined {
  const far = Math.hypot(x, y);
  const passes = far * Math.sin(leanRad);
  if (Math.abs(passes) >= well) return undefined;
  const length = far * Math.cos(leanRad) - Math.sqrt(well ** 2 - passes ** 2);
  const way = Math.atan2(-y, -x) - leanRad;
  return [
    [x, y],
    [x + length * Math.cos(way), y + length * Math.sin(way)],
  ];
}

/** Distance of two rings; 0 where they cross or one lies in the other. Not looked at nearer where it is over `most`. */
function ringsApart(a: readonly Point2[], b: readonly Point2[], most: number): number {
  const [boxA, boxB] = [boxOf(a), boxOf(b)];
  const roomy = Math.hypot(
    Math.max(0, boxA[0] - boxB[2], boxB[0] - boxA[2]),
    Math.max(0, boxA[1] - boxB[3], boxB[1] - boxA[3]),
  );
  if (roomy > Math.min(most, 1e6)) return roomy;
  if (isIn(a, b[0]) || isIn(b, a[0])) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const [i, p] of a.entries()) {
    const q = a[(i + 1) % a.length];
    if (boxGap(p, q, boxB) >= least) continue;
    least = sideToRing(p, q, b, least);
  }
  return least;
}

/** Distance of a line or a point from a ring; 0 where it crosses it or begins in it. */
function gapTo(ring: readonly Point2[], line: readonly Point2[]): number {
  if (isIn(ring, line[0])) return 0;
  const [from, to = from] = line;
  return sideToRing(from, to, ring, Number.POSITIVE_INFINITY);
}

/** How much of a line lies in a ring. */
function lengthIn(ring: readonly Point2[], [[x, y], [u, v]]: readonly [Point2, Point2]): number {
  const length = Math.hypot(u - x, v - y);
  const shares = ring.flatMap((c, i) => {
    const d = ring[(i + 1) % ring.length];
    const [from, to] = [side([x, y], [u, v], c), side([x, y], [u, v], d)];
    if (from > 0 === to > 0) return [];
    const [px, py] = [
      c[0] + ((d[0] - c[0]) * from) / (from - to),
      c[1] + ((d[1] - c[1]) * from) / (from - to),
    ];
    const share = ((px - x) * (u - x) + (py - y) * (v - y)) / length ** 2;
    return share > 0 && share < 1 ? [share] : [];
  });
  const cuts = [0, ...shares.sort((a, b) => a - b), 1];
  let inside = isIn(ring, [x, y]);
  let sum = 0;
  for (let k = 1; k < cuts.length; k++) {
    if (inside) sum += (cuts[k] - cuts[k - 1]) * length;
    inside = !inside;
  }
  return sum;
}

const linesApart = ([a, b]: readonly [Point2, Point2], [c, d]: readonly [Point2, Point2]): number =>
  sidesApart(a, b, c, d);

type Box = readonly [number, number, number, number];

const boxOf = (ring: readonly Point2[]): Box => [
  Math.min(...ring.map(([x]) => x)),
  Math.min(...ring.map(([, y]) => y)),
  Math.max(...ring.map(([x]) => x)),
  Math.max(...ring.map(([, y]) => y)),
];

const boxGap = (p: Point2, q: Point2, [x0, y0, x1, y1]: Box): number =>
  Math.hypot(
    Math.max(0, x0 - Math.max(p[0], q[0]), Math.min(p[0], q[0]) - x1),
    Math.max(0, y0 - Math.max(p[1], q[1]), Math.min(p[1], q[1]) - y1),
  );

function isIn(ring: readonly Point2[], [x, y]: Point2): boolean {
  let inside = false;
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length];
    if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
  }
  return inside;
}

const side = (p: Point2, q: Point2, r: Point2): number =>
  (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);

function sidesApart(a: Point2, b: Point2, c: Point2, d: Point2): number {
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(away(a, c, d), away(b, c, d), away(c, a, b), away(d, a, b));
}

/** Least distance of a side from a ring where that is under `least`, else `least`. Those that cannot be nearer are passed by. */
function sideToRing(p: Point2, q: Point2, ring: readonly Point2[], least: number): number {
  const [mx, my, half] = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, Math.hypot(p[0] - q[0], p[1] - q[1]) / 2];
  let found = least;
  let from = ring[ring.length - 1];
  for (const to of ring) {
    const own = Math.abs(to[0] - from[0]) + Math.abs(to[1] - from[1]);
    const near = found + half + own;
    const [dx, dy] = [to[0] - mx, to[1] - my];
    if (dx * dx + dy * dy < near * near) found = Math.min(found, sidesApart(p, q, from, to));
    from = to;
  }
  return found;
}

function away([x, y]: Point2, [ax, ay]: Point2, [bx, by]: Point2): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
