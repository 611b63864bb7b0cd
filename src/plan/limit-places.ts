import type { CodeValues } from '../findings/index.ts';
import { expandPlacements, placementsNamed, wherePlaces } from './expand-placements.ts';
import type { Plan } from './plan.ts';
import type { PlanPath } from './plan-tree.ts';

/** Far more than a disc has room for. What is found for each pair of them, all in one another, then ends within seconds. */
const mostPlaced = 300;
/** Which turned closings a pattern has takes about the fourth power of their number; a disc has two to twelve. */
const mostBosses = 24;

type Excess = { readonly values: CodeValues<'plan.too-many'>; readonly path: PlanPath };

/** What a plan has more of than one disc may; each with its section. */
export function tooMany(plan: Plan): Excess[] {
  const placed = expandPlacements(plan);
  const bosses = bossCount(plan);
  const over: Excess[] = [
    ...excess('masters', placed.length, mostPlaced, ['placements']),
    ...excess('bosses', bosses, mostBosses, ['registration', 'bosses']),
  ];
  if (over.length > 0) return over;
  const lists = { gates: plan.gates, vents: plan.vents, supports: plan.supports } as const;
  return Object.entries(lists).flatMap(([section, list]) => {
    if (!list || typeof list === 'string') return [];
    const names = list.flatMap(({ placements }) => placements);
    const count = names.reduce((sum, name) => sum + placementsNamed(placed, name).length, 0);
    const what = section === 'supports' ? 'build-ups' : section === 'gates' ? 'gates' : 'vents';
    return excess(what, count, mostPlaced, [section]);
  });
}

const bossCount = (plan: Plan): number =>
  (plan.registration?.bosses ?? []).reduce(
    (sum, { where, leastDisc = 0 }) =>
      plan.disc.diameter < leastDisc ? sum : sum + wherePlaces(where, plan).length,
    0,
  );

const excess = (what: Excess['values']['what'], measured: number, limit: number, path: PlanPath): Excess[] =>
  measured > limit ? [{ values: { what, measured, limit }, path }] : [];
