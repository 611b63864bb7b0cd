import type { Finding } from '../../findings/index.ts';
import { boundsOf, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type Kernel, KernelFault } from '../../kernel/index.ts';
import type { FileUnit, RawMesh } from '../raw.ts';
import { closeTopology } from './close-topology.ts';
import { type ColumnWinding, columnWinding } from './column-winding.ts';
import { type CutOut, cutCrossings } from './cut-crossings.ts';
import { compareSurfaces } from './deviation.ts';
import { type EdgePairs, isPaired, pairEdges } from './edges.ts';
import { type FacedOutward, faceOutward } from './face-outward.ts';
import { mendCrossings } from './mend-crossings.ts';
import { type ProvenFault, Remarks, type SkinFault } from './remarks.ts';
import {
  facesForCells,
  limitCells,
  RemeshTooLong,
  remesh,
  remeshCells,
  type WithoutSmall,
  withoutSmallComponents,
} from './remesh.ts';
import { limitFindings } from './repair-limits.ts';
import { findShells } from './shells.ts';
import { sizeOf } from './surface.ts';
import { toMillimeters } from './to-millimeters.ts';
import { TriangleTree } from './triangle-tree.ts';
import { type United, uniteShells } from './unite-shells.ts';

/** How a raw mesh becomes a master. What is left out takes the default named. */
export interface RepairOptions {
  /** Id of the master the findings are about. */
  readonly subject: string;
  /** Unit of the file's numbers; without it the file's own, or a guess by plausible size that is said aloud. */
  readonly unit?: FileUnit | undefined;
  /** How much larger than in the file it is made; default 1. All lengths here and in the findings are those it has then. */
  readonly scale?: number | undefined;
  /** Widest hole (4 x area / perimeter, mm) that is spanned; default `holeShare` of the box diagonal. */
  readonly holeLimit?: number | undefined;
  /** Points on open edges closer than this (mm) are joined; default 2e-4 or a millionth of the diagonal. */
  readonly weldTolerance?: number | undefined;
  /** Edge length (mm) of a surface made anew; default the longest side / `remeshCells`. */
  readonly remeshEdge?: number | undefined;
  /** Most triangles taken in; default `mostTriangles`. */
  readonly triangleLimit?: number | undefined;
  /** Most steps in the tree of faces for a surface made anew; default `mostSteps`. */
  readonly stepLimit?: number | undefined;
}

interface MeshChanges {
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

export interface RepairOutcome {
  /** Closed, outward-facing, mm; missing where a stop says why. */
  readonly mesh?: TriangleMesh;
  readonly unit: FileUnit;
  readonly changes: MeshChanges;
  readonly findings: readonly Finding[];
}

/** Share of the box diagonal up to which a hole that is not flat is spanned. */
const holeShare = 0.15;
/** Reach of the cuts tried about small crossings, in distances between the lines that found them. */
const cutReaches = [0.5, 2, 2, 4, 8];
/** Shells smaller than this share of the largest are left out as small. */
const smallComponentShare = 1e-9;
/** A surface made anew may stray this share of the longest side (or four edges) from the old one; beyond: a stop. */
const looseComponentShare = 0.04;
/** Mean thickness, mm, below which a mesh is a sheet. */
const leastThickness = 1e-3;

/**
 * Makes a closed, outward-facing mesh in mm of whatever a file holds, near the file's own frame. Every change is a
 * finding; a mesh that needs none comes back with its own faces. Bad meshes give a stop and no mesh, never a throw.
 */
export function repairMesh(raw: RawMesh, options: RepairOptions, kernel: Kernel): RepairOutcome {
  const limits = limitFindings(raw, options);
  if (limits.length > 0) return refused(raw, options, limits);
  const {
    mesh: soup,
    unit,
    moved,
    findings,
  } = toMillimeters(raw, options.subject, options.unit, options.scale);
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
      ...(remarks.remeshEdge !== undefined && { remeshEdge: remarks.remeshEdge }),
      counts: remarks.counts,
    },
    findings: [...findings, ...remarks.findings],
  };
}

