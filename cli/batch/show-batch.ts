import { shorten, strong, table, wrap } from '../terminal.ts';
import type { Outcome } from './run-variants.ts';
import type { Summed } from './summary.ts';

interface Shown {
  readonly folder: string;
  readonly outcomes: readonly Outcome[];
  /** Of them, how many were not begun since nothing more could be written. */
  readonly notBegun: number;
  readonly summed: Summed;
  readonly interrupted: boolean;
  readonly quiet: boolean;
  readonly width: number;
}

/** How many variants went which way. */
export function tallyOf(outcomes: readonly Outcome[]) {
  const count = (wanted: (one: Outcome) => boolean): number => outcomes.filter(wanted).length;
  return {
    made: count(({ state, built }) => state === 'made' && built),
    unchanged: count(({ state }) => state === 'kept'),
    withStops: count(({ built, stops }) => built && stops > 0),
    notBuilt: count(({ built }) => !built),
  };
}

/** Of those without a fault, this many are shown; the summary has all. */
const mostShown = 40;

/** What a batch did: a line for each variant, the reason with those that are not fine, and where it all is. */
export function describeBatch({
  folder,
  outcomes,
  notBegun,
  summed,
  interrupted,
  quiet,
  width,
}: Shown): string {
  const bad = outcomes.filter(isBad);
  const fine = outcomes.filter((one) => !isBad(one));
  const shown = quiet ? bad : outcomes.filter((one) => isBad(one) || fine.indexOf(one) < mostShown);
  const hidden = quiet ? 0 : outcomes.length - shown.length;
  const { made, unchanged, withStops, notBuilt } = tallyOf(outcomes);
  const counts = `${made} made, ${unchanged} unchanged and skipped, ${withStops} with stops, ${notBuilt} not built`;
  return [
    interrupted ? strong('broken off; what was finished is whole, and running again goes on from there') : '',
    shown.length > 0 ? table([['variant', 'state', 'stops', 'warnings'], ...shown.map(cells)], [2, 3]) : '',
    hidden > 0 ? `... and ${hidden} more without a stop` : '',
    bad.map((one) => reasonOf(one, width)).join('\n'),
    outcomes.length > 0 ? strong(counts) : '',
    notBegun > 0
      ? strong(
          `${notBegun} not begun: nothing more can be written there; make room and run it again, and it goes on`,
        )
      : '',
    wrap(
      `${summed.there} of ${summed.there + summed.missing} variants are in ${folder}, with batch-summary.html, .csv and .json`,
      width,
    ),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

const isBad = ({ built, stops }: Outcome): boolean => !built || stops > 0;

const cells = (one: Outcome): string[] => [
  shorten(one.name, 48),
  stateOf(one),
  one.built || one.stops > 0 ? String(one.stops) : '-',
  one.built ? String(one.warnings) : '-',
];

function stateOf({ state, built }: Outcome): string {
  if (state === 'unwritten' || state === 'no room') return 'not written';
  if (!built) return 'not built';
  return state === 'kept' ? 'unchanged' : 'made';
}

const reasonOf = ({ name, reason = '' }: Outcome, width: number): string =>
  wrap(`${name}: ${reason}`, width, '', '  ');
