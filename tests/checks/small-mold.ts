import type { ReportPart } from '../../src/findings/index.ts';
import {
  type Bounds,
  boundsOf,
  type Matrix4,
  moveMesh,
  type TriangleMesh,
} from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { measureMesh, smallestCircle } from '../../src/mesh/index.ts';
import {
  type Boss,
  type Check,
  flatPartingSurface,
  type Mold,
  type Placement,
  type Sprue,
} from '../../src/mold/index.ts';

/** A mold of the usual limits with nothing in it: 250 mm across, halves of 12.7 mm. */
export const emptyMold: Mold = {
  title: 'Hedgerow charms',
  units: 'metric',
  revision: '1',
  paper: 'A4',
  process: 'rubber',
  disc: { radius: 125, lower: 12.7, upper: 12.7, rimChamfer: 0, label: '' },
  masters: [],
  placements: [],
  bosses: [],
  supports: [],
  tabs: [],
  notches: [],
  ventPins: [],
  channels: [],
  parting: flatPartingSurface(125),
  fixture: { material: 'PLA', clearance: 0.2, chordError: 0.01, relieve: false },
  bench: {},
  places: {},
  limits: {
    cover: 3,
    wall: 3,
    web: 1,
    cavityToWell: 8,
    cavityToBoss: 5,
    cavityToRim: 10,
    bossToRim: 6,
    falseSeat: 3,
    mismatch: 0.4,
    undercutShare: 0.1,
    slenderness: 4,
  },
};

/** The mold with one more master, standing where each matrix puts it. */
export function withMaster(
  mold: Mold,
  id: string,
  mesh: TriangleMesh,
  ...matrices: readonly Matrix4[]
): Mold {
  const placements = matrices.map((matrix, i): Placement => {
    const moved = moveMesh(mesh, matrix).positions;
    const { min, max }: Bounds = boundsOf(moved);
    const { x, y, radius } = smallestCircle(moved);
    const name = `${id}-${i + 1}`;
    const [lowest, highest] = [min[2], max[2]];
    return {
      id: name,
      master: id,
      x,
      y,
      turnRad: 0,
      scale: 1,
      matrix,
      lowest,
      highest,
      reach: radius,
      estimated: false,
    };
  });
  const master = { id, kind: 'mesh', mesh, measures: measureMesh(mesh), estimated: false } as const;
  return { ...mold, masters: [...mold.masters, master], placements: [...mold.placements, ...placements] };
}

/** A cap nut of M8 by DIN 1587 at (x, y), or with other measures. */
export const nutAt = (id: string, x: number, y: number, other: Partial<Boss> = {}): Boss => ({
  id,
  kind: 'cap nut',
  x,
  y,
  turnRad: 0,
  size: 'M8',
  acrossFlats: 13,
  rootDepth: 6.5,
  headRadius: 6.25,
  headHeight: 8.5,
  clearance: 0,
  ...other,
});

export const smallSprue: Sprue = {
  holeRadius: 10,
  draftRad: 0.05,
  wellRadius: 15,
  wellDepth: 6,
  domeRadius: 6,
  domeHeight: 3,
  fillet: 0.5,
  grip: 10,
};

/** Runs every job of a check and joins what it says. */
export async function runCheck(check: Check, mold: Mold): Promise<Required<ReportPart>> {
  const kernel = await loadKernel();
  const parts = check.units(mold).map((unit) => unit.run({ kernel }));
  return {
    findings: parts.flatMap((part) => part.findings ?? []),
    figures: parts.flatMap((part) => part.figures ?? []),
    series: parts.flatMap((part) => part.series ?? []),
    fields: parts.flatMap((part) => part.fields ?? []),
  };
}

/** The one figure of this name and subject. */
export function figureOf({ figures }: Required<ReportPart>, name: string, subject: string): number {
  const found = figures.filter((one) => one.name === name && one.subject === subject);
  if (found.length !== 1) throw new Error(`${found.length} figures ${name} of ${subject}`);
  return found[0].value;
}
