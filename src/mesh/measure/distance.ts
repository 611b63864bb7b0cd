import { Matrix4 as ThreeMatrix, Vector3 } from 'three';
import { ExtendedTriangle } from 'three-mesh-bvh';
import {
  type Bounds,
  boundsOf,
  identity,
  type Matrix4,
  memoPerMesh,
  movePoint,
  pieceOfVertex,
  type TriangleMesh,
  type Vec3,
} from '../../geometry/index.ts';
import { type TriangleTree, treeOf } from '../repair/triangle-tree.ts';
import { facePairs } from './face-pairs.ts';

/**
 * A mesh prepared for distance questions, standing where `matrix` puts it (uniform scale, turn and shift; mm).
 * Placements of one master share one tree.
 */
export interface DistanceTree {
  readonly positions: Float32Array;
  readonly faces: TriangleTree;
  readonly matrix: Matrix4;
  /** Uniform scale of `matrix`. */
  readonly scale: number;
  /** A box that holds the placed mesh: that round its own box where that stands. */
  readonly bounds: Bounds;
  /** One vertex of each connected piece, placed. */
  readonly pieces: readonly Vec3[];
}

export type Distance =
  | { readonly distance: number; readonly pointA: Vec3; readonly pointB: Vec3 }
  | { readonly beyond: number };

/** What all placements of a mesh share. */
const sharedOf = memoPerMesh((mesh) => ({ bounds: boundsOf(mesh.positions), pieces: onePointEach(mesh) }));

/** Prepares a closed mesh; `matrix` must scale all axes alike (a RangeError otherwise). Empty meshes: RangeError. */
export function distanceTree(mesh: TriangleMesh, matrix: Matrix4 = identity): DistanceTree {
  if (mesh.triangles.length === 0) throw new RangeError('distanceTree: the mesh is empty');
  const { bounds, pieces } = sharedOf(mesh);
  return {
    positions: mesh.positions,
    faces: treeOf(mesh),
    matrix,
    scale: uniformScale(matrix),
    bounds: movedBounds(bounds, matrix),
    pieces: pieces.map((point) => movePoint(matrix, point)),
  };
}

/** The box round the eight corners of a box, moved. */
function movedBounds({ min, max }: Bounds, matrix: Matrix4): Bounds {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((bits) =>
    movePoint(matrix, [bits & 1 ? max[0] : min[0], bits & 2 ? max[1] : min[1], bits & 4 ? max[2] : min[2]]),
  );
  return boundsOf(Float64Array.from(corners));
}

function uniformScale(m: Matrix4): number {
  const lengths = [0, 4, 8].map((column) => Math.hypot(m[column], m[column + 1], m[column + 2]));
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  if (!(least > 0) || most > least * (1 + 1e-6)) {
    throw new RangeError('distanceTree: the matrix must scale all axes alike');
  }
  return (least + most) / 2;
}

/** The first vertex met stands for its piece. */
function onePointEach(mesh: TriangleMesh): Vec3[] {
  const { positions, triangles } = mesh;
  const pieceOf = pieceOfVertex(mesh);
  const seen = new Set<number>();
  const points: Vec3[] = [];
  for (const vertex of triangles) {
    const piece = pieceOf(vertex);
    if (seen.has(piece)) continue;
    seen.add(piece);
    points.push([positions[vertex * 3], positions[vertex * 3 + 1], positions[vertex * 3 + 2]]);
  }
  return points;
}

/**
 * True distance of two solids in mm with a nearest point on each, looked for up to `limit`; `beyond` where they are
 * farther apart than that. Solids that overlap, or of which one lies wholly inside the other, have distance 0 and
 * a common point.
 */
export function meshDistance(a: DistanceTree, b: DistanceTree, limit: number): Distance {
  if (boxDistance(a.bounds, b.bounds) > limit) return { beyond: limit };
  const inside = insidePoint(a, b) ?? insidePoint(b, a);
  if (inside) return { distance: 0, pointA: inside, pointB: inside };
  // The search looks at every part of the first mesh that is near the box round the second: the smaller goes first.
  if (facesOf(a) <= facesOf(b)) return surfaceDistance(a, b, limit);
  const rotated = surfaceDistance(b, a, limit);
  return 'beyond' in rotated ? rotated : { ...rotated, pointA: rotated.pointB, pointB: rotated.pointA };
}

const facesOf = ({ faces }: DistanceTree): number => faces.corners.length / 9;

function surfaceDistance(a: DistanceTree, b: DistanceTree, limit: number): Distance {
  const fromB = new ThreeMatrix().fromArray(b.matrix).premultiply(inverse(a.matrix));
  const bound = betweenByTurns(a, b);
  // The search compares with <: a hair more keeps a distance of exactly the limit.
  const most = Math.min(limit * (1 + 1e-9), bound.distance * (1 + 1e-9)) / a.scale + 1e-12;
  const [faceA, faceB]: Face[] = [new ExtendedTriangle(), new ExtendedTriangle()];
  const distanceOf = (i: number, k: number, onA?: Vector3, onB?: Vector3): number => {
    setFace(faceA, a.faces.corners, i);
    setFace(faceB, b.faces.corners, k, fromB);
    return faceA.distanceToTriangle(faceB, onA, onB);
  };
  let least = most;
  let nearest: readonly [number, number] | undefined;
  facePairs(
    a.faces,
    b.faces,
    { fromB: fromB.elements, along: directionIn(a, bound) },
    () => least,
    (i, k) => {
      const distance = distanceOf(i, k);
      if (!(distance < least)) return;
      least = distance;
      nearest = [i, k];
    },
  );
  if (!nearest) return bound.distance <= limit ? bound : { beyond: limit };
  const [onA, onB] = [new Vector3(), new Vector3()];
  distanceOf(...nearest, onA, onB);
  // Both points are in a's frame.
  const pointA = movePoint(a.matrix, tuple(onA));
  const pointB = movePoint(a.matrix, tuple(onB));
  return { distance: least * a.scale, pointA, pointB };
}

