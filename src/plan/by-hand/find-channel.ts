import { expandPlacements, placementsNamed } from '../expand-placements.ts';
import type { Plan, PlanChannel } from '../plan.ts';
import type { ChannelPath } from '../sections/channels.ts';
import type { RadiusSpec } from '../sections/placements.ts';

/** A gate or vent of a placement; `number` counts those of its kind there, from 1. */
export interface ChannelName {
  readonly kind: 'gate' | 'vent';
  readonly placement: string;
  readonly number: number;
}

/** A way point as a plan has it: mm from the axis, the angle from the direction of the placement. */
export interface WayPoint {
  readonly radius: number;
  readonly angleRad: number;
  /** Which of the way points of the plan it is, from 0. Left out, a new one. */
  readonly was?: number;
}

/** Where a channel goes; what is left out stays. */
export interface ChannelMove {
  /** Where it opens into the cavity, mm in the master's own frame. */
  readonly entry?: { readonly x: number; readonly y: number };
  /** Through no points it is straight. */
  readonly through?: readonly WayPoint[];
}

/** Where a channel stands in the plan. */
export interface ListedChannel {
  readonly section: 'gates' | 'vents';
  /** Its entry in the list; undefined where the section is a word. */
  readonly index: number | undefined;
  readonly entry: PlanChannel | undefined;
  /** All placements that get one by this entry. */
  readonly placements: readonly string[];
}

export const sectionOf = ({ kind }: Pick<ChannelName, 'kind'>): 'gates' | 'vents' =>
  kind === 'gate' ? 'gates' : 'vents';

/** Looks a channel up; undefined where the plan has none of that name. */
export function findChannel(plan: Plan, name: ChannelName): ListedChannel | undefined {
  const section = sectionOf(name);
  const list = plan[section];
  if (list === undefined) return undefined;
  const flat = expandPlacements(plan);
  if (list === 'straight') {
    const placements = flat.map(({ id }) => id);
    const isThere = name.number === 1 && placements.includes(name.placement);
    return isThere ? { section, index: undefined, entry: undefined, placements } : undefined;
  }
  let number = 0;
  for (const [index, entry] of list.entries()) {
    const placements = [...new Set(entry.placements.flatMap((one) => placementsNamed(flat, one)))];
    if (placements.includes(name.placement) && ++number === name.number)
      return { section, index, entry, placements };
  }
  return undefined;
}

/** The plan's gates and vents with one of them elsewhere, that of its placement alone. */
export function withMovedChannel(
  plan: Plan,
  name: ChannelName,
  { entry, through }: ChannelMove,
): Pick<Plan, 'gates' | 'vents'> {
  const found = findChannel(plan, name);
  const { gates, vents } = plan;
  const lists = { ...(gates && { gates }), ...(vents && { vents }) };
  if (!found) return lists;
  const path: ChannelPath | undefined = through && pathThrough(through);
  const moved = { ...(entry && { entry }), ...(path && { path }) };
  const one = (listed: PlanChannel): PlanChannel[] => [
    { ...listed, placements: found.placements.filter((id) => id !== name.placement) },
    { ...listed, placements: [name.placement], ...moved },
  ];
  const list = plan[found.section];
  const changed =
    list === 'straight' || list === undefined
      ? expandPlacements(plan).map(({ id, at }) => ({
          placements: [id],
          at,
          ...(id === name.placement && moved),
        }))
      : list.flatMap((listed: PlanChannel, i) => (i === found.index ? one(listed) : [listed]));
  return { ...lists, [found.section]: changed };
}

function pathThrough(points: readonly WayPoint[]): ChannelPath {
  if (points.length === 0) return 'straight';
  return {
    through: points.map(({ radius, angleRad }) => ({
      radius: { length: radius } satisfies RadiusSpec,
      angleRad,
    })),
  };
}
