import { eachPairOfFaces, eachPairWith } from './face-pairs.ts';
import { memoPerMesh } from './memo.ts';
import { orientation } from './orientation.ts';
import type { TriangleMesh, Vec3 } from './triangles.ts';
import { dot, sidesCrossed } from './vector.ts';

/** An edge that goes through a face, or ends within it. */
export interface Crossing {
  /** Faces by their number: the one gone through, and one that has the edge. */
  readonly through: number;
  readonly by: number;
  /** The end of the edge that is nearer to the plane of the face, and how far (mm) beyond it that lies. */
  readonly corner: number;
  /** The other end. */
  readonly other: number;
  readonly depth: number;
}

/**
 * Where faces of an indexed mesh cross one another: every edge that meets a face with which it has no corner in
 * common, at its rim too, told exactly from the float32 coordinates. Faces in one plane do not cross. Leaves off after `most`.
 */
export function crossingFaces(mesh: TriangleMesh, most = Number.POSITIVE_INFINITY): Crossing[] {
  const found: Crossing[] = [];
  eachPairOfFaces(mesh, (f, g) => {
    const one = crossingOf(mesh, f, g);
    if (one) found.push(one);
    return found.length < most;
  });
  return found;
}

const known = memoPerMesh((): { crossings?: readonly Crossing[] } => ({}));

/**
 * All crossings of a mesh that stays, looked for once. `earlier`, one of the same faces with a few corners elsewhere, whose
 * crossings are known: then no two faces that stayed are asked about again.
 */
export function crossingsOf(mesh: TriangleMesh, earlier?: TriangleMesh): readonly Crossing[] {
  const found = known(mesh);
  found.crossings ??= earlier && allParted(mesh, earlier) ? [] : crossingFaces(mesh);
  return found.crossings;
}

/** Faces changed beyond this share are looked for as quickly in the whole mesh. */
const few = 1 / 16;

/** Whether each of the earlier crossings had a face that has changed since, and no changed face crosses any face now. */
function allParted(mesh: TriangleMesh, earlier: TriangleMesh): boolean {
  const { crossings } = known(earlier);
  const changed = changedFaces(mesh, earlier);
  if (!crossings || !changed) return false;
  const among = new Set(changed);
  if (crossings.some(({ through, by }) => !among.has(through) && !among.has(by))) return false;
  let none = true;
  eachPairWith(mesh, changed, (f, g) => {
    none = crossingOf(mesh, f, g) === undefined;
    return none;
  });
  return none;
}

/** Faces whose vertices are others or elsewhere than those of the same number in the earlier mesh; none given where they are many. */
function changedFaces(
  { positions: p, triangles }: TriangleMesh,
  earlier: TriangleMesh,
): number[] | undefined {
  const { positions: q, triangles: before } = earlier;
  if (triangles.length !== before.length) return undefined;
  const changed: number[] = [];
  for (let h = 0; h < triangles.length; h++) {
    const [v, w] = [triangles[h] * 3, before[h] * 3];
    if (v === w && p[v] === q[v] && p[v + 1] === q[v + 1] && p[v + 2] === q[v + 2]) continue;
    changed.push((h - (h % 3)) / 3);
    if (changed.length * 3 > triangles.length * few) return undefined;
    h += 2 - (h % 3);
  }
  return changed;
}

function cornersShared(triangles: Uint32Array, f: number, g: number): number {
  let shared = 0;
  for (let k = 0; k < 3; k++) {
    const v = triangles[f + k];
    if (v === triangles[g] || v === triangles[g + 1] || v === triangles[g + 2]) shared++;
  }
  return shared;
}

/**
 * The first side of one of two faces that goes through the other, `f` asked first. Where the corners of one lie on one
 * side of the other's plane, but for those they have in common, neither goes through the other. Functions of their own, no
 * closures: halves have a million faces.
 */
