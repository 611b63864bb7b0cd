import { cornerNormals } from '../../export/index.ts';
import { type TriangleMesh, triangleCount } from '../../geometry/index.ts';
import { type Body, type Kernel, KernelFault, movedBySimplify, type Scope } from '../../kernel/index.ts';
import type { ShownMesh } from './messages.ts';

/** Tolerances, mm, given to the kernel one after the other until a mesh is small enough. */
const fine = [0.01, 0.02, 0.04];
const coarse = [0.08, 0.16, 0.32];
/** Triangles of all that stands on the disc together in the picture. */
const shownTriangles = 120_000;

/** Triangles each may have in the picture, of so many placements. */
export const mostTriangles = (placements: number): number =>
  Math.max(1500, shownTriangles / Math.max(1, placements));

/** A mesh for the picture with about `most` triangles, or as near to it as the coarsest tolerance comes. */
export function shownMesh(mesh: TriangleMesh, most: number, kernel: Kernel): ShownMesh {
  const { reduced, error } = reduce(mesh, most, kernel);
  return shownOf(reduced, error, mesh);
}

/** A reduced mesh as the picture takes it. */
export const shownOf = (reduced: TriangleMesh, error: number, whole: TriangleMesh): ShownMesh => ({
  positions: cornersOf(reduced),
  normals: cornerNormals(reduced),
  error,
  full: triangleCount(whole),
});

export interface Reduced {
  readonly reduced: TriangleMesh;
  /** The surface is moved by no more than this, mm. */
  readonly error: number;
}

/**
 * The mesh itself where it has few enough triangles, or cannot be reduced. The first reduction takes nearly all of the
 * time, so a coarse one is tried before finer ones, which are needed where it leaves far less than may be drawn.
 */
export function reduce(mesh: TriangleMesh, most: number, kernel: Kernel): Reduced {
  const whole = { reduced: mesh, error: 0 };
  if (triangleCount(mesh) <= most) return whole;
  try {
    return kernel.scope((scope) => {
      const body = scope.fromExactMesh(mesh, 'picture');
      let best = stepDown(body, coarse, most, scope);
      if (best.body.numTri() * 3 < most) best = stepDown(body, [...fine, ...coarse], most, scope);
      return { reduced: scope.toMesh(best.body), error: best.error };
    });
  } catch (error) {
    // What the kernel cannot take is shown as it is.
    if (error instanceof KernelFault) return whole;
    throw error;
  }
}

function stepDown(start: Body, tolerances: readonly number[], most: number, scope: Scope) {
  let [body, error] = [start, 0];
  for (const tolerance of tolerances) {
    body = scope.simplify(body, tolerance);
    error += movedBySimplify(tolerance);
    if (body.numTri() <= most) break;
  }
  return { body, error };
}

function cornersOf({ positions, triangles }: TriangleMesh): Float32Array {
  const corners = new Float32Array(triangles.length * 3);
  for (let i = 0; i < triangles.length; i++) {
    const from = triangles[i] * 3;
    corners[i * 3] = positions[from];
    corners[i * 3 + 1] = positions[from + 1];
    corners[i * 3 + 2] = positions[from + 2];
  }
  return corners;
}
