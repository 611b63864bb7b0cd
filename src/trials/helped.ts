import { type Change, type ChangeKind, changesByPour } from './changes.ts';
import { fisherFewer, type TwoByTwo } from './fisher.ts';
import type { TrialLog } from './log-schema.ts';
import { type Casting, castingsIn, isGood } from './yields.ts';

/** What a change was followed by, over the cavities it is about. */
export interface Tried {
  readonly pour: number;
  readonly change: Change;
  /** Whether it was the only change of that pour that is about these cavities. */
  readonly alone: boolean;
  readonly before: TwoByTwo;
  readonly after: TwoByTwo;
  /** Chance of so much better by accident (Fisher, one-sided). */
  readonly chance: number;
}

/**
 * Every change of the log, with the castings of the pours since the last change that is about the same cavities on one
 * side, and those until the next on the other.
 */
export function triedChanges(log: TrialLog, placed: readonly string[]): Tried[] {
  const changes = changesByPour(log);
  const castings = log.pours.map((pour) => castingsIn(pour, placed));
  const about = (change: Change, id: string): boolean => !change.of || change.of.includes(id);
  const meets = (a: Change, b: Change): boolean => !a.of || !b.of || a.of.some((id) => b.of?.includes(id));
  return changes.flatMap((list, i) =>
    list.map((change): Tried => {
      const others = list.filter((one) => one !== change && meets(one, change));
      let first = i - 1;
      while (first > 0 && !changes[first].some((one) => meets(one, change))) first--;
      let end = i + 1;
      while (end < changes.length && !changes[end].some((one) => meets(one, change))) end++;
      const count = (from: number, to: number): TwoByTwo =>
        tally(
          castings
            .slice(from, to)
            .flat()
            .filter(({ id }) => about(change, id)),
        );
      const [before, after] = [count(first, i), count(i, end)];
      return {
        pour: log.pours[i].pour,
        change,
        alone: others.length === 0,
        before,
        after,
        chance: fisherFewer(before, after),
      };
    }),
  );
}

const tally = (castings: readonly Casting[]): TwoByTwo => ({
  bad: castings.filter((one) => !isGood(one)).length,
  of: castings.length,
});

/** Tried alone on some of these cavities, with castings on both sides, and no smaller share was bad afterwards. */
export const didNotHelp = (
  tried: readonly Tried[],
  kind: ChangeKind,
  ids: readonly string[],
): Tried | undefined =>
  tried.find(
    ({ change, alone, before, after }) =>
      change.kind === kind &&
      alone &&
      before.bad > 0 &&
      after.of > 0 &&
      after.bad / after.of >= before.bad / before.of &&
      (!change.of || change.of.some((id) => ids.includes(id))),
  );

/** The last pour at which a gate or vent of a cavity was other than before; 0 where none was. */
export const sinceCut = (id: string, tried: readonly Tried[]): number =>
  Math.max(0, ...tried.filter(({ change }) => change.of?.includes(id)).map(({ pour }) => pour));
