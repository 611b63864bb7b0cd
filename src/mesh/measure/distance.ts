import { BufferAttribute, BufferGeometry, DoubleSide, Ray, Matrix4 as ThreeMatrix, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import {
  type Bounds,
  boundsOf,
  identity,
  type Matrix4,
  movePoint,
  type TriangleMesh,
  type Vec3,
} from '../../kernel/index.ts';

/**
 * A mesh prepared for distance questions, standing where `matrix` puts it (uniform scale, turn and shift; mm).
 * Placements of one master share one tree.
 */
export interface DistanceTree {
  readonly bvh: MeshBVH;
  readonly matrix: Matrix4;
  /** Uniform scale of `matrix`. */
  readonly scale: number;
  /** Box of the placed mesh. */
  readonly bounds: Bounds;
  /** One vertex of each connected piece, placed. */
  readonly pieces: readonly Vec3[];
}

export type Distance =
  | { readonly distance: number; readonly pointA: Vec3; readonly pointB: Vec3 }
  | { readonly beyond: number };

interface Shared {
  readonly bvh: MeshBVH;
  readonly pieces: readonly Vec3[];
}

// Keyed by the triangles, which are shared by all placements of a master and never changed after they are made.
const trees = new WeakMap<Uint32Array, { readonly positions: Float32Array; readonly shared: Shared }>();

/** Prepares a closed mesh; `matrix` must scale all axes alike (a RangeError otherwise). Empty meshes: RangeError. */
export function distanceTree(mesh: TriangleMesh, matrix: Matrix4 = identity): DistanceTree {
  if (mesh.triangles.length === 0) throw new RangeError('distanceTree: the mesh is empty');
  const { bvh, pieces } = sharedTree(mesh);
  const placed = new Float64Array(mesh.positions.length);
  for (let i = 0; i < placed.length; i += 3) {
    placed.set(movePoint(matrix, [mesh.positions[i], mesh.positions[i + 1], mesh.positions[i + 2]]), i);
  }
  return {
    bvh,
    matrix,
    scale: uniformScale(matrix),
    bounds: boundsOf(placed),
    pieces: pieces.map((point) => movePoint(matrix, point)),
  };
}

function sharedTree(mesh: TriangleMesh): Shared {
  const known = trees.get(mesh.triangles);
  if (known && known.positions === mesh.positions) return known.shared;
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  // The tree sorts the index in place: it gets its own.
  geometry.setIndex(new BufferAttribute(mesh.triangles.slice(), 1));
  const bvh = new MeshBVH(geometry);
  geometry.boundsTree = bvh;
  const shared = { bvh, pieces: onePointEach(mesh) };
  trees.set(mesh.triangles, { positions: mesh.positions, shared });
  return shared;
}

function uniformScale(m: Matrix4): number {
  const lengths = [0, 4, 8].map((column) => Math.hypot(m[column], m[column + 1], m[column + 2]));
  const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
  if (!(least > 0) || most > least * (1 + 1e-6)) {
    throw new RangeError('distanceTree: the matrix must scale all axes alike');
  }
  return (least + most) / 2;
}

/** Union-find over the triangles' vertices; the first vertex met stands for its piece. */
function onePointEach({ positions, triangles }: TriangleMesh): Vec3[] {
  const parent = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
  const root = (vertex: number): number => {
    let at = vertex;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const a = root(triangles[t]);
    parent[root(triangles[t + 1])] = a;
    parent[root(triangles[t + 2])] = a;
  }
  const seen = new Set<number>();
  const points: Vec3[] = [];
  for (const vertex of triangles) {
    const piece = root(vertex);
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
  const toA = new ThreeMatrix().fromArray(a.matrix).invert();
  const fromB = new ThreeMatrix().fromArray(b.matrix).premultiply(toA);
  // The search compares with <: a hair more keeps a distance of exactly the limit.
  const most = (limit * (1 + 1e-9)) / a.scale + 1e-12;
  const [hitA, hitB] = [newHit(), newHit()];
  const found = a.bvh.closestPointToGeometry(b.bvh.geometry, fromB, hitA, hitB, 0, most);
  if (!found || hitA.distance > most) return { beyond: limit };
  const pointA = movePoint(a.matrix, tuple(hitA.point));
  const pointB = movePoint(b.matrix, tuple(hitB.point));
  return { distance: hitA.distance * a.scale, pointA, pointB };
}

const newHit = () => ({ point: new Vector3(), distance: Number.POSITIVE_INFINITY, faceIndex: 0 });

const tuple = ({ x, y, z }: Vector3): Vec3 => [x, y, z];

/** A vertex of a piece of `inner` that lies inside `outer`, if there is one. */
function insidePoint(inner: DistanceTree, outer: DistanceTree): Vec3 | undefined {
  return inner.pieces.find((point) => within(outer.bounds, point) && isInside(outer, point));
}

const within = ({ min, max }: Bounds, point: Vec3): boolean =>
  point.every((value, axis) => value >= min[axis] && value <= max[axis]);

/** Least distance of two boxes; 0 where they overlap. */
export function boxDistance(a: Bounds, b: Bounds): number {
  const gaps = [0, 1, 2].map((axis) => Math.max(0, a.min[axis] - b.max[axis], b.min[axis] - a.max[axis]));
  return Math.hypot(...gaps);
}

// Along no axis and no usual diagonal, so that a ray meets no edge of a plain shape.
const [lookX, lookY, lookZ] = [0.5377, 0.2741, 0.7973];

/** Winding along a ray: faces left minus faces entered, over 0 inside a closed mesh that looks outward. */
export function isInside(tree: DistanceTree, point: Vec3): boolean {
  const toLocal = new ThreeMatrix().fromArray(tree.matrix).invert();
  const origin = new Vector3(...point).applyMatrix4(toLocal);
  const direction = new Vector3(lookX, lookY, lookZ).normalize();
  let winding = 0;
  for (const { face } of tree.bvh.raycast(new Ray(origin, direction), DoubleSide)) {
    if (face) winding += Math.sign(face.normal.dot(direction));
  }
  return winding > 0;
}