function refused(raw: RawMesh, options: RepairOptions, findings: readonly Finding[]): RepairOutcome {
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
  options: RepairOptions,
  kernel: Kernel,
  remarks: Remarks,
): TriangleMesh | undefined {
  const diagonal = diagonalOf(soup);
  const weldTolerance = options.weldTolerance ?? Math.max(2e-4, 1e-6 * diagonal);
  const holeLimit = options.holeLimit ?? holeShare * diagonal;
  const closed = closeTopology(soup, weldTolerance, holeLimit);
  remarks.closed(closed);
  if (closed.mesh.triangles.length === 0) return remarks.stop('repair.empty', { which: 'area' });
  const faced = faceOutward(closed.mesh, closed.pairs);
  remarks.faced(faced);
  if (isFlat(faced)) return remarks.stop('repair.flat', { which: 'volume' });
  const { mesh, fault, place }: Skin = isPaired(closed.pairs)
    ? keepSkin(faced, holeLimit, kernel, remarks)
    : { mesh: faced.mesh, fault: openness(closed.pairs) };
  const solid = fault === undefined ? mesh : makeAnew({ mesh, fault, place }, options, kernel, remarks);
  if (solid)
    remarks.bodies(
      (solid === faced.mesh ? faced.shells : findShells(solid)).volumes.filter((volume) => volume > 0).length,
    );
  return solid;
}

interface Skin {
  readonly mesh: TriangleMesh;
  /** Why it cannot stay so; none where it can. */
  readonly fault?: SkinFault;
  readonly place?: Vec3;
}

interface Attempt extends Skin {
  readonly fault?: ProvenFault;
  readonly winding?: ColumnWinding;
  readonly withoutSmall?: WithoutSmall;
  readonly united?: United | undefined;
}

/** Tries to keep the file's own faces; small crossings are cut out, wider ones at fault. */
function keepSkin(start: FacedOutward, holeLimit: number, kernel: Kernel, remarks: Remarks): Attempt {
  const cuts: CutOut[] = [];
  let faced = start;
  let attempt = prove(faced, kernel);
  for (let round = 0; attempt.winding && attempt.fault !== undefined && round < cutReaches.length; round++) {
    const { winding } = attempt;
    const cut = cutCrossings(attempt.mesh, winding, cutReaches[round] * winding.pitch, holeLimit);
    if (cut === undefined) continue;
    const next = faceOutward(cut.mesh, cut.pairs);
    const better = prove(next, kernel);
    if (better.fault !== undefined && !(better.winding && better.winding.wrong < winding.wrong)) continue;
    cuts.push(cut);
    faced = next;
    attempt = { ...better, united: better.united ?? attempt.united };
  }
  // What was tried and given up is not said: a surface made anew starts from the closed one.
  if (attempt.fault !== undefined) return { ...attempt, mesh: start.mesh };
  if (attempt.withoutSmall)
    remarks.smallComponents(attempt.withoutSmall.smallComponents, attempt.withoutSmall.place);
  if (attempt.united) remarks.united(attempt.united);
  const mended = mendCrossings(attempt.mesh, { holeLimit, diagonal: diagonalOf(attempt.mesh) }, (mesh) => {
    const tried = prove(faceOutward(mesh, pairEdges(mesh.triangles, mesh.positions.length / 3)), kernel);
    return tried.fault === undefined ? tried.mesh : undefined;
  });
  remarks.cut([...cuts, ...mended.cuts]);
  remarks.uncrossed(mended);
  return { ...attempt, mesh: mended.mesh };
}

