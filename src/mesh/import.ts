import type { Finding } from '../findings/index.ts';
import { boundsOf, type Kernel, KernelFault, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { type ColumnWinding, columnWinding } from './column-winding.ts';
import { isPaired } from './edges.ts';
import { faceOutward } from './face-outward.ts';
import { limitFindings } from './import-limits.ts';
import { mend } from './mend.ts';
import type { FileUnit, RawMesh } from './raw.ts';
import { Remarks } from './remarks.ts';
import { sizeOf } from './surface.ts';
import { toMillimeters } from './to-millimeters.ts';
import { uniteShells } from './unite-shells.ts';

/** How a raw mesh becomes a master. What is left out takes the default named. */
export interface ImportOptions {
  /** Id of the master the findings are about. */
  readonly subject: string;
  /** Unit of the file's numbers; without it the file's own, or a guess by plausible size that is said aloud. */
  readonly unit?: FileUnit | undefined;
  /** Widest hole (4 x area / perimeter, mm) that is spanned; default `holeShare` of the box diagonal. */
  readonly holeLimit?: number | undefined;
  /** Points on open edges closer than this (mm) are joined; default 2e-4 or a millionth of the diagonal. */
  readonly weldTolerance?: number | undefined;
  /** Edge length (mm) of a surface made anew; default the longest side / `remeshCells`. */
  readonly remeshEdge?: number | undefined;
  /** Most triangles taken in; default `mostTriangles`. */
  readonly triangleLimit?: number | undefined;
}

export interface MeshChanges {
  /** mm3 and mm2, of the surface as the file has it and as it is now. An open surface's volume is a guide only. */
  readonly volumeBefore: number;
  readonly volumeAfter: number;
  readonly areaBefore: number;
  readonly areaAfter: number;
  /** Farthest (mm) the outer surface was moved, or new surface lies from any surface of the file. */
  readonly greatestDeviation: number;
  /** What was added to the file's positions, mm. */
  readonly moved: Vec3;
  /** Edge length of a surface made anew; not there where the file's own faces were kept. */
  readonly remeshEdge?: number;
  /** How many of each kind of repair, by finding code without `repair.`. */
  readonly counts: Readonly<Record<string, number>>;
}

export interface ImportOutcome {
  /** Closed, outward-facing, mm; missing where a stop says why. */
  readonly mesh?: TriangleMesh;
  readonly unit: FileUnit;
  readonly changes: MeshChanges;
  readonly findings: readonly Finding[];
}

export const holeShare = 0.15;

/**
 * Makes a closed, outward-facing mesh in mm of whatever a file holds, near the file's own frame. Every change is a
 * finding; a mesh that needs none comes back with its own faces. Bad meshes give a stop and no mesh, never a throw.
 */
export function importMesh(raw: RawMesh, options: ImportOptions, kernel: Kernel): ImportOutcome {
  const limits = limitFindings(raw, options);
  if (limits.length > 0) return refused(raw, options, limits);
  const { mesh: soup, unit, moved, findings } = toMillimeters(raw, options.subject, options.unit);
  if (findings.some(({ severity }) => severity === 'stop')) return refused(raw, options, findings);
  const remarks = new Remarks(options.subject);
  const before = sizeOf(soup);
  const solid = makeSolid(soup, options, kernel, remarks);
  const after = solid ? sizeOf(solid) : { area: 0, volume: 0 };
  return {
    ...(solid && { mesh: solid }),
    unit,
    changes: {
      volumeBefore: before.volume,
      volumeAfter: after.volume,
      areaBefore: before.area,
      areaAfter: after.area,
      greatestDeviation: remarks.deviation,
      moved,
      counts: remarks.counts,
    },
    findings: [...findings, ...remarks.findings],
  };
}

function refused(raw: RawMesh, options: ImportOptions, findings: readonly Finding[]): ImportOutcome {
  return {
    unit: options.unit ?? raw.unit ?? 'mm',
    changes: {
      volumeBefore: 0,
      volumeAfter: 0,
      areaBefore: 0,
      areaAfter: 0,
      greatestDeviation: 0,
      moved: [0, 0, 0],
      counts: {},
    },
    findings,
  };
}

function makeSolid(
  soup: TriangleMesh,
  options: ImportOptions,
  kernel: Kernel,
  remarks: Remarks,
): TriangleMesh | undefined {
  const diagonal = diagonalOf(soup);
  const weldTolerance = options.weldTolerance ?? Math.max(2e-4, 1e-6 * diagonal);
  const mended = mend(soup, weldTolerance, options.holeLimit ?? holeShare * diagonal);
  remarks.mended(mended);
  if (!isPaired(mended.pairs)) return remarks.stop('repair.not-solid', 'Its edges do not pair up.');
  const faced = faceOutward(mended.mesh);
  remarks.faced(faced);
  try {
    const united = uniteShells(faced.mesh, faced.shells, kernel);
    remarks.united(united);
    kernel.scope((scope) => scope.fromExactMesh(united.mesh, 'the master'));
    const winding = columnWinding(united.mesh);
    if (isSound(winding)) return united.mesh;
    return remarks.stop('repair.not-solid', 'Its surface crosses itself.', winding.place);
  } catch (error) {
    if (error instanceof KernelFault) return remarks.stop('repair.not-solid', `${error.message}.`);
    throw error;
  }
}

const isSound = (winding: ColumnWinding): boolean => winding.wrong === 0;

function diagonalOf(mesh: TriangleMesh): number {
  const { min, max } = boundsOf(mesh.positions);
  return Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
}
