import type { TriangleMesh, Vec3 } from '../../geometry/index.ts';
import { eachEdge, lengthOf, middleOf } from './edge-faces.ts';

export interface KnifeEdges {
  /** Of all of them, mm. */
  readonly length: number;
  /** Angle of the material at the sharpest, rad. */
  readonly sharpestRad: number;
  /** Middle of the longest. */
  readonly place: Vec3;
}

/**
 * Outer edges of a closed indexed mesh at which the material is sharper than `limitRad`; undefined where there are
 * none. Edges of faces too thin to have a direction are passed over.
 */
export function knifeEdges(mesh: TriangleMesh, limitRad: number): KnifeEdges | undefined {
  const p = mesh.positions;
  let length = 0;
  let sharpestRad = Number.POSITIVE_INFINITY;
  let longest = 0;
  let place: Vec3 = [0, 0, 0];
  eachEdge(mesh, ({ edge, turnRad, inner }) => {
    const angle = Math.PI - turnRad;
    if (inner || angle >= limitRad) return;
    const along = lengthOf(p, edge);
    length += along;
    sharpestRad = Math.min(sharpestRad, angle);
    if (along > longest) {
      longest = along;
      place = middleOf(p, edge);
    }
  });
  return length > 0 ? { length, sharpestRad, place } : undefined;
}
