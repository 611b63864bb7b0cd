import { moveMesh, scaling, type TriangleMesh } from '../geometry/index.ts';
import { type Lie, sizeAsItLies } from '../mold/index.ts';

/** A size, mm, that a master is to have as it lies. */
export interface WantedSize {
  readonly side: 'length' | 'height';
  readonly mm: number;
  readonly lie: Lie;
}

/** How many times larger points (mm) have the size wanted; 1 where they have none, which the repair refuses. */
export function timesToSize(positions: ArrayLike<number>, { side, mm, lie }: WantedSize): number {
  const times = mm / sizeAsItLies(positions, lie)[side];
  return Number.isFinite(times) && times > 0 ? times : 1;
}

/** Beyond the rounding of float32. */
const off = 1e-6;

/** A mesh of nearly the size wanted, and how much larger it had to be made: its repair may have left out bits that stuck out. */
export function toSize(mesh: TriangleMesh, wanted: WantedSize): { mesh: TriangleMesh; times: number } {
  const times = timesToSize(mesh.positions, wanted);
  return Math.abs(times - 1) < off ? { mesh, times: 1 } : { mesh: moveMesh(mesh, scaling(times)), times };
}
