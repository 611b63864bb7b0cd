import { nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import type { EdgePairs } from './edges.ts';
import { faceArea, faceMiddle } from './surface.ts';

export interface Oriented {
  readonly mesh: TriangleMesh;
  /** Faces turned over so that neighbours agree. */
  readonly flipped: number;
  readonly place?: Vec3;
  /** True where a patch cannot be made to agree with itself (a Mobius band). */
  readonly oneSided: boolean;
}

/**
 * Makes neighbouring faces agree which side is outside, by breadth-first search over edges with exactly two faces.
 * In each patch the smaller area is turned over, so a few flipped faces never flip the rest.
 */
export function orientFaces(mesh: TriangleMesh, { twin }: EdgePairs): Oriented {
  const { triangles } = mesh;
  const count = triangles.length / 3;
  const side = new Int8Array(count); // 0 unseen, 1 as it is, -1 to be turned
  const queue = new Uint32Array(count);
  let oneSided = false;
  for (let seed = 0; seed < count; seed++) {
    if (side[seed] !== 0) continue;
    side[seed] = 1;
    queue[0] = seed;
    let end = 1;
    let balance = 0;
    for (let at = 0; at < end; at++) {
      const face = queue[at];
      balance += side[face] * faceArea(mesh, face);
      for (let h = face * 3; h < face * 3 + 3; h++) {
        const other = twin[h];
        if (other < 0) continue;
        const neighbour = Math.floor(other / 3);
        const wanted = triangles[h] === triangles[other] ? -side[face] : side[face];
        if (side[neighbour] === 0) {
          side[neighbour] = wanted;
          queue[end++] = neighbour;
        } else if (side[neighbour] !== wanted) {
          oneSided = true;
        }
      }
    }
    if (balance < 0) for (let at = 0; at < end; at++) side[queue[at]] = -side[queue[at]];
  }
  return { ...flipFaces(mesh, side), oneSided };
}

/** Turns over the faces marked -1. */
export function flipFaces(mesh: TriangleMesh, side: Int8Array): Omit<Oriented, 'oneSided'> {
  const first = side.indexOf(-1);
  if (first < 0) return { mesh, flipped: 0 };
  const triangles = mesh.triangles.slice();
  let flipped = 0;
  for (let face = first; face < side.length; face++) {
    if (side[face] !== -1) continue;
    const h = face * 3;
    triangles[h + 1] = mesh.triangles[h + 2];
    triangles[h + 2] = mesh.triangles[nextCorner(h)];
    flipped++;
  }
  return { mesh: { positions: mesh.positions, triangles }, flipped, place: faceMiddle(mesh, first) };
}
