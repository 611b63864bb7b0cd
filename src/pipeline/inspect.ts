import type { Finding } from '../findings/index.ts';
import type { SolidMeasures, TriangleMesh } from '../geometry/index.ts';
import type { Kernel } from '../kernel/index.ts';
import { type FileUnit, measureMesh, smallestCircle, widestHeight } from '../mesh/index.ts';
import { type RankedLie, rankLies } from '../mold/index.ts';
import { loadMesh } from './load-mesh.ts';
import type { WantedSize } from './wanted-size.ts';

/** What there is to say about a mesh file as a master. Lengths in mm, in the file's own axes. */
export interface Inspection {
  readonly findings: readonly Finding[];
  /** Left out when the file holds no usable mesh; the findings then say why. */
  readonly mesh?: TriangleMesh;
  readonly measures?: SolidMeasures;
  readonly unit?: FileUnit;
  /** Radius of the smallest circle round the silhouette seen along z. */
  readonly reach?: number;
  /** Height of the widest contour over the lowest point. */
  readonly widest?: number;
  /** Where asked for: the best ways for it to lie, and among them the lie it has in its file. */
  readonly lies?: readonly RankedLie[];
}

export interface InspectOptions {
  readonly unit?: FileUnit;
  /** How much larger than in its file it is to be looked at. */
  readonly scale?: number;
  /** In place of the scale: its size, lying as in its file. */
  readonly wanted?: Omit<WantedSize, 'lie'>;
  /** Whether to rank the ways it can lie. */
  readonly lie?: boolean;
}

const asInFile = { xRad: 0, yRad: 0, zRad: 0 };

/** Reads, repairs and measures one mesh file. */
export function inspectMesh(
  bytes: Uint8Array,
  name: string,
  kernel: Kernel,
  { unit, scale, wanted, lie }: InspectOptions = {},
): Inspection {
  const options = { subject: name, ...(unit && { unit }), ...(scale !== undefined && { scale }) };
  const source = { bytes, file: name, options, ...(wanted && { wanted: { ...wanted, lie: asInFile } }) };
  const { mesh, findings, ...loaded } = loadMesh(source, kernel);
  if (!mesh) return { findings };
  const measures = measureMesh(mesh);
  return {
    findings,
    mesh,
    measures,
    ...(loaded.unit && { unit: loaded.unit }),
    reach: smallestCircle(mesh.positions).radius,
    widest: widestHeight(mesh) - measures.bounds.min[2],
    ...(lie && { lies: rankLies(mesh) }),
  };
}
