import { DoubleSide, Ray, Vector3 } from 'three';
import { type TriangleMesh, triangleCount, type Vec3 } from '../../geometry/index.ts';
import { bvhOf } from './bvh.ts';

/** The thinnest place found: a wall between two faces that look away from each other. */
export interface Thinnest {
  readonly thickness: number;
  /** On the surface, mm, in the mesh's own frame. */
  readonly place: Vec3;
}

/** Cosine beyond which two faces are the two sides of one wall: they lie within about 37 degrees of parallel. */
const opposed = -0.8;
/** A ray starts this far under the face it is cast from, mm, so as not to meet it. */
const skin = 1e-4;

/**
 * Thinnest wall of a closed mesh by rays cast inward, square to the face, from the middles of faces: all of them where
 * there are at most `rays`, else every so many-th. Undefined where no ray meets a face opposite. Walls between the
 * faces looked at are not seen, so what it finds is an upper bound of the least thickness. None is cast from faces that
 * `leaves` leaves out, by their middle and normal.
 */
export function thinnestWall(
  mesh: TriangleMesh,
  rays: number,
  leaves: (middle: Vec3, normal: Vec3) => boolean = () => false,
): Thinnest | undefined {
  const bvh = bvhOf(mesh);
  const step = Math.max(1, Math.ceil(triangleCount(mesh) / rays));
  let thinnest: Thinnest | undefined;
  for (let face = 0; face < triangleCount(mesh); face += step) {
    const { middle, normal } = faceAt(mesh, face);
    if (!(normal.lengthSq() > 0) || leaves(middle.toArray(), normal.toArray())) continue;
    const start = middle.clone().addScaledVector(normal, -skin);
    const hit = bvh.raycastFirst(new Ray(start, normal.clone().negate()), DoubleSide);
    if (!hit?.face || hit.face.normal.dot(normal) > opposed) continue;
    const thickness = hit.distance + skin;
    if (!thinnest || thickness < thinnest.thickness)
      thinnest = { thickness, place: [middle.x, middle.y, middle.z] };
  }
  return thinnest;
}

function faceAt({ positions: p, triangles }: TriangleMesh, face: number) {
  const [a, b, c] = [0, 1, 2].map((k) => new Vector3().fromArray(p, triangles[face * 3 + k] * 3));
  const middle = a.clone().add(b).add(c).divideScalar(3);
  return { middle, normal: b.sub(a).cross(c.sub(a)).normalize() };
}
