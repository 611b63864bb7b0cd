import type { Finding } from '../findings/index.ts';
import type { TriangleMesh } from '../geometry/index.ts';
import type { Kernel } from '../kernel/index.ts';
import { type RepairOptions, readMesh, repairMesh } from '../mesh/index.ts';
import type { PlanMaster } from '../plan/index.ts';
import { contentKey } from './content-key.ts';

/** A master's file and how it is to be repaired: plain data, so that it can be done wherever there is a kernel. */
export interface MeshToLoad {
  readonly bytes: Uint8Array;
  /** As the plan names it. */
  readonly file: string;
  readonly options: RepairOptions;
}

export interface MeshOutcome {
  /** Left out when there is no usable mesh; the findings then hold a stop. */
  readonly mesh?: TriangleMesh;
  readonly findings: readonly Finding[];
}

export const meshToLoad = (
  id: string,
  { file, unit, scale, repair }: PlanMaster & { kind: 'mesh' },
  bytes: Uint8Array,
): MeshToLoad => ({
  bytes,
  file,
  options: {
    subject: id,
    ...(unit && { unit }),
    ...(scale !== undefined && { scale }),
    ...(repair?.edge !== undefined && { remeshEdge: repair.edge }),
    ...(repair?.closeHoles !== undefined && { holeLimit: repair.closeHoles }),
  },
});

/** Under which the cache keeps what comes of it. */
export const loadKey = (source: MeshToLoad): string => `import ${contentKey(source)}`;

/** Reads a master's mesh out of its file and repairs it. */
export function loadMesh({ bytes, file, options }: MeshToLoad, kernel: Kernel): MeshOutcome {
  const read = readMesh(bytes, file);
  if (!read.mesh) return { findings: read.findings };
  const imported = repairMesh(read.mesh, options, kernel);
  return {
    ...(imported.mesh && { mesh: imported.mesh }),
    findings: [...read.findings, ...imported.findings],
  };
}
