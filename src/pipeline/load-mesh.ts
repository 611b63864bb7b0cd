import type { Finding } from '../findings/index.ts';
import type { TriangleMesh } from '../geometry/index.ts';
import type { Kernel } from '../kernel/index.ts';
import {
  type FileUnit,
  mmPer,
  type RawMesh,
  type RepairOptions,
  readMesh,
  repairMesh,
} from '../mesh/index.ts';
import { lieOf } from '../mold/index.ts';
import type { PlanMaster } from '../plan/index.ts';
import { contentKey } from './content-key.ts';
import { timesToSize, toSize, type WantedSize } from './wanted-size.ts';

/** A master's file and how it is to be repaired: plain data, so that it can be done wherever there is a kernel. */
export interface MeshToLoad {
  readonly bytes: Uint8Array;
  /** As the plan names it. */
  readonly file: string;
  readonly options: RepairOptions;
  /** In place of the scale of the options. */
  readonly wanted?: WantedSize;
}

export interface MeshOutcome {
  /** Left out when there is no usable mesh; the findings then hold a stop. */
  readonly mesh?: TriangleMesh;
  readonly unit?: FileUnit;
  /** How much larger than in its file it is made, where that was asked for. */
  readonly fileScale?: number;
  readonly findings: readonly Finding[];
}

type MeshMaster = PlanMaster & { kind: 'mesh' };

export function meshToLoad(id: string, spec: MeshMaster, bytes: Uint8Array): MeshToLoad {
  const { file, unit, scale, repair } = spec;
  const wanted = wantedSize(spec);
  return {
    bytes,
    file,
    options: {
      subject: id,
      ...(unit && { unit }),
      ...(scale !== undefined && { scale }),
      ...(repair?.edge !== undefined && { remeshEdge: repair.edge }),
      ...(repair?.closeHoles !== undefined && { holeLimit: repair.closeHoles }),
    },
    ...(wanted && { wanted }),
  };
}

function wantedSize(spec: MeshMaster): WantedSize | undefined {
  const { length, height } = spec;
  const lie = lieOf(spec);
  if (length !== undefined) return { side: 'length', mm: length, lie };
  return height === undefined ? undefined : { side: 'height', mm: height, lie };
}

/** Under which the cache keeps what comes of it. */
export const loadKey = (source: MeshToLoad): string => `import ${contentKey(source)}`;

/** Reads a master's mesh out of its file, repairs it and brings it to its size. */
export function loadMesh({ bytes, file, options, wanted }: MeshToLoad, kernel: Kernel): MeshOutcome {
  const read = readMesh(bytes, file);
  if (!read.mesh) return { findings: read.findings };
  const sized = wanted ? { ...options, ...sizing(read.mesh, wanted, options.unit) } : options;
  const { mesh, unit, findings: repairs } = repairMesh(read.mesh, sized, kernel);
  const findings = [...read.findings, ...repairs];
  if (!mesh) return { unit, findings };
  const { scale } = sized;
  if (!wanted || scale === undefined)
    return { mesh, unit, findings, ...(scale !== undefined && { fileScale: scale }) };
  const { mesh: exact, times } = toSize(mesh, wanted);
  return { mesh: exact, unit, fileScale: scale * times, findings };
}

/** With its size given, the file's unit changes nothing, so none is guessed. */
function sizing(
  raw: RawMesh,
  wanted: WantedSize,
  named: FileUnit | undefined,
): { unit: FileUnit; scale: number } {
  const unit = named ?? raw.unit ?? 'mm';
  return { unit, scale: timesToSize(raw.positions, wanted) / mmPer[unit] };
}
