import earcut, { deviation } from 'earcut';
import { sidesCrossed, type Vec3 } from '../../geometry/index.ts';
import { newellVector, spanLoop, triangleArea } from '../repair/span-loop.ts';

/** Corner numbers of the triangles, three each, running the way the polygon runs. */
export interface Triangulation {
  readonly corners: readonly number[];
  /** True where the outline crosses itself or has no plane: closed with its neighbours, but of doubtful shape. */
  readonly rough: boolean;
  /** About how many steps it took beyond a plain fan. */
  readonly steps: number;
}

/** The cut triangles' areas may differ from the polygon's by this share, from rounding. */
const sameArea = 1e-6;
/** Up to this many corners a polygon that has no simple outline is spanned with the least area. */
const spannedUpTo = 200;
/** What clipping ears takes at worst (a spiral) per pair of corners, in steps of the least-area search. */
const clipping = 10;

/**
 * Cuts a polygon in space (three corners or more, nearly flat) into its n - 2 triangles. Every outline edge stays
 * an edge of one triangle, so that neighbours still meet: convex ones become a fan, concave ones are clipped ear
 * by ear in their mean plane (earcut, after Held 2001, "FIST"), what crosses itself is spanned as well as it can be.
 */
export function triangulate(points: readonly Vec3[]): Triangulation {
  const n = points.length;
  if (n === 3) return { corners: [0, 1, 2], rough: false, steps: 0 };
  if (n === 4) {
    const at = quadCorner(Float64Array.from(points.flat()));
    if (at !== undefined) return { corners: fan(n, at), rough: false, steps: 0 };
  }
  const flat = inMeanPlane(points);
  if (flat === undefined) return spanned(points);
  if (isFan(flat)) return { corners: fan(n, 0), rough: false, steps: 0 };
  const corners = earcut(flat);
  // Points on a straight line or met twice may be left out, which would tear the polygon from its neighbours.
  if (corners.length !== 3 * (n - 2) || !(deviation(flat, null, 2, corners) < sameArea)) {
    return spanned(points);
  }
  return { corners: orientedLike(flat, corners), rough: false, steps: clipping * n * n };
}

/**
 * The corner (0 or 1) from which a quadrilateral falls into two triangles that face its own way; undefined where
 * neither does. `p` holds x, y, z of its four corners. Meshes of quadrilaterals have millions of them.
 */
export function quadCorner(p: Float64Array): 0 | 1 | undefined {
  // The cross product of the diagonals is the area vector.
  const [ux, uy, uz] = [p[6] - p[0], p[7] - p[1], p[8] - p[2]];
  const [vx, vy, vz] = [p[9] - p[3], p[10] - p[4], p[11] - p[5]];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const faces = (i: number, j: number, k: number): boolean => {
    const [x, y, z] = sidesCrossed(p, i, j, k);
    return x * nx + y * ny + z * nz > 0;
  };
  if (faces(0, 1, 2) && faces(0, 2, 3)) return 0;
  return faces(1, 2, 3) && faces(1, 3, 0) ? 1 : undefined;
}

function fan(n: number, from: number): number[] {
  const corners: number[] = [];
  for (let i = 1; i + 1 < n; i++) corners.push(from, (from + i) % n, (from + i + 1) % n);
  return corners;
}

/** x, y of each corner in the plane the polygon leaves least; counter-clockwise. Undefined without an area. */
function inMeanPlane(points: readonly Vec3[]): number[] | undefined {
  const normal = newellVector(points);
  const [x, y, z] = normal.map(Math.abs);
  const drop = x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  if (!(Math.abs(normal[drop]) > 0) || !Number.isFinite(normal[drop])) return undefined;
  const [u, v] = normal[drop] > 0 ? [(drop + 1) % 3, (drop + 2) % 3] : [(drop + 2) % 3, (drop + 1) % 3];
  const [ou, ov] = [points[0][u], points[0][v]];
  return points.flatMap((point) => [point[u] - ou, point[v] - ov]);
}

/** Twice the signed area of corners i, j, k. */
const turn = (flat: readonly number[], i: number, j: number, k: number): number =>
  (flat[2 * j] - flat[2 * i]) * (flat[2 * k + 1] - flat[2 * i + 1]) -
  (flat[2 * j + 1] - flat[2 * i + 1]) * (flat[2 * k] - flat[2 * i]);

/** Whether every triangle of the fan from corner 0 turns the right way and the fan goes round less than once. */
function isFan(flat: readonly number[]): boolean {
  const n = flat.length / 2;
  for (let i = 1; i + 1 < n; i++) if (!(turn(flat, 0, i, i + 1) > 0)) return false;
  return bulges(flat);
}

/** No corner hollow, and the outline goes round once: no star. */
function bulges(flat: readonly number[]): boolean {
  const n = flat.length / 2;
  let changes = 0;
  let rising = flat[1] - flat[2 * n - 1] >= 0;
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n;
    if (turn(flat, i, next, (i + 2) % n) < 0) return false;
    const rises = flat[2 * next + 1] - flat[2 * i + 1];
    if (rises !== 0 && rises > 0 !== rising) {
      rising = rises > 0;
      changes++;
    }
  }
  return changes <= 2;
}

/** Makes the triangles run counter-clockwise in the plane, as the outline does. */
function orientedLike(flat: readonly number[], corners: readonly number[]): readonly number[] {
  let area = 0;
  for (let i = 0; i < corners.length; i += 3) area += turn(flat, corners[i], corners[i + 1], corners[i + 2]);
  return area >= 0 ? corners : [...corners].reverse();
}

/** The triangulation of least area: for an outline in a plane that does not cross itself, its own area. */
function spanned(points: readonly Vec3[]): Triangulation {
  const n = points.length;
  if (n > spannedUpTo) return { corners: fan(n, 0), rough: true, steps: clipping * n * n };
  const corners = spanLoop(points, () => false) ?? fan(n, 0);
  let area = 0;
  for (let i = 0; i < corners.length; i += 3) {
    area += triangleArea(points[corners[i]], points[corners[i + 1]], points[corners[i + 2]]);
  }
  const enclosed = Math.hypot(...newellVector(points)) / 2;
  return { corners, rough: !(area <= enclosed * (1 + sameArea)), steps: n ** 3 + clipping * n * n };
}
