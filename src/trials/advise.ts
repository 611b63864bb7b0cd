import { type Finding, finding } from '../findings/index.ts';
import { type ChangeKind, changeKinds } from './changes.ts';
import { didNotHelp, sinceCut, type Tried, triedChanges } from './helped.ts';
import type { TrialLog } from './log-schema.ts';
import { type Case, rules, type ToldAir } from './rules.ts';
import { type Casting, type Cavity, castingsOf, worseNear, worseSide } from './yields.ts';

export interface Advice {
  /** What to change next, one of them: the one that most castings are lost by first. */
  readonly tries: Finding[];
  /** What a rule would have said, and a trial has shown not to help. */
  readonly heldBack: Finding[];
}

/**
 * The next single change, ranked by the castings it could save and then by what is cheapest. `air` is what the forecast says
 * of each cavity as it is cut now. Castings before the last change of a cavity's gate or vent do not count for it.
 */
export function advise(
  log: TrialLog,
  cavities: readonly Cavity[],
  air: ReadonlyMap<string, ToldAir>,
): Advice {
  const placed = cavities.map(({ id }) => id);
  const castings = castingsOf(log, placed);
  const tried = triedChanges(log, placed);
  const masters = [...new Set(cavities.map(({ master }) => master))];
  const found = masters.flatMap((master) => {
    const one = caseOf(master, { log, cavities, castings, tried, air });
    return rules.flatMap((rule, order) => {
      const said = rule.applies(one);
      return said ? [{ said, order, rule, one }] : [];
    });
  });
  const held = (change: ChangeKind | undefined, ids: readonly string[]): Tried | undefined =>
    change && didNotHelp(tried, change, ids);
  const side = worseSide(castings, cavities);
  const ranked = found
    .filter(({ rule, one }) => !held(rule.change, one.ids))
    .sort((a, b) => badOf(b.said) - badOf(a.said) || a.order - b.order);
  return {
    tries: [...(side ? [centerIt(side)] : []), ...ranked.map(({ said }) => said)],
    heldBack: found.flatMap(({ rule, one }) => {
      const without = held(rule.change, one.ids);
      return without ? [noHelp(one.master, without)] : [];
    }),
  };
}

const badOf = ({ values }: Finding): number => (typeof values.bad === 'number' ? values.bad : 0);

interface Known {
  readonly log: TrialLog;
  readonly cavities: readonly Cavity[];
  readonly castings: readonly Casting[];
  readonly tried: readonly Tried[];
  readonly air: ReadonlyMap<string, ToldAir>;
}

function caseOf(master: string, { log, cavities, castings, tried, air }: Known): Case {
  const ids = cavities.filter((one) => one.master === master).map(({ id }) => id);
  const last = log.pours.at(-1);
  const worst = ids
    .flatMap((id) => air.get(id) ?? [])
    .reduce<ToldAir | undefined>((most, one) => (!most || one.volume > most.volume ? one : most), undefined);
  return {
    master,
    ids,
    castings: castings.filter(({ id, pour }) => ids.includes(id) && pour >= sinceCut(id, tried)),
    air: worst,
    near: worseNear(castings, cavities, master),
    firstPours: log.pours.slice(0, 2).map(({ pour }) => pour),
    noHelp: new Set(changeKinds.filter((kind) => didNotHelp(tried, kind, ids))),
    metalC: last?.metalC,
    speedRpm: last?.speedRpm,
  };
}

function centerIt(side: NonNullable<ReturnType<typeof worseSide>>): Finding {
  const { angleDeg: angle, bad, of: measured, otherBad, otherOf, chance } = side;
  return finding('try.center', {
    subject: 'mold',
    values: { bad, measured, angle, otherBad, otherOf, chance },
  });
}

const noHelp = (master: string, { change, pour, before, after }: Tried): Finding =>
  finding('trials.no-help', {
    subject: master,
    values: {
      change: change.kind,
      pour,
      before: before.bad,
      beforeOf: before.of,
      after: after.bad,
      afterOf: after.of,
    },
  });
