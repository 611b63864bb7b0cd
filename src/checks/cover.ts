import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
} from '../findings/index.ts';
import { type Matrix4, movedAlong, movePoint, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import {
  type Check,
  coveredFixtures,
  cropSurface,
  heightAt,
  type Mold,
  type PartingSurface,
  type Process,
  work,
} from '../mold/index.ts';
import { nextStock } from '../tables/index.ts';
import { floorOf, isUnder, type ProcessFloor } from './process-floor.ts';

/** What stands into both halves: the z of its lowest and highest point, and where they are (mold frame, mm). */
interface Reaching {
  readonly id: string;
  readonly lowest: Vec3;
  readonly highest: Vec3;
  /** The points farthest under and over the parting surface where they are, and how far. */
  readonly deepest: Local;
  readonly tallest: Local;
  readonly estimated: boolean;
}

interface Local {
  readonly reach: number;
  readonly place: Vec3;
}

export interface Halves {
  readonly lower: number;
  readonly upper: number;
  readonly limit: number;
  readonly process: Process;
  readonly floor?: ProcessFloor;
}

export function halvesOf(mold: Mold): Halves {
  const { disc, limits, process } = mold;
  const floor = floorOf(mold);
  return {
    lower: disc.lower,
    upper: disc.upper,
    limit: limits.cover,
    process,
    ...(floor && { floor }),
  };
}

/** The least a half has to keep: the plan's limit, or what its process makes whole where that is more. */
export const leastOf = ({ limit, floor }: Halves): number => Math.max(limit, floor?.least ?? 0);

export const everyProcess: readonly Process[] = ['rubber', 'rigid', 'poured'];
export const geometry = 'extent of the placed mesh against the thickness of the half';
const overSurface = 'extent of the placed mesh over the parting surface where it is';

interface PlacedInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly surface: PartingSurface;
  readonly estimated: boolean;
  readonly halves: Halves;
}

/**
 * Depth below and height above the parting surface of each master, where it is; and the cover it leaves to both outer
 * faces, which are flat, so that the true distance to them is along z.
 */
export const coverOfCavities: Check = work<PlacedInput, ReportPart>({
  id: 'cover',
  title: 'Cover over the cavities',
  scope: 'placement',
  processes: everyProcess,
  jobs: (mold) =>
    mold.placements.map(({ id, master, matrix, estimated, x, y, reach }) => ({
      subject: id,
      input: {
        id,
        mesh: masterMesh(mold, master),
        matrix,
        surface: cropSurface(mold.parting, { min: [x - reach, y - reach], max: [x + reach, y + reach] }),
        estimated,
        halves: halvesOf(mold),
      },
    })),
  run: ({ id, mesh, matrix, surface, estimated, halves }) =>
    coverOf({ id, estimated, ...extremes(mesh, matrix, surface) }, halves),
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
    return coveredFixtures(mold).map(({ id, x, y, depth, height }) => ({
      subject: id,
      input: { id, x, y, depth, height, halves },
    }));
  },
  run: ({ id, x, y, depth, height, halves }) =>
    coverOf(
      {
        id,
        lowest: [x, y, -depth],
        highest: [x, y, height],
        // Round bosses and well the parting surface is kept on the plane.
        deepest: { reach: depth, place: [x, y, -depth] },
        tallest: { reach: height, place: [x, y, height] },
        estimated: false,
      },
      halves,
    ),
});

export function masterMesh(mold: Mold, id: string): TriangleMesh {
  const master = mold.masters.find((one) => one.id === id);
  if (!master) throw new Error(`a placement names the master ${id}, which the mold does not hold`);
  return master.mesh;
}

