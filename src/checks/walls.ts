import {
  type Figure,
  type FigureName,
  type FindingCode,
  finding,
  type ReportPart,
} from '../findings/index.ts';
import type { Matrix4, TriangleMesh, Vec3 } from '../kernel/index.ts';
// Past the room's index: this file brings three and its trees along, which only walls need.
import { distanceTree, meshDistance } from '../mesh/measure/distance.ts';
import {
  type Boss,
  type Check,
  type Mold,
  type Placement,
  type Process,
  type Sprue,
  work,
} from '../mold/index.ts';
import { masterMesh } from './cover.ts';
import { bossMesh, bossReach, sprueMesh } from './turned-mesh.ts';

export const everyProcess: readonly Process[] = ['rubber', 'rigid', 'poured'];
const trueDistance = 'true distance of the placed meshes';

/** Walls up to this many times the limit are measured and reported; farther ones are of no interest. */
const look = 2;

export interface Cavity {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly estimated: boolean;
}

export const cavityOf = (mold: Mold, { id, master, matrix, estimated }: Placement): Cavity => ({
  id,
  mesh: masterMesh(mold, master),
  matrix,
  estimated,
});

/** Gap between the circles round two things, seen from above: the solids are no closer than that. */
const circleGap = (
  a: { x: number; y: number },
  reachA: number,
  b: { x: number; y: number },
  reachB: number,
): number => Math.hypot(a.x - b.x, a.y - b.y) - reachA - reachB;

interface PairInput {
  readonly a: Cavity;
  readonly b: Cavity;
  readonly limit: number;
}

/** The wall between every two neighbouring cavities: true mesh distance, with both places. */
export const wallsBetweenCavities: Check = work<PairInput, ReportPart>({
  id: 'walls',
  title: 'Walls between cavities',
  scope: 'pair',
  processes: everyProcess,
  jobs: (mold) => {
    const limit = mold.limits.wall;
    return pairs(mold.placements)
      .filter(([a, b]) => circleGap(a, a.reach, b, b.reach) <= look * limit)
      .map(([a, b]) => ({
        subject: a.id,
        input: { a: cavityOf(mold, a), b: cavityOf(mold, b), limit },
      }));
  },
  run: ({ a, b, limit }) => measure(a, b, { limit, name: 'walls.least', code: 'walls.thin' }),
});

interface BossInput {
  readonly cavity: Cavity;
  readonly boss: Omit<Boss, 'at'>;
  readonly limit: number;
}

/** Cavities against bosses, a hexagon counted as the round through its corners. */
export const wallsToBosses: Check = work<BossInput, ReportPart>({
  id: 'walls-bosses',
  title: 'Walls between cavities and bosses',
  scope: 'pair',
  processes: everyProcess,
  jobs: (mold) => {
    const limit = mold.limits.cavityToBoss;
    return mold.placements.flatMap((placement) =>
      mold.bosses
        .filter((boss) => circleGap(placement, placement.reach, boss, bossReach(boss)) <= look * limit)
        .map(({ at: _, ...boss }) => ({
          subject: placement.id,
          input: { cavity: cavityOf(mold, placement), boss, limit },
        })),
    );
  },
  run: ({ cavity, boss, limit }) => {
    const mesh = bossMesh(boss);
    return measure(cavity, { id: boss.id, mesh, estimated: false }, bossKind(limit));
  },
});

const bossKind = (limit: number): Kind => ({ limit, name: 'walls.boss', code: 'walls.boss' });

interface WellInput {
  readonly cavity: Cavity;
  readonly sprue: Omit<Sprue, 'at'>;
  readonly upper: number;
  readonly limit: number;
}

/** Cavities against well and pouring hole; a gate may cross this wall. */
export const wallsToWell: Check = work<WellInput, ReportPart>({
  id: 'walls-well',
  title: 'Walls between cavities and the well',
  scope: 'placement',
  processes: everyProcess,
  jobs: ({ sprue, ...mold }) => {
    if (!sprue) return [];
    const { at: _, ...shape } = sprue;
    const limit = mold.limits.cavityToWell;
    const widest = Math.max(shape.wellRadius, shape.holeRadius + shape.fillet);
    return mold.placements
      .filter((placement) => circleGap(placement, placement.reach, { x: 0, y: 0 }, widest) <= look * limit)
      .map((placement) => ({
        subject: placement.id,
        input: { cavity: cavityOf(mold, placement), sprue: shape, upper: mold.disc.upper, limit },
      }));
  },
  run: ({ cavity, sprue, upper, limit }) => {
    const well = { id: 'sprue', mesh: sprueMesh(sprue, upper), estimated: false };
    return measure(cavity, well, { limit, name: 'walls.well', code: 'walls.well' });
  },
});

function pairs<T>(list: readonly T[]): (readonly [T, T])[] {
  return list.flatMap((a, i) => list.slice(i + 1).map((b) => [a, b] as const));
}

export interface Kind {
  readonly limit: number;
  readonly name: FigureName;
  readonly code: FindingCode;
}

type Body = Omit<Cavity, 'matrix'> & { readonly matrix?: Matrix4 };

/** Nothing is said of bodies farther apart than the look-out. */
export function measure(a: Body, b: Body, { limit, name, code }: Kind): ReportPart {
  const answer = meshDistance(distanceTree(a.mesh, a.matrix), distanceTree(b.mesh, b.matrix), look * limit);
  if ('beyond' in answer) return {};
  const { distance, pointA, pointB } = answer;
  const figure: Figure = {
    name,
    subject: `${a.id} ${b.id}`,
    value: distance,
    unit: 'mm',
    source: trueDistance,
    estimated: a.estimated || b.estimated,
    places: [pointA, pointB],
  };
  if (distance >= limit) return { figures: [figure] };
  // A channel through another's cavity feeds or vents that one too: bad, but the mold stays whole.
  const broken = distance === 0;
  const says = broken
    ? `${a.id} and ${b.id} run into each other.`
    : `The wall between ${a.id} and ${b.id} is ${distance.toFixed(2)} mm, where ${limit.toFixed(2)} mm is wanted.`;
  const one = finding(broken && code !== 'walls.channel' ? 'walls.broken' : code, {
    subject: a.id,
    place: middle(pointA, pointB),
    measured: { value: distance, unit: 'mm' },
    limit: { value: limit, unit: 'mm' },
    says,
  });
  return { findings: [one], figures: [figure] };
}

const middle = (a: Vec3, b: Vec3): Vec3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
