import { fisherFewer } from './fisher.ts';
import type { Pour, TrialLog } from './log-schema.ts';
import type { Outcome } from './outcome.ts';
import { type Share, wilson } from './wilson.ts';

/** A cavity as the plan has it, mm from the axis. */
export interface Cavity {
  readonly id: string;
  readonly master: string;
  readonly x: number;
  readonly y: number;
}

/** One casting that was looked at. */
export interface Casting {
  readonly pour: number;
  readonly id: string;
  readonly came: readonly Outcome[];
}

/** Every casting of which the log says what it came out as. `others: good` speaks for all that the plan places. */
export const castingsOf = (log: TrialLog, placed: readonly string[]): Casting[] =>
  log.pours.flatMap((pour) => castingsIn(pour, placed));

export function castingsIn({ pour, cavities = {}, others }: Pour, placed: readonly string[]): Casting[] {
  const named = Object.entries(cavities).map(([id, seen]) => ({
    pour,
    id,
    came: [...new Set(seen.map(({ came }) => came))],
  }));
  const rest = others ? placed.filter((id) => !(id in cavities)) : [];
  return [...named, ...rest.map((id): Casting => ({ pour, id, came: [others ?? 'good'] }))];
}

export const isGood = ({ came }: Pick<Casting, 'came'>): boolean => came.every((one) => one === 'good');

/** How many came out good of each lot, by its name, in the order met. */
export function goodBy(
  castings: readonly Casting[],
  name: (one: Casting) => string | undefined,
): Map<string, Share> {
  const lots = new Map<string, { good: number; of: number }>();
  for (const one of castings) {
    const key = name(one);
    if (key === undefined) continue;
    const lot = lots.get(key) ?? { good: 0, of: 0 };
    lots.set(key, { good: lot.good + Number(isGood(one)), of: lot.of + 1 });
  }
  return new Map([...lots].map(([key, { good, of }]) => [key, wilson(good, of)]));
}

/** Directions in which one half of the disc is held against the other. */
const directions = 8;
/** Below this chance a difference is told. Usual in statistics; no more than a convention. */
const rare = 0.05;

export interface Lopsided {
  /** Middle of the worse half, counter-clockwise from +x, deg. */
  readonly angleDeg: number;
  readonly bad: number;
  readonly of: number;
  readonly otherBad: number;
  readonly otherOf: number;
  /** Chance of so much by accident, times the directions looked in. */
  readonly chance: number;
}

/** The side of the disc on which castings are worse, where chance hardly explains it (Bonferroni over the directions). */
export function worseSide(castings: readonly Casting[], cavities: readonly Cavity[]): Lopsided | undefined {
  const place = new Map(cavities.map((one) => [one.id, one]));
  const found = Array.from({ length: directions }, (_, k): Lopsided => {
    const angle = (2 * Math.PI * k) / directions;
    const lots = halves(castings, ({ id }) => {
      const one = place.get(id);
      return one && one.x * Math.cos(angle) + one.y * Math.sin(angle);
    });
    return { angleDeg: (360 * k) / directions, ...lots };
  }).sort((a, b) => a.chance - b.chance || a.angleDeg - b.angleDeg)[0];
  const chance = Math.min(1, found.chance * directions);
  return chance < rare ? { ...found, chance } : undefined;
}

/** Castings whose value is over 0 against the others; those without one are left out. */
function halves(
  castings: readonly Casting[],
  value: (one: Casting) => number | undefined,
): Omit<Lopsided, 'angleDeg'> {
  const lots = [
    { bad: 0, of: 0 },
    { bad: 0, of: 0 },
  ];
  for (const one of castings) {
    const side = value(one);
    // Those on the border would count for neither.
    if (side === undefined || Math.abs(side) < 1e-6) continue;
    const lot = lots[side > 0 ? 0 : 1];
    lot.of++;
    if (!isGood(one)) lot.bad++;
  }
  const [worse, other] = lots;
  return { ...worse, otherBad: other.bad, otherOf: other.of, chance: fisherFewer(worse, other) };
}

/** The same of one master's places near the axis against those far from it. */
export function worseNear(
  castings: readonly Casting[],
  cavities: readonly Cavity[],
  master: string,
): Omit<Lopsided, 'angleDeg'> | undefined {
  const mine = cavities.filter((one) => one.master === master);
  const radii = mine.map(({ x, y }) => Math.hypot(x, y)).sort((a, b) => a - b);
  const middle = (radii[0] + radii[radii.length - 1]) / 2;
  // One ring has no near and far.
  if (!(radii[radii.length - 1] - radii[0] > 1)) return undefined;
  const radius = new Map(mine.map(({ id, x, y }) => [id, Math.hypot(x, y)]));
  const found = halves(castings, ({ id }) => {
    const own = radius.get(id);
    return own === undefined ? undefined : middle - own;
  });
  return found.chance < rare ? found : undefined;
}
