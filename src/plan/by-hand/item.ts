import { placementDefaults } from '../defaults.ts';
import { expandPlacements, wherePlaces } from '../expand-placements.ts';
import type { Plan } from '../plan.ts';
import type { PlanPath } from '../plan-tree.ts';
import type { RadiusSpec } from '../sections/placements.ts';

/** A thing on the disc that is moved by hand, by the id it has in the mold. */
export interface ItemName {
  readonly kind: 'placement' | 'boss' | 'tab' | 'notch';
  readonly id: string;
}

/** One place of an entry in the plan. */
export interface Place {
  readonly radius: RadiusSpec;
  readonly angleRad: number;
  readonly turnRad?: number | undefined;
}

/** Where a thing stands in the plan. */
export interface Item {
  readonly kind: ItemName['kind'];
  /** The list it is in, and its entry there. */
  readonly list: PlanPath;
  readonly entry: number;
  /** How the entry says where: once, round a ring, from a list; a tab or notch just has an angle. */
  readonly by: 'at' | 'ring' | 'each' | 'angle';
  /** Which of the entry's places it is, from 0, and all of them. */
  readonly place: number;
  readonly places: readonly Place[];
  /** Angle a ring's `start` gives, which its `offset` is added to. */
  readonly startRad?: number;
}

/** Looks an item up; undefined where the plan has none of that name. */
export function findItem(plan: Plan, { kind, id }: ItemName): Item | undefined {
  switch (kind) {
    case 'placement':
      return placementItem(plan, id);
    case 'boss':
      return bossItem(plan, id);
    case 'tab':
      return rimItem(plan, kind, id, 'tabs');
    case 'notch':
      return rimItem(plan, kind, id, 'notches');
  }
}

function placementItem(plan: Plan, id: string): Item | undefined {
  const flat = expandPlacements(plan);
  const found = flat.find((one) => one.id === id);
  const spec = found && plan.placements?.[found.entry];
  if (!found || !spec) return undefined;
  const { where } = spec;
  const list: PlanPath = ['placements'];
  const common = { kind: 'placement', list, entry: found.entry, place: found.place } as const;
  if ('each' in where) return { ...common, by: 'each', places: where.each };
  return { ...common, ...onceOrRing(where, plan) };
}

type Where = Parameters<typeof wherePlaces>[0];

const onceOrRing = (where: Where, plan: Plan) => ({
  by: 'ring' in where ? ('ring' as const) : ('at' as const),
  places: wherePlaces(where, plan),
  ...('ring' in where && { startRad: where.ring.startRad ?? placementDefaults.startRad }),
});

/** Numbered as the mold numbers them: bosses without a name through all of the plan. */
function bossItem(plan: Plan, id: string): Item | undefined {
  let number = 0;
  for (const [entry, { id: name, where, leastDisc = 0 }] of (plan.registration?.bosses ?? []).entries()) {
    const alone = 'position' in where;
    const said = onceOrRing(where, plan);
    const there = plan.disc.diameter < leastDisc ? [] : said.places;
    for (const place of there.keys()) {
      number++;
      const own = name === undefined ? `boss-${number}` : alone ? name : `${name}-${place + 1}`;
      if (own !== id) continue;
      const list: PlanPath = ['registration', 'bosses'];
      return { kind: 'boss', list, entry, place, ...said };
    }
  }
  return undefined;
}

function rimItem(plan: Plan, kind: 'tab' | 'notch', id: string, list: 'tabs' | 'notches'): Item | undefined {
  const entry = (plan[list] ?? []).findIndex((spec, i) => (spec.id ?? `${kind}-${i + 1}`) === id);
  return entry < 0 ? undefined : { kind, list: [list], entry, by: 'angle', place: 0, places: [] };
}
