import {
  type Figure,
  type FigureName,
  type Finding,
  finding,
  makeFigure,
  type ReportPart,
  type Series,
} from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { beforePours, effusivityOf, halfForTime, heatToSet, type Poured } from '../../physics/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { metalOf, shotOf } from '../turning/index.ts';
import { asksOfPours, type CastingInput, type Castings, castingInput, castingsOf } from './casting-input.ts';
import { type Cycled, cycleOf, pouredOf } from './cycle.ts';

const byPulses =
  'heat of each pour spread over the parting plane, conducted through the halves and given off at their outer faces: exact modes, summed over the pours (Carslaw and Jaeger, ch. 14); under the castings it is hotter';
const byDraw =
  'time of the pour against heat conducted into a thick half (Flemings; Poirier and Geiger, ch. 10), at the smallest V / A';

/** Halves that may be colder need no warming, C. */
const frostC = 0;
/** Pours that are drawn in the series. */
const drawn = 40;

/** How many pours an hour the halves stand, and how warm they become and should be. */
export const pours: Check = check<CastingInput>({
  id: 'pours',
  title: 'One pour after another',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) => (asksOfPours(mold) ? [{ subject: 'pouring', about: [], input: castingInput(mold) }] : []),
  run: (input, { memoize }) => {
    const castings = castingsOf(input, memoize);
    // What the setting lacks it says itself.
    if (!castings || input.pouring.halvesC === undefined) return {};
    const cold = preheat(input, castings);
    const turning = metalOf(input.shot, memoize);
    const shotG = turning && shotOf(turning);
    const { pouring } = input;
    const missing = leftOut([
      ['pouring.fill', pouring.fillS],
      ['pouring.handling', pouring.handlingS],
      ['pouring.air', pouring.airC],
      ['pouring.film', pouring.filmWM2K],
      ['spin.shot', shotG],
    ]);
    const poured = shotG === undefined ? undefined : pouredOf(input, castings, shotG);
    const cycled = poured && cycleOf(input, castings, poured);
    const parts = cycled ? [cold, judge(input, poured, cycled)] : [cold];
    return {
      findings: [
        ...(missing.length > 0
          ? [finding('pours.not-checked', { subject: 'pouring', values: { missing } })]
          : []),
        ...parts.flatMap(({ findings = [] }) => findings),
      ],
      figures: parts.flatMap(({ figures = [] }) => figures),
      series: parts.flatMap(({ series = [] }) => series),
    };
  },
});

const figure = ({ estimated }: CastingInput, name: FigureName, value: number, source: string): Figure =>
  makeFigure(name, { subject: 'pouring', value, source, estimated });

function judge(input: CastingInput, poured: Poured, { cycleS, halvesC, held }: Cycled): ReportPart {
  const { warmestC } = input.pouring;
  const findings: Finding[] = held
    ? [
        finding('pours.wait', {
          subject: 'pouring',
          values: {
            measured: held.halvesC,
            limit: warmestC ?? held.halvesC,
            cycle: cycleS,
            shortest: held.cycleS,
          },
        }),
      ]
    : [];
  return {
    findings,
    figures: [
      figure(
        input,
        'pours.cycle',
        cycleS,
        'time until the last has set, at the temperature the halves then come to, and the handling',
      ),
      figure(input, 'pours.perHour', Math.floor(3600 / cycleS), 'an hour over the time from pour to pour'),
      figure(input, 'pours.halves', halvesC, byPulses),
    ],
    series: [temperatures(poured, cycleS, warmestC)],
  };
}

function temperatures(poured: Poured, cycleS: number, warmestC: number | undefined): Series {
  return {
    name: 'pours.temperature',
    subject: 'pouring',
    x: { label: 'pours before', unit: 'count', values: Array.from({ length: drawn + 1 }, (_, k) => k) },
    y: { label: 'halves before the pour', unit: 'C', values: beforePours(poured, cycleS, drawn + 1) },
    ...(warmestC !== undefined && { limit: { value: warmestC, says: 'hottest the plan allows' } }),
  };
}

/**
 * How warm the halves have to be for the mold to be full before the thinnest casting begins to set, and, less than that,
 * before all of it has: between the two it depends on how far metal that is setting still runs.
 */
function preheat(input: CastingInput, { metal, half, spots }: Castings): ReportPart {
  const { fillS, halvesC, coolestC } = input.pouring;
  if (halvesC === undefined) return {};
  const cold = (which: 'sets' | 'shop', limit: number): Finding[] =>
    halvesC < limit
      ? [finding('pours.cold', { subject: 'pouring', values: { which, measured: halvesC, limit } })]
      : [];
  const known = coolestC === undefined ? [] : cold('shop', coolestC);
  if (fillS === undefined) return { findings: known };
  const thin = Math.min(...spots.map(({ modulus }) => modulus));
  const effusivity = effusivityOf(half.conductivityWMK, half.diffusivityM2S);
  const superheat = metal.densityKgM3 * metal.moltenJKgK * Math.max(0, metal.pourC - metal.liquidusC);
  const sure = halfForTime(superheat, thin, metal.liquidusC, effusivity, fillS);
  const least = halfForTime(metal.densityKgM3 * heatToSet(metal), thin, metal.solidusC, effusivity, fillS);
  return {
    findings: [...known, ...cold('sets', least)],
    figures: [
      figure(input, 'pours.preheatSure', sure, `${byDraw}; its superheat alone`),
      figure(input, 'pours.preheatLeast', least, `${byDraw}; all its heat until set`),
    ].filter(({ value }) => value > frostC),
  };
}
