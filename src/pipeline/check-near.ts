import {
  coverOfCavities,
  coverOfFixtures,
  wallsBetweenCavities,
  wallsToBolts,
  wallsToBosses,
  wallsToChannels,
  wallsToRim,
  wallsToTabs,
  wallsToWell,
} from '../checks/index.ts';
import type { Figure, Finding } from '../findings/index.ts';
import type { Kernel } from '../kernel/index.ts';
import type { Mold } from '../mold/index.ts';
import type { Cache } from './cache.ts';
import { stepWorks, toTheEnd } from './run-work.ts';
import { weigh } from './weigh.ts';

const nearChecks = [
  coverOfCavities,
  coverOfFixtures,
  wallsBetweenCavities,
  wallsToBosses,
  wallsToWell,
  wallsToChannels,
  wallsToTabs,
  wallsToBolts,
  wallsToRim,
];

/** What hangs on the parting surface, which is not found anew while something is moved. */
const ofSurface = new Set<Figure['name']>(['depth.below', 'height.above']);

export interface Near {
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/**
 * Walls and covers of one thing alone, by the very checks of the report, run for it only: quick enough to follow a
 * hand. `id` is that of a placement, boss, tab or notch.
 */
export function checkNear(mold: Mold, id: string, kernel: Kernel, cache?: Cache): Near {
  // Of a pair the one that stands first in the mold is the subject: so the one asked about comes first.
  const first = mold.placements.filter((one) => one.id === id);
  const turned = { ...mold, placements: [...first, ...mold.placements.filter((one) => one.id !== id)] };
  const works = nearChecks.map((check) => ({
    ...check,
    jobs: (of: Mold) => check.jobs(of).filter(({ subject, input }) => subject === id || isAbout(input, id)),
  }));
  const { done } = toTheEnd(stepWorks(works, turned, { kernel }, cache ? { cache } : {}));
  return {
    figures: done.flatMap(({ output }) => output.figures ?? []).filter(({ name }) => !ofSurface.has(name)),
    findings: weigh(
      done.flatMap(({ output }) => output.findings ?? []),
      mold,
    ),
  };
}

const isAbout = (input: unknown, id: string): boolean =>
  typeof input === 'object' && input !== null && 'id' in input && input.id === id;
