import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import {
  type Groove,
  plugPressure,
  stressOfMooney,
  viscosityOfMooney,
  viscousPressure,
} from '../../physics/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { excessOf, type PackInput, packInput, packs } from './pack.ts';

interface SpewInput {
  readonly pack: PackInput;
  readonly grooves?: (Groove & { readonly count: number }) | undefined;
  readonly mooney?: number | undefined;
  readonly scorchS?: number | undefined;
  readonly pressurePa?: number | undefined;
}

const byFlow =
  'flow of what is too much through the grooves within the scorch time: as a fluid of one viscosity (White, Viscous Fluid Flow) and as a plug of one stress, both from Mooney units by the measures of ISO 289-1; rubber, which thins as it shears, lies about between';

/** What drives rubber that is too much out of the grooves of the can before it scorches, against the closing pressure. */
export const spew: Check = check<SpewInput>({
  id: 'spew',
  title: 'Rubber out of the grooves',
  follows: false,
  processes: ['rubber'],
  units: (mold) => {
    const { can, rubber } = mold.bench;
    if (!packs(mold) || (can?.grooves === undefined && rubber?.mooney === undefined)) return [];
    return [{ subject: 'can', about: [], input: inputOf(mold) }];
  },
  run: (input, { memoize }) => {
    const { pack, grooves, mooney, scorchS, pressurePa } = input;
    const missing = leftOut([
      ['can.grooves', grooves],
      ['rubber.mooney', mooney],
      ['rubber.scorch', scorchS],
      ['closing.pressure', pressurePa],
    ]);
    if (grooves === undefined || mooney === undefined || scorchS === undefined || pressurePa === undefined)
      return { findings: [finding('spew.not-checked', { subject: 'can', values: { missing } })] };
    // What packing lacks it says itself.
    const excess = pack.missing.length > 0 ? 0 : excessOf(pack, memoize).excess;
    if (excess <= 0) return {};
    const flow = excess / scorchS / grooves.count;
    const range = rangeOf(mooney, flow, grooves);
    const depth = depthFor(mooney, flow, grooves, pressurePa);
    const figure = (name: FigureName, value: number): Figure =>
      makeFigure(name, { subject: 'can', value, source: byFlow, estimated: true });
    return {
      figures: [
        figure('spew.least', range.least),
        figure('spew.most', range.most),
        ...(depth === undefined ? [] : [figure('spew.depth', depth)]),
      ],
      findings: judge(range, pressurePa, depth),
    };
  },
});

const inputOf = (mold: Mold): SpewInput => {
  const { can, rubber, closing } = mold.bench;
  return {
    pack: packInput(mold),
    grooves: can?.grooves,
    mooney: rubber?.mooney,
    scorchS: rubber?.scorchS,
    pressurePa: closing?.pressurePa,
  };
};

interface Range {
  readonly least: number;
  readonly most: number;
}

function rangeOf(mooney: number, flow: number, groove: Groove): Range {
  const both = [
    viscousPressure(viscosityOfMooney(mooney), flow, groove),
    plugPressure(stressOfMooney(mooney), groove),
  ];
  return { least: Math.min(...both), most: Math.max(...both) };
}

/** No groove is looked for that is deeper, mm. */
const deepest = 50;

/** How deep grooves of that width, length and number have to be, mm, for the closing pressure to do at either end of the range. */
function depthFor(mooney: number, flow: number, groove: Groove, pressurePa: number): number | undefined {
  const does = (depth: number): boolean => rangeOf(mooney, flow, { ...groove, depth }).most <= pressurePa;
  let [low, high] = [0, deepest];
  if (!does(high)) return undefined;
  while (high - low > 0.001) {
    const middle = (low + high) / 2;
    if (does(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function judge({ least, most }: Range, limit: number, depth: number | undefined): Finding[] {
  if (most <= limit) return [];
  const opens = least > limit;
  const which = opens ? 'opens' : 'tight';
  const values = { which, measured: opens ? least : most, limit, depth } as const;
  return [finding('spew.grooves', { subject: 'can', values, severity: opens ? 'stop' : 'warn' })];
}
