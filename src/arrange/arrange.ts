import { judge, type Laid } from './judge.ts';
import { type Kind, type Orbit, orbitsOf, type Problem } from './problem.ts';
import { randomFrom } from './random.ts';
import {
  again,
  bestPlace,
  type Effort,
  type Found,
  improve,
  isLegal,
  type OnMove,
  search,
} from './search.ts';
import { Strain, unknowns } from './strain.ts';
import { rounded, tidied } from './tidy.ts';

export interface Wanted {
  /** So many like parts of the disc; left out, as the counts allow. */
  readonly fold?: number | undefined;
  readonly effort: Effort;
  readonly seed: number;
}

export interface Arranged {
  readonly laid: readonly Laid[];
  /** How many of each kind that had to lie found no place. */
  readonly left: readonly { readonly kind: Kind; readonly count: number }[];
  /** Least wall between two pieces, mm, by their outlines. */
  readonly wall: number;
  readonly moves: number;
}

/** Limits are looked for wider by this, mm, so that rounding and what outlines are simplified by leave them kept. */
const slacks = [0.12, 0.2, 0.3] as const;

/** An arrangement on the way: what lies, how it lies and by what limits. */
interface State {
  readonly strain: Strain;
  readonly found: Found;
}

/** Legal first, then the most of worth, then walls up to ample, then one order and one radius for what is alike. */
export function arrange(
  problem: Problem,
  { fold, effort, seed }: Wanted,
  onMove: OnMove = () => {},
): Arranged {
  const random = randomFrom(seed);
  let moves = 0;
  const count: OnMove = () => {
    moves++;
    onMove();
  };
  const folds = fold === undefined ? foldsFor(problem.kinds) : [fold];
  let state = firstLegal(problem, folds, effort, random, count);
  const most = Math.max(1, ...state.strain.orbits.map(({ copies }) => copies));
  const orders = fold === undefined && state.strain.orbits.length === 0 ? openFolds : [fold ?? most, 1];
  state = withMore(problem, state, orders, random, count);
  widen(state.strain, state.found, effort, random, count, (found) => {
    state = { ...state, found };
  });
  const { laid, wall } = kept(problem, written(state, problem));
  return { laid, left: leftOf(problem.kinds, laid), wall, moves };
}

/** Whether a place was found for all that must lie, as it would be written. */
export function holdsAll(
  problem: Problem,
  { fold, effort, seed }: Wanted,
  onMove: OnMove = () => {},
): boolean {
  const random = randomFrom(seed);
  return (fold === undefined ? foldsFor(problem.kinds) : [fold]).some((copies) => {
    const orbits = problem.kinds.flatMap((kind) => orbitsOf(kind, kind.count, copies));
    const strain = new Strain(problem, orbits, slacks[0]);
    const found = search(strain, random, effort, onMove);
    return isLegal(found) && written({ strain, found }, problem).broken.length === 0;
  });
}

/** Orders that leave few single pieces over, the highest first; at last none. */
function foldsFor(kinds: readonly Kind[]): number[] {
  const all = kinds.reduce((sum, { count }) => sum + count, 0);
  const rest = (n: number): number => kinds.reduce((sum, { count }) => sum + (count % n), 0);
  const good = [6, 5, 4, 3, 2].filter((n) => rest(n) <= 0.1 * all);
  return [...good.slice(0, 2), 1];
}

/** By the first order by which all that must lie does; else what is in the way goes, the least of worth first. */
function firstLegal(
  problem: Problem,
  folds: readonly number[],
  effort: Effort,
  random: () => number,
  onMove: OnMove,
): State {
  let best: State | undefined;
  for (const fold of folds) {
    const orbits = problem.kinds.flatMap((kind) => orbitsOf(kind, kind.count, fold));
    const strain = new Strain(problem, orbits, slacks[0]);
    if (orbits.length === 0) return { strain, found: none };
    const found = search(strain, random, effort, onMove);
    if (isLegal(found)) return { strain, found };
    best = { strain, found };
  }
  if (!best) throw new Error('arrange: no order to arrange by');
  let state = best;
  while (!isLegal(state.found) && state.strain.orbits.length > 1) {
    const fewer = without(problem, state);
    const found = again(fewer.strain, fewer.found);
    state = {
      strain: fewer.strain,
      found: isLegal(found) ? found : improve(fewer.strain, [found], random, effort.moves / 8, onMove),
    };
  }
  return isLegal(state.found) ? state : { strain: new Strain(problem, [], slacks[0]), found: none };
}

const none: Found = { x: new Float64Array(0), mouths: new Int32Array(0), value: 0 };

/** Without the orbit that breaks most for what it is worth. */
function without(problem: Problem, { strain, found }: State): State {
  strain.mouths.set(found.mouths);
  strain.at(found.x, new Float64Array(found.x.length));
  const cost = (i: number): number =>
    strain.blame[i] / (strain.orbits[i].kind.worth * strain.orbits[i].copies);
  const worst = [...strain.orbits.keys()].reduce((a, b) => (cost(b) > cost(a) ? b : a));
  const kept = [...strain.orbits.keys()].filter((i) => i !== worst);
  return stateOf(
    problem,
    kept.map((i) => strain.orbits[i]),
    kept.flatMap((i) => [...found.x.subarray(i * unknowns, (i + 1) * unknowns)]),
    kept.map((i) => found.mouths[i]),
  );
}

