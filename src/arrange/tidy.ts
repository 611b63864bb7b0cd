import type { Laid } from './judge.ts';
import { type Found, isLegal, placeOf, settle } from './search.ts';
import type { Goal, Strain } from './strain.ts';

const degree = Math.PI / 180;
const wrapped = (rad: number): number => rad - 2 * Math.PI * Math.round(rad / (2 * Math.PI));
const toStep = (value: number, step: number): number => Math.round(value / step) * step;

/** Turns that look meant, the plainest first: a person sees a quarter turn before an eighth. */
const turnSteps = [90, 45, 15, 5].map((degrees) => degrees * degree);

/**
 * Like pieces on one radius, evenly spaced, plainly turned and with upright gates, as far as all limits stay kept. What
 * is once tidy stays so while the rest is tried.
 */
export function tidied(strain: Strain, from: Found): Found {
  let found = from;
  const attempt = (goals: ReadonlyMap<number, Goal>): boolean => {
    const before = strain.goals.slice();
    for (const [i, goal] of goals) strain.goals[i] = { ...strain.goals[i], ...goal };
    strain.mouths.set(found.mouths);
    const next = settle(strain, found.x);
    if (isLegal(next)) {
      found = next;
      return true;
    }
    for (const [i, goal] of before.entries()) strain.goals[i] = goal;
    return false;
  };
  for (const like of alike(strain)) {
    const radius = toStep(mean(like.map((i) => placeOf(found.x, i, strain).radius)), 0.5);
    if (like.length > 1) attempt(new Map(like.map((i) => [i, { radius }])));
    turn(strain, like, () => found, attempt);
    if (like.length > 1) space(strain, like, found, attempt);
    attempt(new Map(like.map((i) => [i, { leanRad: 0 }])));
  }
  for (let i = 0; i < strain.goals.length; i++) strain.goals[i] = {};
  return found;
}

type Attempt = (goals: ReadonlyMap<number, Goal>) => boolean;

/** All of a kind turned alike, or else each by itself. */
function turn(strain: Strain, like: readonly number[], found: () => Found, attempt: Attempt): void {
  const nearest = (i: number, step: number): number =>
    toStep(wrapped(placeOf(found().x, i, strain).turn), step);
  for (const step of turnSteps) {
    const [first] = like;
    const turnRad = nearest(first, step);
    if (attempt(new Map(like.map((i) => [i, { turnRad }])))) return;
  }
  for (const i of like)
    for (const step of turnSteps) if (attempt(new Map([[i, { turnRad: nearest(i, step) }]]))) break;
}

/** Like orbits evenly spaced, so that they make one ring. */
function space(strain: Strain, like: readonly number[], { x }: Found, attempt: Attempt): void {
  const { copies } = strain.orbits[like[0]];
  const sector = (2 * Math.PI) / copies;
  const step = sector / like.length;
  const within = (i: number): number => {
    const { angle } = placeOf(x, i, strain);
    return angle - sector * Math.floor(angle / sector);
  };
  const order = [...like].sort((a, b) => within(a) - within(b));
  const start = mean(order.map((i, k) => within(i) - k * step));
  attempt(
    new Map(
      order.map((i, k) => {
        // Whole sectors away it is the same ring of copies.
        const shift = placeOf(x, i, strain).angle - within(i);
        return [i, { angleRad: start + k * step + shift }];
      }),
    ),
  );
}

/** Orbits of one kind and as many copies. */
function alike({ orbits }: Strain): number[][] {
  const groups = new Map<string, number[]>();
  for (const [i, { kind, copies }] of orbits.entries()) {
    const key = `${kind.id} ${copies}`;
    groups.set(key, [...(groups.get(key) ?? []), i]);
  }
  return [...groups.values()];
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** As it is written: places to 0.1 mm, angles to 0.1 degree. */
export function rounded(strain: Strain, { x, mouths }: Found): Laid[] {
  return strain.orbits.map(({ kind, copies }, i): Laid => {
    const { radius, angle, turn: turnRad, lean } = placeOf(x, i, strain);
    return {
      kind,
      copies,
      radius: toStep(radius, 0.1),
      angleRad: tenth(angle),
      turnRad: tenth(wrapped(turnRad)),
      leanRad: tenth(lean),
      mouth: mouths[i],
    };
  });
}

const tenth = (rad: number): number => (Math.round(rad / degree / 0.1) / 10) * degree;
