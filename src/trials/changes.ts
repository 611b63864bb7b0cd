import type { Cut, Pour, TrialLog } from './log-schema.ts';

/** What can be changed between two pours. */
export const changeKinds = [
  'gate opened',
  'gate narrowed',
  'gate moved',
  'gate more',
  'gate closed',
  'vent more',
  'vent changed',
  'vent closed',
  'faster',
  'slower',
  'metal hotter',
  'metal cooler',
  'mold warmer',
  'mold cooler',
  'shot more',
  'shot less',
] as const;
export type ChangeKind = (typeof changeKinds)[number];

/** One thing that is other than at the pour before. */
export interface Change {
  readonly kind: ChangeKind;
  /** The cavities it is about; all of them where it is left out. */
  readonly of?: readonly string[];
  readonly from?: number;
  readonly to?: number;
}

/** Less than this is no change but how readings scatter: C, and shares of speed and shot. Our own choice. */
const scatter = { temperature: 5, share: 0.02 };

/** Gates and vents at each pour: as last written in the log, since only what is other is written; before that, not known. */
export function cutsByPour({ pours }: TrialLog): (readonly Cut[] | undefined)[] {
  let last: readonly Cut[] | undefined;
  return pours.map(({ cut }) => {
    last = cut ?? last;
    return last;
  });
}

/** What is other at each pour than at the one before; nothing at the first. */
export function changesByPour(log: TrialLog): Change[][] {
  const cuts = cutsByPour(log);
  return log.pours.map((pour, i) =>
    i === 0
      ? []
      : [
          ...ofSettings(log.pours[i - 1], pour),
          ...ofCuts(cuts[i - 1] ?? [], cuts[i - 1] ? (cuts[i] ?? []) : []),
        ],
  );
}

function ofSettings(before: Pour, after: Pour): Change[] {
  const { temperature, share } = scatter;
  const kinds = [
    ['speedRpm', 'faster', 'slower', (mean: number) => share * mean],
    ['metalC', 'metal hotter', 'metal cooler', () => temperature],
    ['moldC', 'mold warmer', 'mold cooler', () => temperature],
    ['shotKg', 'shot more', 'shot less', (mean: number) => share * mean],
  ] as const;
  return kinds.flatMap(([field, more, less, least]): Change[] => {
    const [from, to] = [before[field], after[field]];
    if (from === undefined || to === undefined || Math.abs(to - from) <= least((from + to) / 2)) return [];
    return [{ kind: to > from ? more : less, from, to }];
  });
}

/** By placement and kind: what is cut is compared as a whole, so that two entries may change places. */
function ofCuts(before: readonly Cut[], after: readonly Cut[]): Change[] {
  const ids = [...new Set([...before, ...after].flatMap(({ of }) => of))];
  const single = ids.flatMap((id) =>
    (['gate', 'vent'] as const).flatMap((kind) => {
      const change = ofOne(kind, cutsOf(before, kind, id), cutsOf(after, kind, id));
      return change ? [{ ...change, id }] : [];
    }),
  );
  const alike = new Map<string, Change & { of: string[] }>();
  for (const { id, ...change } of single) {
    const key = JSON.stringify(change);
    const known = alike.get(key);
    if (known) known.of.push(id);
    else alike.set(key, { ...change, of: [id] });
  }
  return [...alike.values()];
}

const cutsOf = (cuts: readonly Cut[], kind: Cut['kind'], id: string): Cut[] =>
  cuts.filter((cut) => cut.kind === kind && cut.of.includes(id));

function ofOne(kind: Cut['kind'], before: readonly Cut[], after: readonly Cut[]): Change | undefined {
  if (after.length > before.length) return { kind: `${kind} more` };
  if (after.length < before.length) return { kind: `${kind} closed` };
  const text = (cuts: readonly Cut[]): string =>
    cuts
      .map(({ at, way, width, depth }) => JSON.stringify({ at, way, width, depth }))
      .sort()
      .join();
  if (text(before) === text(after)) return undefined;
  if (kind === 'vent') return { kind: 'vent changed' };
  const [from, to] = [sectionOf(before), sectionOf(after)];
  if (from !== undefined && to !== undefined && from !== to)
    return { kind: to > from ? 'gate opened' : 'gate narrowed', from, to };
  return { kind: 'gate moved' };
}

/** Width times depth of all together, mm2: only compared; undefined where the plan leaves one open. */
function sectionOf(cuts: readonly Cut[]): number | undefined {
  let sum = 0;
  for (const { width, depth } of cuts) {
    if (width === undefined || depth === undefined) return undefined;
    sum += width * depth;
  }
  return sum;
}

/** Cavities whose gates or vents the plan now has other than they were at the last pour that says how they were. */
export function cutSince(log: TrialLog, now: readonly Cut[]): Set<string> {
  const last = cutsByPour(log).at(-1);
  return new Set(last ? ofCuts(last, now).flatMap(({ of }) => of ?? []) : []);
}