/** From the one point to the other in the frame of a's mesh, of length 1; nothing where they are the same. */
function directionIn({ matrix }: DistanceTree, { pointA, pointB }: { pointA: Vec3; pointB: Vec3 }): Vec3 {
  const way = new Vector3(...pointB).sub(new Vector3(...pointA));
  return tuple(way.transformDirection(inverse(matrix)));
}

/** The library's triangle with both of its points, which its types leave out. */
interface Face extends ExtendedTriangle {
  distanceToTriangle(other: ExtendedTriangle, onThis?: Vector3, onOther?: Vector3): number;
}

function setFace(face: ExtendedTriangle, corners: Float64Array, index: number, move?: ThreeMatrix): void {
  for (const [k, corner] of [face.a, face.b, face.c].entries()) {
    corner.fromArray(corners, index * 9 + k * 3);
    if (move) corner.applyMatrix4(move);
  }
  face.needsUpdate = true;
}

const inverse = (matrix: Matrix4): ThreeMatrix => new ThreeMatrix().fromArray(matrix).invert();

/** So many vertices of one mesh are tried as a start. */
const starts = 200;
/** So often the nearest point is looked for by turns at most; it seldom takes more than a few. */
const turns = 20;

/**
 * A point of each body, near each other: the best of some vertices of the first with what is nearest to it, and then
 * back and forth. No less than the true distance, and seldom much more: so the search for that can leave out nearly
 * everything.
 */
function betweenByTurns(a: DistanceTree, b: DistanceTree) {
  const count = a.positions.length / 3;
  const step = Math.max(1, Math.floor(count / starts));
  const toB = inverse(b.matrix).multiply(new ThreeMatrix().fromArray(a.matrix));
  const point = new Vector3();
  let best = { distance: Number.POSITIVE_INFINITY, point: new Vector3() };
  for (let v = 0; v < count; v += step) {
    point.fromArray(a.positions, 3 * v).applyMatrix4(toB);
    const hit = nearestTo(b.faces, point, best.distance);
    if (hit) best = hit;
  }
  let pointB = movePoint(b.matrix, tuple(best.point));
  let pointA = nearestPoint(a, pointB);
  let distance = apart(pointA, pointB);
  for (let turn = 0; turn < turns; turn++) {
    const nextB = nearestPoint(b, pointA);
    const nextA = nearestPoint(a, nextB);
    const next = apart(nextA, nextB);
    if (!(next < distance)) break;
    [pointA, pointB, distance] = [nextA, nextB, next];
  }
  return { distance, pointA, pointB };
}

const apart = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** The point of a placed mesh's surface nearest to a point. */
function nearestPoint({ faces, matrix }: DistanceTree, point: Vec3): Vec3 {
  const hit = nearestTo(faces, new Vector3(...point).applyMatrix4(inverse(matrix)));
  if (!hit) throw new Error('nearestPoint: no face in the tree');
  return movePoint(matrix, tuple(hit.point));
}

/** The nearest point of the faces and its distance, all in the mesh's own frame; nothing beyond the limit. */
function nearestTo(faces: TriangleTree, from: Vector3, limit = Number.POSITIVE_INFINITY) {
  const index = faces.nearestFace(from.x, from.y, from.z, limit);
  if (index < 0) return undefined;
  const [face, point] = [new ExtendedTriangle(), new Vector3()];
  setFace(face, faces.corners, index);
  face.closestPointToPoint(from, point);
  return { point, distance: point.distanceTo(from) };
}

const tuple = ({ x, y, z }: Vector3): Vec3 => [x, y, z];

/** A vertex of a piece of `inner` that lies inside `outer`, if there is one. */
function insidePoint(inner: DistanceTree, outer: DistanceTree): Vec3 | undefined {
  return inner.pieces.find((point) => within(outer.bounds, point) && isInside(outer, point));
}

const within = ({ min, max }: Bounds, point: Vec3): boolean =>
  point.every((value, axis) => value >= min[axis] && value <= max[axis]);

/** Least distance of two boxes; 0 where they overlap. */
function boxDistance(a: Bounds, b: Bounds): number {
  const gaps = [0, 1, 2].map((axis) => Math.max(0, a.min[axis] - b.max[axis], b.min[axis] - a.max[axis]));
  return Math.hypot(...gaps);
}

/** Whether a closed mesh that looks outward winds round the point. */
export function isInside({ faces, matrix }: DistanceTree, point: Vec3): boolean {
  const { x, y, z } = new Vector3(...point).applyMatrix4(inverse(matrix));
  return faces.windingAt(x, y, z) > 0.5;
}
