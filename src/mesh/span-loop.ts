import type { Vec3 } from '../kernel/index.ts';

/** Loops up to this many points get the best of all triangulations (n^3 / 6 steps); longer ones are clipped. */
const bestUpTo = 240;

/**
 * Triangulates a closed chain of points in space. Returns corner numbers (0..n-1, three a face, running the way the
 * chain runs), or undefined where it cannot be done without an edge that `taken(i, j)` says exists already.
 * Short chains: least area over all triangulations by dynamic programming (Barequet and Sharir 1995, "Filling gaps
 * in the boundary of a polyhedron"). Long ones: ears clipped in the loop's mean plane, sharpest corner first.
 */
export function spanLoop(
  points: readonly Vec3[],
  taken: (i: number, j: number) => boolean,
): number[] | undefined {
  if (points.length === 3) return [0, 1, 2];
  return points.length <= bestUpTo ? leastArea(points, taken) : clipEars(points, taken);
}

/** Twice the area vector of a closed chain (Newell): its direction is that of the mean plane. */
export function newellVector(points: readonly Vec3[]): Vec3 {
  const sum: [number, number, number] = [0, 0, 0];
  const [ox, oy, oz] = points[0];
  for (let i = 0; i < points.length; i++) {
    const [ax, ay, az] = points[i];
    const [bx, by, bz] = points[(i + 1) % points.length];
    sum[0] += (ay - oy) * (bz - oz) - (az - oz) * (by - oy);
    sum[1] += (az - oz) * (bx - ox) - (ax - ox) * (bz - oz);
    sum[2] += (ax - ox) * (by - oy) - (ay - oy) * (bx - ox);
  }
  return sum;
}

export function triangleArea(a: Vec3, b: Vec3, c: Vec3): number {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const uz = b[2] - a[2];
  const vx = c[0] - a[0];
  const vy = c[1] - a[1];
  const vz = c[2] - a[2];
  return Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2;
}

function leastArea(points: readonly Vec3[], taken: (i: number, j: number) => boolean): number[] | undefined {
  const n = points.length;
  const cost = new Float64Array(n * n);
  const split = new Int32Array(n * n).fill(-1);
  for (let span = 2; span < n; span++) {
    for (let i = 0; i + span < n; i++) {
      const j = i + span;
      let best = Number.POSITIVE_INFINITY;
      // The chain's own closing edge (0, n - 1) is there by right; any other edge must be new.
      if (span === n - 1 || !taken(i, j)) {
        for (let k = i + 1; k < j; k++) {
          const sides = cost[i * n + k] + cost[k * n + j];
          if (sides >= best) continue;
          const total = sides + triangleArea(points[i], points[k], points[j]);
          if (total < best) {
            best = total;
            split[i * n + j] = k;
          }
        }
      }
      cost[i * n + j] = best;
    }
  }
  if (!Number.isFinite(cost[n - 1])) return undefined;
  const faces: number[] = [];
  const open: [number, number][] = [[0, n - 1]];
  for (let range = open.pop(); range; range = open.pop()) {
    const [i, j] = range;
    if (j - i < 2) continue;
    const k = split[i * n + j];
    faces.push(i, k, j);
    open.push([k, j], [i, k]);
  }
  return faces;
}

function clipEars(points: readonly Vec3[], taken: (i: number, j: number) => boolean): number[] | undefined {
  const normal = newellVector(points);
  const ring = points.map((_, i) => i);
  const faces: number[] = [];
  while (ring.length > 3) {
    const ear = sharpestEar(points, ring, normal, taken);
    if (ear === undefined) return undefined;
    const n = ring.length;
    faces.push(ring[(ear + n - 1) % n], ring[ear], ring[(ear + 1) % n]);
    ring.splice(ear, 1);
  }
  faces.push(ring[0], ring[1], ring[2]);
  return faces;
}

/** The corner, convex in the mean plane and with no other point inside, whose cut leaves the shortest new edge. */
function sharpestEar(
  points: readonly Vec3[],
  ring: readonly number[],
  normal: Vec3,
  taken: (i: number, j: number) => boolean,
): number | undefined {
  const n = ring.length;
  let best: number | undefined;
  let shortest = Number.POSITIVE_INFINITY;
  for (let at = 0; at < n; at++) {
    const i = ring[(at + n - 1) % n];
    const j = ring[at];
    const k = ring[(at + 1) % n];
    const length = Math.hypot(
      points[i][0] - points[k][0],
      points[i][1] - points[k][1],
      points[i][2] - points[k][2],
    );
    if (length >= shortest || taken(i, k) || turn(points[i], points[j], points[k], normal) <= 0) continue;
    if (ring.some((v) => v !== i && v !== j && v !== k && covers(points, [i, j, k], v, normal))) continue;
    shortest = length;
    best = at;
  }
  return best;
}

/** Positive where a -> b -> c turns counter-clockwise seen against `normal`. */
function turn(a: Vec3, b: Vec3, c: Vec3, normal: Vec3): number {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const uz = b[2] - a[2];
  const vx = c[0] - a[0];
  const vy = c[1] - a[1];
  const vz = c[2] - a[2];
  return (uy * vz - uz * vy) * normal[0] + (uz * vx - ux * vz) * normal[1] + (ux * vy - uy * vx) * normal[2];
}

function covers(
  points: readonly Vec3[],
  [i, j, k]: readonly [number, number, number],
  v: number,
  normal: Vec3,
): boolean {
  const p = points[v];
  return (
    turn(points[i], points[j], p, normal) > 0 &&
    turn(points[j], points[k], p, normal) > 0 &&
    turn(points[k], points[i], p, normal) > 0
  );
}
