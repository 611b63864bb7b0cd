import { Earcut } from 'three/src/extras/Earcut.js';
import { cross, dot, nextCorner, type Vec3 } from '../../geometry/index.ts';

/** Loops up to this many points get the best of all triangulations (n^3 / 6 steps); longer ones are clipped. */
const bestUpTo = 240;
/** Loops up to this many points are clipped corner by corner where the quick way fails. */
const slowUpTo = 1500;

/**
 * Triangulates a closed chain of points in space. Returns corner numbers (0..n-1, three a face, running the way the
 * chain runs), or undefined where it cannot be done without an edge that `taken(i, j)` says exists already.
 * Short chains: least area over all triangulations by dynamic programming (Barequet and Sharir 1995, "Filling gaps
 * in the boundary of a polyhedron"). Long ones: ears clipped in the loop's mean plane.
 */
export function spanLoop(
  points: readonly Vec3[],
  taken: (i: number, j: number) => boolean,
): number[] | undefined {
  if (points.length === 3) return [0, 1, 2];
  if (points.length <= bestUpTo) return leastArea(points, taken);
  return clipQuickly(points, taken) ?? (points.length <= slowUpTo ? clipEars(points, taken) : undefined);
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

/** Cross product of two sides of a triangle. */
const normalOf = (a: Vec3, b: Vec3, c: Vec3): Vec3 =>
  cross([b[0] - a[0], b[1] - a[1], b[2] - a[2]], [c[0] - a[0], c[1] - a[1], c[2] - a[2]]);

export const triangleArea = (a: Vec3, b: Vec3, c: Vec3): number => Math.hypot(...normalOf(a, b, c)) / 2;

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

/** Ears by a sorted curve through the points (earcut); undefined where that fails or makes a taken edge. */
function clipQuickly(
  points: readonly Vec3[],
  taken: (i: number, j: number) => boolean,
): number[] | undefined {
  const { along, across } = planeOf(newellVector(points));
  const faces = Earcut.triangulate(points.flatMap((p) => [dot(p, along), dot(p, across)]));
  const n = points.length;
  const [i, j, k] = faces;
  // The faces must run the way the chain runs: their corners' numbers go up, but for one step.
  if (Number(i < j) + Number(j < k) + Number(k < i) === 1) faces.reverse();
  const whole = withPointsInLine(faces, n);
  if (whole.length !== 3 * (n - 2)) return undefined;
  const isRim = (i: number, j: number): boolean => (i + 1) % n === j || (j + 1) % n === i;
  const clash = whole.some((v, h) => !isRim(v, whole[nextCorner(h)]) && taken(v, whole[nextCorner(h)]));
  return clash ? undefined : whole;
}

/** Puts the points back that were left out because they lie in line with their neighbours on the chain of n. */
function withPointsInLine(faces: readonly number[], n: number): number[] {
  const used = new Uint8Array(n);
  for (const v of faces) used[v] = 1;
  const whole: number[] = [];
  const open: (readonly [number, number, number])[] = [];
  for (let f = 0; f < faces.length; f += 3) open.push([faces[f], faces[f + 1], faces[f + 2]]);
  for (let face = open.pop(); face; face = open.pop()) {
    const gap = [0, 1, 2].find((k) => used[(face[k] + 1) % n] === 0);
    const split = gap === undefined ? undefined : splitAt(face, gap, used, n);
    if (split) open.push(...split);
    else whole.push(...face);
  }
  return whole;
}

/** The face as a fan over the points left out between its corner k and the next one, if they are all that is between. */
function splitAt(face: readonly [number, number, number], k: number, used: Uint8Array, n: number) {
  const from = face[k];
  const to = face[(k + 1) % 3];
  const tip = face[(k + 2) % 3];
  const chain = [from];
  for (let v = (from + 1) % n; v !== to; v = (v + 1) % n) {
    if (used[v] === 1) return undefined;
    chain.push(v);
  }
  for (const v of chain) used[v] = 1;
  chain.push(to);
  return chain.slice(1).map((v, i) => [chain[i], v, tip] as const);
}

/** Two unit vectors that span the plane with this normal, counter-clockwise seen against it. */
function planeOf(normal: Vec3): { along: Vec3; across: Vec3 } {
  const [x, y, z] = normal;
  const length = Math.hypot(x, y, z) || 1;
  const side = Math.abs(z) > 0.5 * length ? Math.hypot(z, x) : Math.hypot(x, y);
  const along: Vec3 = Math.abs(z) > 0.5 * length ? [z / side, 0, -x / side] : [-y / side, x / side, 0];
  const [ax, ay, az] = along;
  return {
    along,
    across: [(y * az - z * ay) / length, (z * ax - x * az) / length, (x * ay - y * ax) / length],
  };
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
const turn = (a: Vec3, b: Vec3, c: Vec3, normal: Vec3): number => dot(normalOf(a, b, c), normal);

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
