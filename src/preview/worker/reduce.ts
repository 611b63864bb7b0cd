import { cornerNormals } from '../../export/index.ts';
import { type Kernel, KernelFault, type TriangleMesh, triangleCount } from '../../kernel/index.ts';
import type { ShownMesh } from './messages.ts';

/** Tolerances tried, mm; the kernel moves a surface by at most 2.7 times as much (measured). */
const tolerances = [0.01, 0.02, 0.04, 0.08, 0.16, 0.32];
const mostMoved = 2.7;

/** A mesh for the picture with about `most` triangles, if that takes no more than 0.9 mm of error. */
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

/** The mesh itself where it has few enough triangles, or cannot be reduced. */
export function reduce(
  mesh: TriangleMesh,
  most: number,
  kernel: Kernel,
): { reduced: TriangleMesh; error: number } {
  const whole = { reduced: mesh, error: 0 };
  if (triangleCount(mesh) <= most) return whole;
  try {
    return kernel.scope((scope) => {
      let body = scope.fromExactMesh(mesh, 'picture');
      for (const tolerance of tolerances) {
        body = scope.simplify(body, tolerance);
        if (body.numTri() <= most || tolerance === tolerances.at(-1)) {
          return { reduced: scope.toMesh(body), error: mostMoved * tolerance };
        }
      }
      return whole;
    });
  } catch (error) {
    // What the kernel cannot take is shown as it is.
    if (error instanceof KernelFault) return whole;
    throw error;
  }
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