function crossingOf(mesh: TriangleMesh, f: number, g: number): Crossing | undefined {
  const { positions: p, triangles } = mesh;
  // Two faces with a side in common have no side that could go through the other.
  if (cornersShared(triangles, f * 3, g * 3) > 1) return undefined;
  const i = triangles[f * 3];
  const j = triangles[f * 3 + 1];
  const k = triangles[f * 3 + 2];
  const a = triangles[g * 3];
  const b = triangles[g * 3 + 1];
  const c = triangles[g * 3 + 2];
  const sideA = sideOf(p, i, j, k, a);
  const sideB = sideOf(p, i, j, k, b);
  const sideC = sideOf(p, i, j, k, c);
  if (onOneSide(sideA, sideB, sideC)) return undefined;
  const sideI = sideOf(p, a, b, c, i);
  const sideJ = sideOf(p, a, b, c, j);
  const sideK = sideOf(p, a, b, c, k);
  if (onOneSide(sideI, sideJ, sideK)) return undefined;
  if (goesThrough(p, i, j, k, a, b, sideA, sideB)) return crossingAt(mesh, f, g, a, b);
  if (goesThrough(p, i, j, k, b, c, sideB, sideC)) return crossingAt(mesh, f, g, b, c);
  if (goesThrough(p, i, j, k, c, a, sideC, sideA)) return crossingAt(mesh, f, g, c, a);
  if (goesThrough(p, a, b, c, i, j, sideI, sideJ)) return crossingAt(mesh, g, f, i, j);
  if (goesThrough(p, a, b, c, j, k, sideJ, sideK)) return crossingAt(mesh, g, f, j, k);
  if (goesThrough(p, a, b, c, k, i, sideK, sideI)) return crossingAt(mesh, g, f, k, i);
  return undefined;
}

/** Whether corners are all strictly on one side of a plane; one at a corner of the face in it (NaN) does not count. */
const onOneSide = (a: number, b: number, c: number): boolean =>
  (!(a <= 0) && !(b <= 0) && !(c <= 0)) || (!(a >= 0) && !(b >= 0) && !(c >= 0));

/** The crossing of a side of `by` with the face it goes through. */
function crossingAt(mesh: TriangleMesh, through: number, by: number, from: number, to: number): Crossing {
  const [i, j, k] = mesh.triangles.subarray(through * 3, through * 3 + 3);
  const ofFrom = distanceToPlane(mesh.positions, i, j, k, from);
  const ofTo = distanceToPlane(mesh.positions, i, j, k, to);
  const [corner, other] = ofFrom < ofTo ? [from, to] : [to, from];
  return { through, by, corner, other, depth: Math.min(ofFrom, ofTo) };
}

/** NaN for a corner of the face itself, or one at the place of it: it is on no side, and what ends there does not go through. */
function sideOf(p: Float32Array, i: number, j: number, k: number, v: number): number {
  if (v === i || v === j || v === k) return Number.NaN;
  const side = orientation(p, i, j, k, v);
  return side === 0 && (isAt(p, v, i) || isAt(p, v, j) || isAt(p, v, k)) ? Number.NaN : side;
}

const isAt = (p: Float32Array, v: number, w: number): boolean =>
  p[v * 3] === p[w * 3] && p[v * 3 + 1] === p[w * 3 + 1] && p[v * 3 + 2] === p[w * 3 + 2];

function goesThrough(
  p: Float32Array,
  i: number,
  j: number,
  k: number,
  from: number,
  to: number,
  sideFrom: number,
  sideTo: number,
): boolean {
  if (!(sideFrom * sideTo <= 0) || (sideFrom === 0 && sideTo === 0)) return false;
  const first = orientation(p, from, to, i, j);
  const second = orientation(p, from, to, j, k);
  if (first * second < 0) return false;
  const third = orientation(p, from, to, k, i);
  return first * third >= 0 && second * third >= 0;
}

function distanceToPlane(p: Float32Array, i: number, j: number, k: number, v: number): number {
  const normal = sidesCrossed(p, i, j, k);
  const to: Vec3 = [p[v * 3] - p[i * 3], p[v * 3 + 1] - p[i * 3 + 1], p[v * 3 + 2] - p[i * 3 + 2]];
  return Math.abs(dot(normal, to)) / Math.hypot(...normal);
}
