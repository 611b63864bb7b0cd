import { type Figure, type FigureName, type Finding, finding, type ReportPart } from '../findings/index.ts';
import { type Matrix4, movePoint, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { type Check, type Mold, type Process, work } from '../mold/index.ts';
import { nextStock } from '../tables/index.ts';

/** What stands into both halves: the z of its lowest and highest point, and where they are (mold frame, mm). */
interface Reaching {
  readonly id: string;
  readonly lowest: Vec3;
  readonly highest: Vec3;
  readonly estimated: boolean;
}

interface Halves {
  readonly lower: number;
  readonly upper: number;
  readonly limit: number;
  readonly process: Process;
}

const halvesOf = ({ disc, limits, process }: Mold): Halves => ({
  lower: disc.lower,
  upper: disc.upper,
  limit: limits.cover,
  process,
});

const everyProcess: readonly Process[] = ['rubber', 'rigid', 'poured'];
const geometry = 'extent of the placed mesh against the thickness of the half';

interface PlacedInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly estimated: boolean;
  readonly halves: Halves;
}

/** Depth below and height above the parting plane of each master, and the cover it leaves to both outer faces. */
export const coverOfCavities: Check = work<PlacedInput, ReportPart>({
  id: 'cover',
  title: 'Cover over the cavities',
  scope: 'placement',
  processes: everyProcess,
  jobs: (mold) =>
    mold.placements.map(({ id, master, matrix, estimated }) => ({
      subject: id,
      input: { id, mesh: masterMesh(mold, master), matrix, estimated, halves: halvesOf(mold) },
    })),
  run: ({ id, mesh, matrix, estimated, halves }) =>
    coverOf({ id, estimated, ...extremes(mesh, matrix) }, halves),
});

interface FixtureInput {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  readonly height: number;
  readonly halves: Halves;
}

/** The same for bosses, and for the well under the parting plane (the pouring hole is meant to go through). */
export const coverOfFixtures: Check = work<FixtureInput, ReportPart>({
  id: 'cover-fixtures',
  title: 'Cover over bosses and well',
  scope: 'placement',
  processes: everyProcess,
  jobs: (mold) => {
    const halves = halvesOf(mold);
    const bosses = mold.bosses.map(({ id, x, y, rootDepth, headHeight }) => ({
      subject: id,
      input: { id, x, y, depth: rootDepth, height: headHeight, halves },
    }));
    const depth = mold.sprue?.wellDepth;
    if (depth === undefined) return bosses;
    return [...bosses, { subject: 'sprue', input: { id: 'sprue', x: 0, y: 0, depth, height: 0, halves } }];
  },
  run: ({ id, x, y, depth, height, halves }) =>
    coverOf({ id, lowest: [x, y, -depth], highest: [x, y, height], estimated: false }, halves),
});

interface LeastInput {
  readonly reaching: readonly { readonly id: string; readonly lowest: number; readonly highest: number }[];
  readonly halves: Halves;
  readonly estimated: boolean;
}

/** The least cover of the whole mold, and the thinnest stock for each half that leaves the cover wanted everywhere. */
export const leastCover: Check = work<LeastInput, ReportPart>({
  id: 'cover-least',
  title: 'Least cover',
  scope: 'whole',
  processes: everyProcess,
  jobs: (mold) => {
    const masters = mold.placements.map(({ id, lowest, highest }) => ({ id, lowest, highest }));
    const bosses = mold.bosses.map(({ id, rootDepth, headHeight }) => ({
      id,
      lowest: -rootDepth,
      highest: headHeight,
    }));
    const well = mold.sprue ? [{ id: 'sprue', lowest: -mold.sprue.wellDepth, highest: 0 }] : [];
    const reaching = [...masters, ...bosses, ...well];
    const estimated = mold.placements.some((one) => one.estimated);
    return reaching.length === 0
      ? []
      : [{ subject: 'mold', input: { reaching, halves: halvesOf(mold), estimated } }];
  },
  run: ({ reaching, halves, estimated }) => {
    const depth = Math.max(...reaching.map(({ lowest }) => -lowest));
    const height = Math.max(...reaching.map(({ highest }) => highest));
    const figure = (name: FigureName, value: number): Figure => ({
      name,
      subject: 'mold',
      value,
      unit: 'mm',
      source: geometry,
      estimated,
    });
    return {
      figures: [
        figure('cover.least', Math.min(halves.lower - depth, halves.upper - height)),
        figure('cover.needs-lower', Math.max(0, depth) + halves.limit),
        figure('cover.needs-upper', Math.max(0, height) + halves.limit),
      ],
    };
  },
});

