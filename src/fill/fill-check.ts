import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  type Judged,
  makeFigure,
} from '../findings/index.ts';
import { type Matrix4, movePoint, rotation, type Vec3 } from '../geometry/index.ts';
import { type Check, check, makeAlways } from '../mold/index.ts';
import { type CavityForecast, forecastCavity } from './cavity.ts';
import type { AirPlace } from './forecast.ts';
import {
  type Cavity,
  cavityOf,
  channelsOf,
  conditionsOf,
  isParted,
  missingIn,
  mostForTime,
  usualCell,
} from './of-mold.ts';

interface FillInput {
  readonly missing: readonly string[];
  readonly cavity?: Cavity;
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
    ...(forecast.cell > usualCell * (1 + asMuch) ? [large(id, forecast.cell)] : []),
    ...(forecast.seen < leastSeen ? [coarse(id, forecast.seen, forecast.cell)] : []),
  ];
  return { findings, figures };
}

/** Share of a cavity's volume that cells joined to its gate make up, at least. Our own choice. */
const leastSeen = 0.9;

const coarse = (id: string, seen: number, cell: number): Finding =>
  finding('fill.coarse', { subject: id, values: { measured: seen, limit: leastSeen, cell } });

const large = (id: string, measured: number): Finding =>
  finding('fill.large-cells', { subject: id, values: { measured, limit: usualCell, count: mostForTime } });

/** Share by which two volumes, or cells, may differ and be said once. */
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
