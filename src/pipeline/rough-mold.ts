import { memoPerObject, type TriangleMesh } from '../geometry/index.ts';
import { type Kernel, KernelFault, movedBySimplify } from '../kernel/index.ts';
import type { Master, Mold } from '../mold/index.ts';

/** Tolerance given to the kernel, mm. */
const tolerance = 0.018;

/** Greatest error of a distance between two reduced masters, mm: both may be off. */
export const roughError = 2 * movedBySimplify(tolerance);

/**
 * The mold with its masters' meshes reduced, so that distances are found while something is being moved; each is off
 * by no more than `roughError`. Everything else stays. Each master is reduced once for as long as it is the same.
 */
export const roughMold = (mold: Mold, kernel: Kernel): Mold => ({
  ...mold,
  masters: mold.masters.map((master): Master => ({ ...master, mesh: reducedBy(kernel)(master.mesh) })),
});

const reducedBy = memoPerObject((kernel: Kernel) =>
  memoPerObject((mesh: TriangleMesh) => roughMesh(mesh, kernel)),
);

function roughMesh(mesh: TriangleMesh, kernel: Kernel): TriangleMesh {
  try {
    return kernel.scope((scope) =>
      scope.toMesh(scope.simplify(scope.fromExactMesh(mesh, 'reduced master'), tolerance)),
    );
  } catch (error) {
    // What the kernel cannot take stays as it is: slower, but right.
    if (error instanceof KernelFault) return mesh;
    throw error;
  }
}