/** Unites overlapping shells, then asks the kernel, then the winding depth. */
function prove(faced: FacedOutward, kernel: Kernel): Attempt {
  try {
    const largest = faced.shells.volumes.reduce((most, volume) => Math.max(most, Math.abs(volume)), 0);
    const withoutSmall = withoutSmallComponents(faced.mesh, smallComponentShare * largest, faced.shells);
    const united = uniteShells(withoutSmall.mesh, withoutSmall.shells, kernel);
    kernel.scope((scope) => scope.fromExactMesh(united.mesh, 'the master'));
    return { ...judged(united.mesh), withoutSmall, ...(united.united > 0 && { united }) };
  } catch (error) {
    if (error instanceof KernelFault)
      return { mesh: faced.mesh, fault: { which: 'refused', fault: error.message } };
    throw error;
  }
}

/** A kernel's yes is no proof: overlapping and crossing skins pass it. Every upright line must be 0 or 1 deep. */
function judged(mesh: TriangleMesh): Attempt {
  const winding = columnWinding(mesh);
  const { wrong, columns, wrongVolume, place } = winding;
  if (wrong === 0) return { mesh };
  const fault = { which: 'crosses', wrong, columns, wrongVolume } as const;
  return { mesh, fault, winding, ...(place && { place }) };
}

function makeAnew(
  { mesh, fault, place }: { mesh: TriangleMesh; fault: SkinFault; place: Vec3 | undefined },
  options: RepairOptions,
  kernel: Kernel,
  remarks: Remarks,
): TriangleMesh | undefined {
  const longest = longestSide(mesh);
  const edge = options.remeshEdge ?? longest / remeshCells;
  try {
    limitCells(mesh, edge);
    const { faces, slack } = facesForCells(mesh, edge);
    const tree = new TriangleTree(faces);
    const raw = remesh(mesh, tree, edge, kernel, options.stepLimit);
    const pairs = pairEdges(raw.mesh.triangles, raw.mesh.positions.length / 3);
    // Cells near a torn rim may cross one another by a little; such places are cut out like any other.
    const anew = keepSkin(faceOutward(raw.mesh, pairs), 8 * edge, kernel, remarks);
    const { kept, added } = compareSurfaces(mesh, tree, anew.mesh, Math.max(edge / 50, slack));
    const hasLooseComponents = kept.greatest > Math.max(4 * edge, looseComponentShare * longest);
    if (anew.fault) return remarks.notSolid(fault, anewFault(anew.fault), place ?? kept.place);
    if (hasLooseComponents)
      return remarks.notSolid(fault, { anew: 'strayed', strayed: kept.greatest }, place ?? kept.place);
    const sizes = { before: sizeOf(mesh), after: sizeOf(anew.mesh) };
    remarks.remeshed({ fault, edge, ...sizes, kept, added }, place);
    remarks.smallComponents(raw.smallComponents);
    return anew.mesh;
  } catch (error) {
    if (error instanceof RemeshTooLong) return remarks.remeshTooLong(fault, edge, error, place);
    if (!(error instanceof KernelFault)) throw error;
    return remarks.notSolid(fault, { anew: 'nothing' }, place);
  }
}

/** Twice the volume over the area is the mean thickness of a plate, mm. */
function isFlat({ mesh, shells }: FacedOutward): boolean {
  const volume = shells.volumes.reduce((sum, one) => sum + Math.abs(one), 0);
  return (2 * volume) / sizeOf(mesh).area < leastThickness;
}

const openness = ({ open, nonManifold }: EdgePairs): SkinFault => ({
  which: 'open',
  open,
  crowded: nonManifold,
});

/** What a surface made anew fails by, beside what made it necessary. */
const anewFault = (fault: ProvenFault) =>
  fault.which === 'refused'
    ? ({ anew: 'refused', anewFault: fault.fault } as const)
    : ({
        anew: 'crosses',
        anewWrong: fault.wrong,
        anewColumns: fault.columns,
        anewVolume: fault.wrongVolume,
      } as const);

function longestSide(mesh: TriangleMesh): number {
  const { min, max } = boundsOf(mesh.positions);
  return Math.max(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
}

function diagonalOf(mesh: TriangleMesh): number {
  const { min, max } = boundsOf(mesh.positions);
  return Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2]);
}
