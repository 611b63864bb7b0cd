import type { ChannelLists, Mold, Placement } from '../../mold/index.ts';
import { expandPlacements, type Plan, type PlanChannel, placementsNamed } from '../../plan/index.ts';

/** A gate or vent of the plan; its placements are single ones. */
export type Listed = PlanChannel;
export interface Lists {
  readonly gates: readonly Listed[];
  readonly vents: readonly Listed[];
}

/** As the plan lists them. Both kinds share all fields that are set here. */
export const asPlanLists = ({ gates, vents }: Lists): ChannelLists => ({ gates, vents }) as ChannelLists;

/**
 * Whether somebody chose where or how it runs. Otherwise it only says that there is one, and may give way to what is
 * proposed.
 */
const isChosen = (one: Listed): boolean =>
  one.entry !== undefined ||
  one.path !== undefined ||
  ('from' in one && one.from !== undefined) ||
  ('to' in one && one.to !== undefined) ||
  ('land' in one && one.land !== undefined) ||
  ('joins' in one && one.joins !== undefined);

/** The plan's lists with each placement named by itself. */
export function listsOf(plan: Plan): Lists {
  const flat = expandPlacements(plan);
  const all = (section: Plan['gates'] | Plan['vents']): Listed[] =>
    section === 'straight'
      ? flat.map(({ id, at }) => ({ placements: [id], at }))
      : (section ?? []).map((one: PlanChannel) => ({
          ...one,
          placements: [...new Set(one.placements.flatMap((name) => placementsNamed(flat, name)))],
        }));
  return { gates: all(plan.gates), vents: all(plan.vents) };
}

/** Ids into whose gate or vent another leads: that one stays. */
export const parentsIn = ({ gates, vents }: Lists): ReadonlySet<string> =>
  new Set([
    ...gates.flatMap((one) => ('from' in one && one.from !== undefined ? [one.from] : [])),
    ...vents.flatMap((one) => ('to' in one && one.to && 'vent' in one.to ? [one.to.vent] : [])),
  ]);

/** What stays of one list where some placements are proposed anew, and what of it gave way. */
export function without(
  list: readonly Listed[],
  ids: ReadonlySet<string>,
  parents: ReadonlySet<string>,
): { readonly kept: readonly Listed[]; readonly gone: readonly Listed[] } {
  const gives = (one: Listed, id: string): boolean => ids.has(id) && !isChosen(one) && !parents.has(id);
  const part = (wanted: boolean): Listed[] =>
    list.flatMap((one) => {
      const placements = one.placements.filter((id) => gives(one, id) === wanted);
      if (placements.length === one.placements.length) return [one];
      return placements.length > 0 ? [{ ...one, placements }] : [];
    });
  return { kept: part(false), gone: part(true) };
}

/** Placements of one entry of the plan that lie alike but for where round the axis. */
export function kindsIn(plan: Plan, { placements }: Mold): Placement[][] {
  const flat = expandPlacements(plan);
  const kinds = new Map<string, Placement[]>();
  for (const one of placements) {
    const entry = flat.find(({ id }) => id === one.id)?.entry;
    const lies = [Math.hypot(one.x, one.y), one.turnRad, one.scale, one.lowest, one.highest];
    const key = JSON.stringify([entry, one.master, lies.map((value) => value.toFixed(3))]);
    kinds.set(key, [...(kinds.get(key) ?? []), one]);
  }
  return [...kinds.values()];
}
