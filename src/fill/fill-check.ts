import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../findings/index.ts';
import { compose, type Matrix4, movePoint, type Point2, rotation, type Vec3 } from '../geometry/index.ts';
import {
  type Channel,
  type Check,
  check,
  heightAt,
  type Mold,
  makeAlways,
  masterOf,
  type Placement,
} from '../mold/index.ts';
import { standardGravity, superheatTime } from '../physics/index.ts';
import { alloyNamed } from '../tables/index.ts';
import { type CavityForecast, type CavityProblem, forecastCavity } from './cavity.ts';
import type { Conditions } from './conditions.ts';
import type { AirPlace } from './forecast.ts';
import type { SweptChannel } from './ports.ts';

interface FillInput {
  readonly missing: readonly string[];
  readonly cavity?: Cavity;
}

/** A cavity turned about the axis until its middle lies on +x: then like ones are one problem. */
interface Cavity {
  readonly id: string;
  readonly turnRad: number;
  readonly problem: CavityProblem;
  readonly estimated: boolean;
}

/** What air stays in each cavity that has a gate, and where. */
export const filling: Check = check<FillInput>({
  id: 'fill',
  title: 'Filling',
  follows: false,
  processes: ['rubber', 'rigid'],
  units: (mold) => {
    const gated = mold.placements.filter(
      (one) => isParted(mold, one) && channelsOf(mold, one.id).some(({ kind }) => kind === 'gate'),
    );
    if (gated.length === 0) return [];
    const missing = missingIn(mold);
    const conditions = conditionsOf(mold);
    if (!conditions) return [{ subject: 'fill', about: [], input: { missing } }];
    return gated.map((one) => ({
      subject: one.id,
      about: [one.id],
      input: { missing: [], cavity: cavityOf(mold, one, conditions) },
    }));
  },
  run: ({ missing, cavity }, { memoize = makeAlways }) => {
    if (!cavity) return { findings: [finding('fill.not-checked', { subject: 'fill', values: { missing } })] };
    const forecast = memoize('fill', cavity.problem, () => forecastCavity(cavity.problem));
    return forecast ? judge(cavity, forecast) : { findings: [coarse(cavity.id, 0, cavity.problem.cell)] };
  },
});

/** A master wholly over or under a flat parting plane has a stop of its own, and no gate meets it. */
const isParted = ({ parting }: Mold, { lowest, highest }: Placement): boolean =>
  !parting.flat || (lowest < 0 && highest > 0);

const channelsOf = ({ channels }: Mold, id: string): Channel[] =>
  channels.filter(({ placement }) => placement === id);

/** Density and surface tension of the metal: the plan's, else the table's for the alloy it names. */
function metalOf({ bench: { alloy } }: Mold) {
  const row = alloyNamed(alloy?.name ?? '');
  return { density: alloy?.densityKgM3 ?? row?.densityKgM3?.value, tension: row?.tensionNM?.value };
}

function missingIn(mold: Mold): string[] {
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
const usualCell = 0.4;
const mostForTime = 150_000;

function conditionsOf(mold: Mold): Omit<Conditions, 'flow'> | undefined {
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

function cavityOf(mold: Mold, placement: Placement, conditions: Omit<Conditions, 'flow'>): Cavity {
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
      channels: channelsOf(mold, id).map((channel) => sweptOf(mold, placement, channel, back)),
      conditions: { ...conditions, flow: volume / pourS },
      cell: Math.max(usualCell, Math.cbrt(volume / mostForTime)),
    },
  };
}

/** Whole numbers divided give the same double whatever they came from; + 0 makes -0 plain. */
const onStep = (value: number, step: number): number => Math.round(value / step) / Math.round(1 / step) + 0;

/** Distance between the points a channel's way is taken at, mm. */
const pointStep = 1;

/** The piece of a channel round its cavity, its way as high as the parting surface; as wide and deep as where it opens into it. */
function sweptOf(mold: Mold, placement: Placement, channel: Channel, back: Matrix4): SweptChannel {
  const { kind, run, half } = channel;
  const { width, depth } = run[kind === 'gate' ? run.length - 1 : 0];
  const path = run.slice(1).flatMap((to, i) => pointsNear(run[i].at, to.at, placement, width));
  return {
    id: kind,
    kind,
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

const byFilling =
  'quasi-static filling of cells: fill-spill-merge, Priority-Flood, capillary lock, Boyle; ranges by two-phase flow runs';

function judge({ id, turnRad, estimated }: Cavity, forecast: CavityForecast): Judged {
  const { places, gates } = forecast;
  const figure = (name: FigureName, value: number, source = byFilling): Figure =>
    makeFigure(name, { subject: id, value, source, estimated: estimated || name !== 'fill.cell' });
  const usual = (place: AirPlace): number => place.volumes[0];
  const sum = (volumes: readonly number[]): number => volumes.reduce((all, one) => all + one, 0);
  const band = Math.max(0, ...gates.map((gate) => gate.band[1]));
  const figures = [
    figure('fill.air', sum(places.map(usual))),
    figure('fill.airMost', sum(places.map(({ volumes }) => Math.max(...volumes)))),
    figure('fill.band', band),
    figure('fill.time', forecast.fillS, 'volume over the flow of its gates; poured in 3 s, our own choice'),
    figure('fill.cell', forecast.cell, 'edge of the cells the cavity is filled in'),
  ];
  const there = rotation('z', turnRad);
  const findings = [
    ...places.map((place) => airFinding(id, place, movePoint(there, place.pocket.place))),
    ...gateFindings(id, forecast, there),
    ...(forecast.seen < leastSeen ? [coarse(id, forecast.seen, forecast.cell)] : []),
  ];
  return { findings, figures };
}

/** Share of a cavity's volume that cells joined to its gate make up, at least. Our own choice. */
const leastSeen = 0.9;

const coarse = (id: string, seen: number, cell: number): Finding =>
  finding('fill.coarse', { subject: id, values: { measured: seen, limit: leastSeen, cell } });

/** Share by which two volumes may differ and be said once. */
const asMuch = 0.05;

function airFinding(id: string, { stays, volumes, pocket }: AirPlace, place: Vec3): Finding {
  const [least, most] = [Math.min(...volumes), Math.max(...volumes)];
  const values = {
    least,
    ...(most > (1 + asMuch) * least && { most }),
    where: pocket.where,
    sealed: pocket.sealedBy,
  };
  return finding(stays === 'all' ? 'fill.air-stays' : 'fill.air-may-stay', { subject: id, place, values });
}

/** Where more air stays under a shut gate than the best vent lets out. */
function gateFindings(id: string, { gates, places }: CavityForecast, there: Matrix4): Finding[] {
  const frees = Math.max(0, ...places.map(({ volumes }) => volumes[0]));
  return gates
    .filter(({ band, opening }) => opening < 1 && band[1] > frees)
    .map(({ place, band: [least, most], opensAt }) =>
      finding('fill.open-gate-first', {
        subject: id,
        place: movePoint(there, place),
        values: { least, most, vent: frees, width: opensAt },
      }),
    );
}
