import { eachPairOfFaces } from './face-pairs.ts';
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
    // Two faces with a side in common have no side that could go through the other.
    if (cornersShared(mesh.triangles, f * 3, g * 3) > 1) return true;
    const one = crossingOf(mesh, f, g) ?? crossingOf(mesh, g, f);
    if (one) found.push(one);
    return found.length < most;
  });
  return found;
}

/** All crossings of a mesh that stays, looked for once. */
export const crossingsOf = memoPerMesh((mesh) => crossingFaces(mesh));

function cornersShared(triangles: Uint32Array, f: number, g: number): number {
  let shared = 0;
  for (let k = 0; k < 3; k++) {
    const v = triangles[f + k];
    if (v === triangles[g] || v === triangles[g + 1] || v === triangles[g + 2]) shared++;
  }
  return shared;
}

/** The first side of one face that goes through the other. Functions of their own, no closures: halves have a million faces. */
function crossingOf(mesh: TriangleMesh, through: number, by: number): Crossing | undefined {
  const { positions: p, triangles } = mesh;
  const i = triangles[through * 3];
  const j = triangles[through * 3 + 1];
  const k = triangles[through * 3 + 2];
  const a = triangles[by * 3];
  const b = triangles[by * 3 + 1];
  const c = triangles[by * 3 + 2];
  const sideA = sideOf(p, i, j, k, a);
  const sideB = sideOf(p, i, j, k, b);
  const sideC = sideOf(p, i, j, k, c);
  if ((sideA > 0 && sideB > 0 && sideC > 0) || (sideA < 0 && sideB < 0 && sideC < 0)) return undefined;
  let from = -1;
  let to = -1;
  if (goesThrough(p, i, j, k, a, b, sideA, sideB)) [from, to] = [a, b];
  else if (goesThrough(p, i, j, k, b, c, sideB, sideC)) [from, to] = [b, c];
  else if (goesThrough(p, i, j, k, c, a, sideC, sideA)) [from, to] = [c, a];
  else return undefined;
  const [ofFrom, ofTo] = [distanceToPlane(p, i, j, k, from), distanceToPlane(p, i, j, k, to)];
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