function extremes(
  { positions }: TriangleMesh,
  matrix: Matrix4,
  surface: PartingSurface,
): Omit<Reaching, 'id' | 'estimated'> {
  const [low, high] = [new Farthest(), new Farthest()];
  const [deep, tall] = [new Farthest(0), new Farthest(0)];
  for (let i = 0; i < positions.length; i += 3) {
    const [px, py, pz] = [positions[i], positions[i + 1], positions[i + 2]];
    const z = movedAlong(2, matrix, px, py, pz);
    low.take(-z, i);
    high.take(z, i);
    const over = surface.flat
      ? z
      : z - heightAt(surface, movedAlong(0, matrix, px, py, pz), movedAlong(1, matrix, px, py, pz));
    deep.take(-over, i);
    tall.take(over, i);
  }
  const placeOf = ({ at }: Farthest): Vec3 =>
    movePoint(matrix, [positions[at], positions[at + 1], positions[at + 2]]);
  const [lowest, highest] = [placeOf(low), placeOf(high)];
  return {
    lowest,
    highest,
    deepest: { reach: deep.reach, place: deep.reach > 0 ? placeOf(deep) : lowest },
    tallest: { reach: tall.reach, place: tall.reach > 0 ? placeOf(tall) : highest },
  };
}

/** The vertex that reaches farthest of those taken, the first of several. */
class Farthest {
  at = 0;
  constructor(public reach = Number.NEGATIVE_INFINITY) {}

  take(reach: number, vertex: number): void {
    if (!(reach > this.reach)) return;
    this.reach = reach;
    this.at = vertex;
  }
}

function coverOf(thing: Reaching, halves: Halves): ReportPart {
  const below = Math.max(0, -thing.lowest[2]);
  const above = Math.max(0, thing.highest[2]);
  const { id, estimated, deepest, tallest } = thing;
  const local = (name: FigureName, { reach, place }: Local): Figure =>
    makeFigure(name, { subject: id, value: reach, source: overSurface, estimated, places: [place] });
  const lower = sideOf('lower', thing, thing.lowest, below, halves);
  const upper = sideOf('upper', thing, thing.highest, above, halves);
  return {
    findings: [...lower.findings, ...upper.findings],
    figures: [
      local('depth.below', deepest),
      ...lower.figures,
      local('height.above', tallest),
      ...upper.figures,
    ],
  };
}

function sideOf(
  half: 'lower' | 'upper',
  { id, estimated }: Reaching,
  place: Vec3,
  reach: number,
  halves: Halves,
): { findings: Finding[]; figures: Figure[] } {
  const cover = halves[half] - reach;
  const figures = [
    makeFigure(`cover.${half}`, { subject: id, value: cover, source: geometry, estimated, places: [place] }),
  ];
  // What only touches the plane has nothing in this half to cover.
  if (reach === 0 || cover >= leastOf(halves)) return { findings: [], figures };
  const one = tooThin('thing', half, { cover, reach, subject: id, place }, halves);
  return { findings: [one], figures };
}

interface Thin {
  readonly subject: string;
  readonly place: Vec3;
  readonly cover: number;
  /** How far the thing stands into the half. */
  readonly reach: number;
}

/** Of a cover that is less than it has to be: through, under what the process makes whole, or under the limit. */
export function tooThin(
  which: 'thing' | 'parting',
  half: 'lower' | 'upper',
  { subject, place, cover, reach }: Thin,
  halves: Halves,
): Finding {
  const { limit, floor, process } = halves;
  const needed = reach + leastOf(halves);
  if (isUnder(cover, floor)) {
    const { least, process: making } = floor;
    const values = { which, half, measured: cover, limit: least, making, needed };
    return finding('cover.under-process', { subject, place, values });
  }
  // Stock comes in steps only where halves are cut from it.
  const stock = process === 'rubber' ? nextStock(needed) : undefined;
  const values = {
    which,
    half,
    measured: cover,
    limit,
    process,
    needed,
    stock: stock?.name,
    stockThickness: stock?.thickness,
  };
  if (cover > 0) return finding('cover.thin', { subject, place, values });
  const through = { ...values, reach, thickness: halves[half] };
  return finding('cover.through', { subject, place, values: through });
}
