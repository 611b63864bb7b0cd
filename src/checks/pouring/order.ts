import { type Figure, type FigureName, type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Check, check } from '../../mold/index.ts';
import { leftOut } from '../from-mold/index.ts';
import { castingsG, paceOf, type RunInput, runInput } from './run.ts';

const subject = 'order';

/** Pours, metal and time that an order takes. */
export const order: Check = check<RunInput>({
  id: 'order',
  title: 'Order',
  follows: false,
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) =>
    mold.bench.order && mold.placements.length > 0 ? [{ subject, about: [], input: runInput(mold) }] : [],
  run: (input, { memoize }) => {
    const { kinds, misruns } = input;
    const wanted = kinds.filter((one) => one.wanted > 0);
    const cast = wanted.filter(({ perPour }) => perPour > 0);
    const findings = wanted
      .filter(({ perPour }) => perPour === 0)
      .map(({ master, wanted: measured }) =>
        finding('order.unplaced', { subject: master, values: { measured } }),
      );
    if (cast.length === 0) return { findings };
    const pours = Math.max(...cast.map((one) => poursFor(one.wanted, one.perPour, misruns)));
    const made = cast.map(({ master, perPour }) =>
      figure(input, 'order.made', Math.floor(pours * perPour * (1 - misruns) + rounding), byCount, master),
    );
    const pace = paceOf(input, memoize);
    return {
      findings: [...findings, ...blanks(input, pace)],
      figures: [figure(input, 'order.pours', pours, byCount), ...made, ...amounts(input, pours, pace)],
    };
  },
});

/** What rounding leaves of a whole number. */
const rounding = 1e-9;

/** Fewest pours in which so many good castings come of as many cavities. */
const poursFor = (wanted: number, perPour: number, misruns: number): number =>
  Math.ceil(wanted / (perPour * (1 - misruns)) - rounding);

const byCount = 'pieces wanted over good castings of one pour; the master that takes the most pours decides';

const figure = (
  { estimated }: RunInput,
  name: FigureName,
  value: number,
  source: string,
  about = subject,
): Figure => makeFigure(name, { subject: about, value, source, estimated });

type Pace = ReturnType<typeof paceOf>;

function amounts(input: RunInput, pours: number, { shotG, cycleS }: Pace): Figure[] {
  const { kinds, misruns, loss } = input;
  const time =
    cycleS === undefined
      ? []
      : [figure(input, 'order.time', pours * cycleS, 'pours times the time from pour to pour')];
  const castings = castingsG(kinds);
  if (shotG === undefined || castings === undefined) return time;
  const good = castings * (1 - misruns);
  const poured = (pours * shotG) / 1000;
  return [
    figure(input, 'order.metal', poured, 'pours times the shot'),
    figure(
      input,
      'order.used',
      (pours * good) / 1000 + loss * poured,
      'good castings, and the share lost at each melting',
    ),
    figure(
      input,
      'order.remelt',
      1 - good / shotG,
      'what of a shot is in no good casting: sprue, gates, misruns',
    ),
    ...time,
  ];
}

function blanks({ casting, shot }: RunInput, { shotG, cycleS }: Pace): Finding[] {
  const ofShot = shotG === undefined ? shot.missing.filter((name) => name !== 'machine.closingForce') : [];
  const missing = [...ofShot, ...leftOut([['pouring', cycleS ?? casting]])];
  return missing.length > 0 ? [finding('order.not-checked', { subject, values: { missing } })] : [];
}
