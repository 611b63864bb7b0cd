import { compose, type Matrix4, movePoint, type Point2, rotation, type Vec3 } from '../geometry/index.ts';
import {
  alloyDensity,
  alloyTension,
  type Channel,
  heightAt,
  liquidAlloyDensity,
  type Mold,
  masterOf,
  type Placement,
} from '../mold/index.ts';
import { standardGravity, superheatTime } from '../physics/index.ts';
import { alloyNamed } from '../tables/index.ts';
import type { CavityProblem } from './cavity.ts';
import type { Conditions } from './conditions.ts';
import type { SweptChannel } from './ports.ts';

/** A cavity turned about the axis until its middle lies on +x: then like ones are one problem. */
export interface Cavity {
  readonly id: string;
  readonly turnRad: number;
  readonly problem: CavityProblem;
  readonly estimated: boolean;
}

/** A master wholly over or under a flat parting plane has a stop of its own, and no gate meets it. */
export const isParted = ({ parting }: Mold, { lowest, highest }: Placement): boolean =>
  !parting.flat || (lowest < 0 && highest > 0);

export const channelsOf = ({ channels }: Mold, id: string): Channel[] =>
  channels.filter(({ placement }) => placement === id);

/** Of the metal as it is poured; as heavy as it sets, a few percent more, where its composition is not known. */
const metalOf = (mold: Mold) => ({
  density: (liquidAlloyDensity(mold) ?? alloyDensity(mold))?.value,
  tension: alloyTension(mold)?.value,
});

export function missingIn(mold: Mold): string[] {
  const { density, tension } = metalOf(mold);
  return [
    ...(mold.bench.spin?.speedRpm === undefined ? ['spin.speed'] : []),
    // No field gives the tension: the table has it for alloys of tin, and their density with it.
    ...(tension === undefined ? ['alloy.name'] : density === undefined ? ['alloy.density'] : []),
  ];
}

/** Time in which the shot is poured, s. Common practice, no published source. */
const pourS = 3;

/** Edge of the cells, mm; and the most of one cavity, for the time it takes: a larger one gets larger cells. Our own choice. */
export const usualCell = 0.4;
export const mostForTime = 150_000;

export function conditionsOf(mold: Mold): Omit<Conditions, 'flow'> | undefined {
  const { density, tension } = metalOf(mold);
  const speedRpm = mold.bench.spin?.speedRpm;
  if (speedRpm === undefined || density === undefined || tension === undefined || !mold.sprue)
    return undefined;
  return {
    field: { speedRpm, gravity: standardGravity },
    metal: { densityKgM3: density, tensionNM: tension },
    // The least shot: its free surface goes through the edge of the well.
    wellLevel: mold.sprue.wellRadius,
    ...cooling(mold, density),
  };
}

/** Specific heat of liquid tin, J/(kg K); a mold that has been poured a few times, C; from memory. */
const tinHeat = 250;
const usedMoldC = 60;
/** Gap of a parting line that lets air through, mm: a tenth of the mismatch that is usual; and how far it leads. Our own choice. */
const leak = { gap: 0.01, land: 20 };

/** How long the metal stays hot, and so whether a leak counts: only where plan and table give all that it takes. */
function cooling(
  { bench: { alloy, rubber } }: Mold,
  densityKgM3: number,
): Pick<Conditions, 'superheatS' | 'leak'> {
  const liquidus = alloy?.liquidusC ?? alloyNamed(alloy?.name ?? '')?.liquidusC?.value;
  const { conductivityWMK: conductivity, diffusivityM2S: diffusivity } = rubber ?? {};
  if (alloy?.pourC === undefined || liquidus === undefined || !conductivity || !diffusivity) return {};
  const superheatK = Math.max(0, alloy.pourC - liquidus);
  const overMoldK = liquidus - usedMoldC;
  if (!(overMoldK > 0)) return {};
  const metal = { densityKgM3, heatJKgK: tinHeat, superheatK, overMoldK, conductivity, diffusivity };
  return { leak, superheatS: superheatTime(metal, 1) };
}

/**
 * Steps that are rounded to, so that like cavities all round the disc come out alike: of places, of the numbers of a matrix,
 * and of heights of the parting surface, which is sampled on a square grid; mm.
 */
const alike = 1e-3;
const alikeMatrix = 1e-6;
const alikeHeight = 0.05;

export function cavityOf(mold: Mold, placement: Placement, conditions: Omit<Conditions, 'flow'>): Cavity {
  const { id, x, y, matrix, estimated } = placement;
  const turnRad = Math.atan2(y, x);
  const back = rotation('z', -turnRad);
  const { mesh, measures } = masterOf(mold, placement);
  const volume = measures.volume * placement.scale ** 3;
  return {
    id,
    turnRad,
    estimated,
    problem: {
      mesh,
      matrix: compose(back, matrix).map((value) => onStep(value, alikeMatrix)),
      channels: sweptIn(mold, placement, channelsOf(mold, id)),
      conditions: { ...conditions, flow: volume / pourS },
      cell: Math.max(usualCell, Math.cbrt(volume / mostForTime)),
    },
  };
}

/** Whole numbers divided give the same double whatever they came from; + 0 makes -0 plain. */
const onStep = (value: number, step: number): number => Math.round(value / step) / Math.round(1 / step) + 0;

/** Channels of a placement, turned about the axis as it is. */
export function sweptIn(mold: Mold, placement: Placement, channels: readonly Channel[]): SweptChannel[] {
  const back = rotation('z', -Math.atan2(placement.y, placement.x));
  return channels.flatMap((channel) => {
    const { kind } = channel;
    // What lies before its gate does not open into the cavity.
    if (kind === 'runner' || kind === 'pocket') return [];
    return [{ id: kind, kind, ...sweptOf(mold, placement, channel, back) }];
  });
}

/** Distance between the points a channel's way is taken at, mm. */
const pointStep = 1;

/** The piece of a channel round its cavity, its way as high as the parting surface; as wide and deep as where it opens into it. */
function sweptOf(
  mold: Mold,
  placement: Placement,
  channel: Channel,
  back: Matrix4,
): Omit<SweptChannel, 'id' | 'kind'> {
  const { kind, run, half } = channel;
  const { width, depth } = run[kind === 'gate' ? run.length - 1 : 0];
  const path = run.slice(1).flatMap((to, i) => pointsNear(run[i].at, to.at, placement, width));
  return {
    path: path.map(([x, y]): Vec3 => {
      const [a, b, c] = movePoint(back, [x, y, heightAt(mold.parting, x, y)]);
      return [onStep(a, alike), onStep(b, alike), onStep(c, alikeHeight)];
    }),
    width,
    depth,
    half,
  };
}

/** Points of a straight piece no farther along it from a placement than its reach and `margin` mm. */
function pointsNear(from: Point2, to: Point2, { x, y, reach }: Placement, margin: number): Point2[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  const near = ((x - from[0]) * dx + (y - from[1]) * dy) / length;
  const [first, last] = [near - reach - margin, near + reach + margin].map((s) =>
    Math.min(length, Math.max(0, s)),
  );
  const count = Math.max(1, Math.ceil((last - first) / pointStep));
  return Array.from({ length: count + 1 }, (_, k): Point2 => {
    const share = (first + ((last - first) * k) / count) / length;
    return [from[0] + share * dx, from[1] + share * dy];
  });
}
