import type { TriangleMesh } from '../../geometry/index.ts';
import type { Mold } from '../../mold/index.ts';

export function masterMesh(mold: Mold, id: string): TriangleMesh {
  const master = mold.masters.find((one) => one.id === id);
  if (!master) throw new Error(`a placement names the master ${id}, which the mold does not hold`);
  return master.mesh;
}
