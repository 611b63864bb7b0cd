import { checks } from '../checks/index.ts';
import type { Figure, Finding } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import type { Mold, Placement } from '../mold/index.ts';
import { applySeverity } from './apply-severity.ts';
import { Cache } from './cache.ts';
import { memoizeIn } from './memoize-in.ts';
import { drain, stepTasks } from './run-task.ts';

const nearChecks = checks.filter(({ follows }) => follows);

/** What hangs on the parting surface, which is not found anew while something is moved. */
const ofSurface = new Set<Figure['name']>(['depth.below', 'height.above']);

export interface Near {
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/** Cavities whose circles are farther apart than this many times the wall limit have no wall worth watching. */
const searchFactor = 2;

/**
 * Walls and covers of one thing alone, by the very checks of the report, run for it only: quick enough to follow a
 * hand. `id` is that of a placement, boss, tab or notch. Walls beyond twice their limit are left out, and those to
 * gates and vents: these are laid anew only when all is. `cache` keeps the meshes of fixtures, which stay the same while
 * something else is moved, from one question to the next.
 */
export function checkNear(mold: Mold, id: string, kernel: Kernel, cache = new Cache()): Near {
  const nearBy = aroundOf(mold, id);
  const tasks = nearChecks.map((check) => ({
    ...check,
    units: (of: Mold) => check.units(of).filter(({ about }) => about.includes(id)),
  }));
  const { done } = drain(stepTasks(tasks, nearBy, { kernel, nearOnly: true, memoize: memoizeIn(cache) }));
  return {
    figures: done.flatMap(({ output }) => output.figures ?? []).filter(({ name }) => !ofSurface.has(name)),
    findings: applySeverity(
      done.flatMap(({ output }) => output.findings ?? []),
      mold,
    ),
  };
}

/** The mold with the placements near one alone. */
function aroundOf(mold: Mold, id: string): Mold {
  const { placements, limits } = mold;
  const one = placements.find((placement) => placement.id === id);
  if (!one) return mold;
  const isNear = ({ x, y, reach }: Placement) =>
    Math.hypot(x - one.x, y - one.y) - reach - one.reach <= searchFactor * limits.wall;
  return { ...mold, placements: placements.filter((other) => other === one || isNear(other)) };
}
