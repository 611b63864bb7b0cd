import { type CodeValues, type Finding, type FindingCode, finding } from '../findings/index.ts';
import type { ChangeKind } from './changes.ts';
import { fisherFewer, type TwoByTwo } from './fisher.ts';
import type { Told } from './forecast-hits.ts';
import type { Fault, Outcome } from './outcome.ts';
import { type Casting, isGood, type Lopsided } from './yields.ts';

/** What the forecast says of the worst air in a cavity as it is cut. */
export interface ToldAir {
  readonly told: Told;
  /** mm3 at most over the range; 0 where it fills. */
  readonly volume: number;
  /** Left out where it fills. */
  readonly frees?: 'vent' | 'gate';
  /** Width a gate would have to be opened to, mm. */
  readonly width?: number;
}

/** All that is known of the castings of one master. */
export interface Case {
  readonly master: string;
  readonly ids: readonly string[];
  readonly castings: readonly Casting[];
  /** Of the cavity of it with the most air; left out where there is no forecast. */
  readonly air?: ToldAir | undefined;
  readonly near?: Omit<Lopsided, 'angleDeg'> | undefined;
  /** Numbers of the first two pours. */
  readonly firstPours: readonly number[];
  /** Changes tried without help on cavities of it. */
  readonly noHelp: ReadonlySet<ChangeKind>;
  /** As at the last pour. */
  readonly metalC?: number | undefined;
  readonly speedRpm?: number | undefined;
}

/** A rule says what to change next where it applies; it holds back what was tried without help. */
export interface Rule {
  /** What it would change, as the log tells it; left out where the log does not see it. */
  readonly change?: ChangeKind;
  applies(one: Case): Finding | undefined;
}

/** Cheapest and likeliest first: common practice, no published source. */
export const rules: readonly Rule[] = [
  ruleOf('try.open-gate', 'gate opened', ['short', 'porous'], ({ air }) =>
    air?.frees === 'gate' ? { volume: air.volume, width: air.width } : undefined,
  ),
  ruleOf('try.vent', 'vent more', ['short', 'porous'], ({ air }) =>
    air?.frees === 'vent' ? { volume: air.volume } : undefined,
  ),
  {
    change: 'mold warmer',
    applies({ master, castings, firstPours }) {
      const first = tally(castings.filter(({ pour }) => firstPours.includes(pour)));
      const later = tally(castings.filter(({ pour }) => !firstPours.includes(pour)));
      if (first.bad === 0 || later.of === 0 || fisherFewer(first, later) >= rare) return undefined;
      const values = { bad: first.bad, measured: first.of, laterBad: later.bad, laterOf: later.of };
      return finding('try.warm-mold', { subject: master, values });
    },
  },
  ruleOf('try.hotter-metal', 'metal hotter', ['cold lap', 'short'], ({ air, metalC }) =>
    fills(air) ? { metal: metalC } : undefined,
  ),
  ruleOf('try.faster', 'faster', ['short'], ({ air, speedRpm }) =>
    fills(air) ? { speed: speedRpm } : undefined,
  ),
  ruleOf('try.drier', undefined, ['porous'], ({ air }) => (fills(air) ? {} : undefined)),
  ruleOf('try.second-gate', 'gate more', ['short'], ({ noHelp }) =>
    noHelp.has('gate opened') && noHelp.has('vent more') ? {} : undefined,
  ),
  {
    applies({ master, near }) {
      if (!near) return undefined;
      const { bad, of: measured, otherBad, otherOf } = near;
      return finding('try.other-place', { subject: master, values: { bad, measured, otherBad, otherOf } });
    },
  },
  ruleOf('try.slower', 'slower', ['flash'], ({ speedRpm }) => ({ speed: speedRpm })),
  ruleOf('try.release', undefined, ['torn mold'], () => ({})),
];

/** Below this chance a difference is told: a convention of statistics. */
const rare = 0.05;

/** Not where it is not known. */
const fills = (air: ToldAir | undefined): boolean => air?.told === 'none';

type Lost = 'bad' | 'measured';

function ruleOf<C extends FindingCode>(
  code: C,
  change: ChangeKind | undefined,
  faults: readonly Fault[],
  more: (one: Case) => Omit<CodeValues<C>, Lost> | undefined,
): Rule {
  return {
    ...(change && { change }),
    applies(one) {
      const values = more(one);
      const bad = one.castings.filter(({ came }) => came.some((word) => isOne(word, faults))).length;
      if (!values || bad === 0) return undefined;
      const all = { bad, measured: one.castings.length, ...values } as CodeValues<C>;
      return finding(code, { subject: one.master, values: all } as Parameters<typeof finding<C>>[1]);
    },
  };
}

const isOne = (word: Outcome, faults: readonly Fault[]): boolean => word !== 'good' && faults.includes(word);

const tally = (castings: readonly Casting[]): TwoByTwo => ({
  bad: castings.filter((one) => !isGood(one)).length,
  of: castings.length,
});