export function masterMesh(mold: Mold, id: string): TriangleMesh {
  const master = mold.masters.find((one) => one.id === id);
  if (!master) throw new Error(`a placement names the master ${id}, which the mold does not hold`);
  return master.mesh;
}

function extremes({ positions }: TriangleMesh, matrix: Matrix4): { lowest: Vec3; highest: Vec3 } {
  let lowest: Vec3 = [0, 0, Number.POSITIVE_INFINITY];
  let highest: Vec3 = [0, 0, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < positions.length; i += 3) {
    const point = movePoint(matrix, [positions[i], positions[i + 1], positions[i + 2]]);
    if (point[2] < lowest[2]) lowest = point;
    if (point[2] > highest[2]) highest = point;
  }
  return { lowest, highest };
}

function coverOf(thing: Reaching, halves: Halves): ReportPart {
  const below = Math.max(0, -thing.lowest[2]);
  const above = Math.max(0, thing.highest[2]);
  const lower = sideOf('lower', thing, thing.lowest, below, halves);
  const upper = sideOf('upper', thing, thing.highest, above, halves);
  return { findings: [...lower.findings, ...upper.findings], figures: [...lower.figures, ...upper.figures] };
}

function sideOf(
  half: 'lower' | 'upper',
  { id, estimated }: Reaching,
  place: Vec3,
  reach: number,
  halves: Halves,
): { findings: Finding[]; figures: Figure[] } {
  const cover = halves[half] - reach;
  const figure = (name: FigureName, value: number): Figure => ({
    name,
    subject: id,
    value,
    unit: 'mm',
    source: geometry,
    estimated,
    places: [place],
  });
  const figures = [
    figure(half === 'lower' ? 'depth.below' : 'height.above', reach),
    figure(`cover.${half}`, cover),
  ];
  // What only touches the plane has nothing in this half to cover.
  if (reach === 0 || cover >= halves.limit) return { findings: [], figures };
  const through = cover <= 0;
  const says = through
    ? `${id} comes through the outer face of the ${half} half: it reaches ${mm(reach)} into ${mm(halves[half])}.`
    : `${id} leaves ${mm(cover)} in the ${half} half, where ${mm(halves.limit)} is wanted.`;
  const one = finding(through ? 'cover.through' : 'cover.thin', {
    subject: id,
    place,
    measured: { value: cover, unit: 'mm' },
    limit: { value: halves.limit, unit: 'mm' },
    says,
    remedy: thickness(half, reach + halves.limit, halves.process),
  });
  return { findings: [one], figures };
}

const mm = (value: number): string => `${value.toFixed(2)} mm`;

/** Stock comes in steps only where halves are cut from it. */
function thickness(half: string, needed: number, process: Process): string {
  if (process !== 'rubber')
    return `Make the ${half} half at least ${mm(needed)} thick, or sink the master differently.`;
  const stock = nextStock(needed);
  return stock
    ? `Take ${stock.name} (${mm(stock.thickness)}) stock for the ${half} half, or sink the master differently.`
    : `No stock is thick enough (${mm(needed)} needed): sink the master differently, or stack two sheets in the ${half} half.`;
}
