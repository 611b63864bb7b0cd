import type { TriangleMesh, Vec3 } from '../../geometry/index.ts';
import { type ClosedHoles, closeHoles } from './close-holes.ts';
import type { ColumnWinding } from './column-winding.ts';
import { keepFaces } from './drop-faces.ts';
import { type EdgePairs, isPaired, pairEdges } from './edges.ts';
import { distance2ToTriangle } from './triangle-measures.ts';

export interface CutOut {
  readonly mesh: TriangleMesh;
  readonly pairs: EdgePairs;
  /** Faces taken away. */
  readonly cut: number;
  readonly place?: Vec3;
  readonly spanned: ClosedHoles;
}

/** Where more than this share of the lines, or of the faces, is at fault, the crossing is not a small one. */
const smallShare = 0.005;

/**
 * Takes away the faces about a few small places where a surface crosses itself (folds of a scan, a patch that cuts
 * its surroundings) and spans the gaps anew; the rest keeps its own faces. `reach` is how far (mm) from the ends of
 * the wrong stretches faces go. Undefined where the crossing is not small or the gaps cannot be spanned.
 */
export function cutCrossings(
  mesh: TriangleMesh,
  winding: ColumnWinding,
  reach: number,
  holeLimit: number,
): CutOut | undefined {
  if (winding.ends.length === 0 || winding.wrong > smallShare * winding.columns) return undefined;
  const keep = facesBeyond(mesh, winding.ends, reach);
  const dropped = keep.length - keep.reduce((sum, flag) => sum + flag, 0);
  return dropped > smallShare * keep.length ? undefined : cutFaces(mesh, keep, holeLimit);
}

/** Keeps only the marked faces and spans the gaps; undefined where all are kept or the gaps cannot be spanned. */
export function cutFaces(mesh: TriangleMesh, keep: Uint8Array, holeLimit: number): CutOut | undefined {
  const rest = keepFaces(mesh, keep);
  if (rest.dropped === 0) return undefined;
  const points = mesh.positions.length / 3;
  const spanned = closeHoles(rest.mesh, pairEdges(rest.mesh.triangles, points), holeLimit);
  const pairs = pairEdges(spanned.mesh.triangles, points);
  if (!isPaired(pairs)) return undefined;
  return { mesh: spanned.mesh, pairs, cut: rest.dropped, ...(rest.place && { place: rest.place }), spanned };
}

/** 0 for faces within `reach` of one of the points (x, y, z each), 1 for the others. */
function facesBeyond({ positions, triangles }: TriangleMesh, points: readonly number[], reach: number) {
  const keep = new Uint8Array(triangles.length / 3).fill(1);
  const corners = new Float64Array(9);
  for (let face = 0; face < keep.length; face++) {
    for (let k = 0; k < 9; k++) corners[k] = positions[triangles[face * 3 + Math.floor(k / 3)] * 3 + (k % 3)];
    const low = [0, 1, 2].map(
      (axis) => Math.min(corners[axis], corners[axis + 3], corners[axis + 6]) - reach,
    );
    const high = [0, 1, 2].map(
      (axis) => Math.max(corners[axis], corners[axis + 3], corners[axis + 6]) + reach,
    );
    for (let p = 0; p < points.length; p += 3) {
      if (points[p] < low[0] || points[p] > high[0]) continue;
      if (points[p + 1] < low[1] || points[p + 1] > high[1]) continue;
      if (points[p + 2] < low[2] || points[p + 2] > high[2]) continue;
      const d2 = distance2ToTriangle(corners, 0, points[p], points[p + 1], points[p + 2]);
      if (d2 > reach * reach) continue;
      keep[face] = 0;
      break;
    }
  }
  return keep;
}
