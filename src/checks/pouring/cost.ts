import { type Figure, type FigureName, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check, type Mold } from '../../mold/index.ts';
import { halfDensity, leftOut } from '../from-mold/index.ts';
import { castingsG, paceOf, type RunInput, runInput } from './run.ts';

interface CostInput extends RunInput {
  readonly prices: NonNullable<Mold['bench']['prices']>;
  /** Rubber of the halves, kg; 0 where they are of none, left out where its density is not known. */
  readonly rubberKg?: number;
  readonly castings: number;
}

const subject = 'prices';

/** What a casting costs, and its mold, from the prices of the plan. */
export const cost: Check = check<CostInput>({
  id: 'cost',
  title: 'Cost',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) =>
    mold.bench.prices && mold.placements.length > 0
      ? [{ subject, about: [], input: { ...runInput(mold), ...costInput(mold, mold.bench.prices) } }]
      : [],
  run: (input, { memoize }) => {
    const parts = partsOf(input, paceOf(input, memoize));
    const { prices, estimated } = input;
    const figure = (name: FigureName, value: number | undefined, source: string): Figure[] =>
      value === undefined ? [] : [makeFigure(name, { subject, value, source, estimated, word: prices.in })];
    const { metal, work, mold, run, missing } = parts;
    const share = mold === undefined || run === undefined ? undefined : mold / run;
    const each =
      metal === undefined || work === undefined || share === undefined ? undefined : metal + work + share;
    return {
      findings: missing.length > 0 ? [finding('cost.not-checked', { subject, values: { missing } })] : [],
      figures: [
        ...figure(
          'cost.metal',
          metal,
          'mean mass of a casting, with its share of what melting loses, times the price',
        ),
        ...figure(
          'cost.work',
          work,
          'time from pour to pour over the good castings of a pour, times the price',
        ),
        ...figure('cost.mold', mold, 'rubber, all else and the time until it is ready, times their prices'),
        ...figure('cost.moldShare', share, 'cost of the mold over the castings it is paid by'),
        ...figure('cost.casting', each, 'sum of metal, work and share of the mold'),
        ...figure(
          'cost.run',
          each === undefined || run === undefined ? undefined : each * run,
          'cost of a casting times their number',
        ),
      ],
    };
  },
});

function costInput(
  mold: Mold,
  prices: CostInput['prices'],
): Pick<CostInput, 'prices' | 'rubberKg' | 'castings'> {
  const { disc, bench, process, placements } = mold;
  const density = halfDensity(mold)?.value;
  const full = Math.PI * disc.radius ** 2 * (disc.lower + disc.upper) * 1e-9;
  const rubberKg =
    process === 'rigid'
      ? 0
      : (bench.rubber?.laidInKg ?? (density === undefined ? undefined : full * density));
  return { prices, castings: placements.length, ...(rubberKg !== undefined && { rubberKg }) };
}

interface Parts {
  readonly metal?: number | undefined;
  readonly work?: number | undefined;
  readonly mold?: number | undefined;
  readonly run?: number | undefined;
  readonly missing: readonly string[];
}

function partsOf(input: CostInput, { shotG, cycleS }: ReturnType<typeof paceOf>): Parts {
  const { prices, kinds, misruns, loss, rubberKg, castings } = input;
  const { metalPerKg, rubberPerKg, workPerHour, other, moldTimeS } = prices;
  const good = castings * (1 - misruns);
  const ordered = kinds.reduce((sum, { wanted }) => sum + wanted, 0);
  const run = prices.run ?? (ordered > 0 ? ordered : undefined);
  const mass = castingsG(kinds);
  const rubber = rubberKg === 0 ? 0 : product(rubberKg, rubberPerKg);
  const made = product(product(moldTimeS, workPerHour), 1 / 3600);
  const missing = leftOut([
    ['prices.metal', metalPerKg],
    ['prices.work', workPerHour],
    ['prices.rubber', rubberKg === 0 ? 0 : rubberPerKg],
    ['rubber.density', rubberKg],
    ['prices.other', other],
    ['prices.moldTime', moldTimeS],
    ['prices.run', run],
    ['alloy.density', mass],
    ['spin.shot', shotG],
    ['pouring', cycleS],
  ]);
  const kg =
    mass === undefined || shotG === undefined ? undefined : (mass / castings + (loss * shotG) / good) / 1000;
  return {
    missing,
    run,
    metal: product(kg, metalPerKg),
    work: product(product(cycleS, workPerHour), 1 / 3600 / good),
    mold:
      rubber === undefined || other === undefined || made === undefined ? undefined : rubber + other + made,
  };
}

/** Of what is known alone. */
const product = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined || b === undefined ? undefined : a * b;
