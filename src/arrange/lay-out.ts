import { type Finding, finding } from '../findings/index.ts';
import type { Mold } from '../mold/index.ts';
import { channelDefaults, type NewPlacement, type Plan } from '../plan/index.ts';
import { stockDiscs } from '../tables/index.ts';
import { type Arranged, arrange, holdsAll, type Wanted } from './arrange.ts';
import { alike, inTheWay } from './in-the-way.ts';
import type { Laid } from './judge.ts';
import { channelFor, problemOf } from './of-plan.ts';
import type { Problem } from './problem.ts';
import type { Effort, OnMove } from './search.ts';

/** How long is looked, in moves. */
export const efforts: Readonly<Record<'little' | 'usual' | 'much', Effort>> = {
  little: { starts: 6, movesEach: 4, moves: 40 },
  usual: { starts: 16, movesEach: 8, moves: 240 },
  much: { starts: 40, movesEach: 10, moves: 1200 },
};

/** What became of the plan's wish. */
export interface LaidOut {
  /** Left out where something was in the way before any search. */
  readonly arranged?: Arranged;
  readonly placements: readonly NewPlacement[];
  readonly findings: readonly Finding[];
  readonly problem: Problem;
}

export interface LayOutOptions {
  readonly onMove?: OnMove;
  /** Whether to look for a larger disc where a master is larger than this one's room: unless said, yes. */
  readonly forLarge?: boolean;
}

/** Arranges what the plan wishes for on its mold; undefined where it wishes for nothing. */
export function layOut(
  plan: Plan,
  mold: Mold,
  { onMove = () => {}, forLarge = true }: LayOutOptions = {},
): LaidOut | undefined {
  const wish = plan.arrange;
  if (!wish) return undefined;
  const problem = problemOf(plan, mold, wish);
  const { effort = 'usual', seed = 1, symmetry } = wish;
  const wanted = {
    effort: efforts[effort],
    seed,
    ...(typeof symmetry === 'number' && { fold: symmetry }),
  };
  const stops = inTheWay(problem);
  if (stops.length > 0) {
    const isLarge = stops.some(({ code }) => code === 'arrange.too-large');
    const larger = isLarge && !forLarge ? [] : largerDisc(problem, wanted, onMove);
    return { problem, placements: [], findings: [...stops, ...larger] };
  }
  const arranged = arrange(problem, wanted, onMove);
  const left = arranged.left.map(({ kind, count }) =>
    finding('arrange.left', { subject: kind.id, values: { laid: kind.count - count, left: count } }),
  );
  const more = left.length > 0 ? largerDisc(problem, wanted, onMove) : [];
  const findings = [...left, ...more, ...alike(problem.kinds)];
  return { arranged, problem, findings, placements: arranged.laid.map((one) => asPlacement(plan, one)) };
}

/** How often the span between a disc that does not do and one that does is halved. */
const halvings = 3;
/** One disc is looked at no longer than this: several are. */
const passing: Effort = { starts: 4, movesEach: 3, moves: 12 };

/**
 * The smallest larger stock disc on which all were found to find room, and the least diameter that was tried with that
 * end; bosses and the like stay where they are, at their distance from the axis.
 */
function largerDisc(problem: Problem, wanted: Wanted, onMove: OnMove): Finding[] {
  const { ground } = problem;
  const kinds = problem.kinds.map((kind) => ({ ...kind, more: 0 }));
  const holds = (diameter: number): boolean => {
    const larger = { ...problem, kinds, ground: { ...ground, radius: diameter / 2, ample: ground.wall } };
    if (inTheWay(larger).length > 0) return false;
    return holdsAll(larger, { ...wanted, effort: passing }, onMove);
  };
  const found = stockDiscs.find(({ diameter }) => diameter > 2 * ground.radius && holds(diameter));
  if (!found) return [];
  let [low, least] = [2 * ground.radius, found.diameter];
  for (let k = 0; k < halvings; k++) {
    const next = Math.ceil((low + least) / 2);
    if (next >= least) break;
    if (holds(next)) least = next;
    else low = next;
  }
  const values = { diameter: found.diameter, least };
  return [finding('arrange.larger-disc', { subject: 'disc', values })];
}

function asPlacement(
  plan: Plan,
  { kind, copies, radius, angleRad, turnRad, leanRad, mouth }: Laid,
): NewPlacement {
  const entry = kind.gate?.mouths[mouth].entry;
  const like = channelFor(plan, kind.id, 'gates');
  const {
    width = kind.gate?.width,
    depth = channelDefaults.gate.depth,
    endWidth,
    endDepth,
    section,
    half,
  } = like ?? {};
  const turning = plan.machine?.direction === 'clockwise' ? -1 : 1;
  const sink = plan.arrange?.pieces[kind.id]?.sink;
  return {
    ...{ master: kind.id, copies, radius, angleRad, turnRad, sink },
    ...(entry && {
      gate: {
        ...{ width, depth, endWidth, endDepth, section, half },
        entry: { x: entry[0] / kind.scale, y: entry[1] / kind.scale },
        ...(leanRad !== 0 && { path: { slantRad: leanRad * turning } }),
      },
    }),
    why: 'arranged',
  };
}