function stateOf(
  problem: Problem,
  orbits: readonly Orbit[],
  x: readonly number[],
  mouths: readonly number[],
): State {
  const strain = new Strain(problem, orbits, slacks[0]);
  strain.mouths.set(mouths);
  return {
    strain,
    found: { x: Float64Array.from(x), mouths: Int32Array.from(mouths), value: Number.POSITIVE_INFINITY },
  };
}

/** Moves spent on finding room for more of one kind. */
const movesForMore = 6;

/** Orders by which pieces are laid where none has to lie. */
const openFolds = [3, 2, 1] as const;

/**
 * As many more as find room: the most worth first, those of one worth by turns, the large before the small; whole
 * orbits before single ones.
 */
function withMore(
  problem: Problem,
  from: State,
  orders: readonly number[],
  random: () => number,
  onMove: OnMove,
): State {
  let state = from;
  const worths = [...new Set(problem.kinds.map(({ worth }) => worth))].sort((a, b) => b - a);
  for (const copies of new Set(orders))
    for (const worth of worths) {
      let turns = problem.kinds
        .filter((kind) => kind.worth === worth)
        .sort((a, b) => b.shape.area - a.shape.area);
      while (turns.length > 0)
        turns = turns.filter((kind) => {
          const more = withOne(problem, state, { kind, copies }, random, onMove);
          if (more) state = more;
          return more !== undefined;
        });
    }
  return state;
}

/** With one orbit more, where it is wanted and finds room. */
function withOne(
  problem: Problem,
  { strain, found }: State,
  orbit: Orbit,
  random: () => number,
  onMove: OnMove,
): State | undefined {
  const { kind, copies } = orbit;
  const lies = strain.orbits.reduce((sum, one) => sum + (one.kind === kind ? one.copies : 0), 0);
  if (lies + copies > kind.count + kind.more) return undefined;
  const more = stateOf(problem, [...strain.orbits, orbit], [...found.x, 0, 0, 0, 0], [...found.mouths, 0]);
  bestPlace(more.strain, more.found.x, more.strain.orbits.length - 1, random);
  const first = again(more.strain, { ...more.found, mouths: more.strain.mouths.slice() });
  const best = isLegal(first) ? first : improve(more.strain, [first], random, movesForMore, onMove);
  return isLegal(best) ? { strain: more.strain, found: best } : undefined;
}

/** Walls as wide as are of use and find room: by halves between what is legal and what is not. */
function widen(
  strain: Strain,
  from: Found,
  effort: Effort,
  random: () => number,
  onMove: OnMove,
  keep: (found: Found) => void,
): void {
  const { wall, ample } = strain.problem.ground;
  let [low, high, best] = [wall, Number.isFinite(ample) ? ample : 4 * wall, from];
  // Walls as wide as they go are worth a longer look.
  const moves = Number.isFinite(ample) ? effort.movesEach : effort.moves / 8;
  let next = high;
  for (let k = 0; k < 6 && strain.orbits.length > 0 && high - low > 0.02; k++) {
    onMove();
    strain.wall = next;
    const first = again(strain, best);
    const found = isLegal(first) ? first : improve(strain, [first], random, moves, onMove);
    if (isLegal(found)) {
      [low, best] = [next, found];
      keep(found);
    } else high = next;
    next = (low + high) / 2;
  }
  strain.wall = low;
}

/** Tidied, rounded and judged; with limits held a little wider where rounding broke one. */
function written({ strain, found }: State, problem: Problem) {
  let [result, from] = [judged(strain, found, problem), found];
  for (const slack of slacks) {
    strain.slack = slack;
    from = again(strain, from);
    if (!isLegal(from)) break;
    const tidy = judged(strain, tidied(strain, from), problem);
    if (tidy.broken.length === 0) return tidy;
    const plain = judged(strain, from, problem);
    if (plain.broken.length < result.broken.length) result = plain;
    if (plain.broken.length === 0) return plain;
  }
  return result;
}

/** Without what breaks a limit as it is written. */
function kept(problem: Problem, result: ReturnType<typeof judged>): ReturnType<typeof judged> {
  let { laid, broken, wall } = result;
  while (broken.length > 0) {
    const [{ orbit }] = broken;
    laid = laid.filter((_, i) => i !== orbit);
    ({ broken, wall } = judge(problem, laid));
  }
  return { laid, broken, wall };
}

function judged(strain: Strain, found: Found, problem: Problem) {
  const laid = rounded(strain, found);
  return { laid, ...judge(problem, laid) };
}

const leftOf = (kinds: readonly Kind[], laid: readonly Laid[]) =>
  kinds.flatMap((kind) => {
    const lies = laid.reduce((sum, one) => sum + (one.kind === kind ? one.copies : 0), 0);
    return lies < kind.count ? [{ kind, count: kind.count - lies }] : [];
  });
