import { Box3, Vector3 } from 'three';
import type { MeshBVH } from 'three-mesh-bvh';
import { type TriangleMesh, triangleCount, type Vec3 } from '../../geometry/index.ts';
import { bvhOf } from './bvh.ts';

/** The thickest place found: the middle of the largest ball inside. */
export interface Thickest {
  readonly radius: number;
  readonly center: Vec3;
}

/** Places on the surface that are looked from, about: more of them on a large face, every so many-th small one. */
const looks = 1500;
const rounds = 40;
/** A ball this share smaller than the last one found is another one. */
const hair = 1e-4;

/**
 * The largest ball inside a closed mesh: from places all over its surface the ball is found that touches it there and
 * reaches nothing else, by shrinking (Ma, Bae and Choi 2012, as for inner radii); the largest is then moved to where it can
 * be largest.
 */
export function thickestSpot(mesh: TriangleMesh): Thickest {
  const bvh = bvhOf(mesh);
  const hit = { point: new Vector3(), distance: 0, faceIndex: 0 };
  const [center, toHit] = [new Vector3(), new Vector3()];
  const best = { radius: 0, center: new Vector3() };
  const largest = bvh.getBoundingBox(new Box3()).getSize(new Vector3()).length() / 2;
  for (const { place, inward } of placesOn(mesh)) {
    let radius = largest;
    for (let round = 0; round < rounds && radius > best.radius; round++) {
      center.copy(place).addScaledVector(inward, radius);
      const near = bvh.closestPointToPoint(center, hit, 0, radius * (1 - hair));
      if (!near || near.distance >= radius * (1 - hair)) break;
      toHit.subVectors(near.point, place);
      const ahead = inward.dot(toHit);
      radius = ahead > 0 ? Math.min(radius * (1 - hair), toHit.lengthSq() / (2 * ahead)) : 0;
    }
    if (radius <= best.radius) continue;
    best.radius = radius;
    best.center.copy(place).addScaledVector(inward, radius);
  }
  return largestNear(bvh, best.center);
}

/** Square to the axes, and to the corners of a cube. */
const ways = [-1, 0, 1].flatMap((x) =>
  [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((z) => new Vector3(x, y, z).normalize())),
);

/** Moves the middle of a ball, ever less, to wherever the surface is farther away. It stays inside: it never crosses it. */
function largestNear(bvh: MeshBVH, from: Vector3): Thickest {
  const center = from.clone();
  const away = (place: Vector3): number => bvh.closestPointToPoint(place)?.distance ?? 0;
  let radius = away(center);
  const tried = new Vector3();
  for (let step = radius / 2; step > hair * radius; ) {
    const further = ways.find((way) => away(tried.copy(center).addScaledVector(way, step)) > radius);
    if (!further) step /= 2;
    else {
      center.addScaledVector(further, step);
      radius = away(center);
    }
  }
  return { radius, center: [center.x, center.y, center.z] };
}

interface Place {
  readonly place: Vector3;
  readonly inward: Vector3;
}

function* placesOn({ positions, triangles }: TriangleMesh): Generator<Place> {
  const count = triangleCount({ positions, triangles });
  const cornersOf = (face: number): Vector3[] =>
    [0, 1, 2].map((k) => new Vector3().fromArray(positions, triangles[3 * face + k] * 3));
  const doubled = ([a, b, c]: readonly Vector3[]): Vector3 =>
    new Vector3().subVectors(c, a).cross(new Vector3().subVectors(b, a));
  const every = Math.max(1, Math.ceil(count / looks));
  const faces = Array.from({ length: Math.ceil(count / every) }, (_, i) => cornersOf(i * every));
  const area = faces.reduce((sum, face) => sum + doubled(face).length(), 0);
  for (const face of faces) {
    const inward = doubled(face);
    const own = inward.length();
    if (!(own > 0)) continue;
    const cuts = Math.max(1, Math.ceil(Math.sqrt((looks * own) / area)));
    for (const place of middlesIn(face, cuts)) yield { place, inward: inward.clone().divideScalar(own) };
  }
}

/** Middles of the triangles a face falls into when each of its sides is cut in so many pieces; of those that point its way. */
function* middlesIn([a, b, c]: readonly Vector3[], cuts: number): Generator<Vector3> {
  for (let i = 0; i < cuts; i++)
    for (let k = 0; k < cuts - i; k++) {
      const [u, v] = [(i + 1 / 3) / cuts, (k + 1 / 3) / cuts];
      yield a
        .clone()
        .multiplyScalar(1 - u - v)
        .addScaledVector(b, u)
        .addScaledVector(c, v);
    }
}
