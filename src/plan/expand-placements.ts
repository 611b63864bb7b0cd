import type { TextPlace } from '../findings/index.ts';
import { placementDefaults } from './defaults.ts';
import type { Plan, PlanPlacement } from './plan.ts';
import { resolveRadius } from './resolve-radius.ts';
import type { Size } from './sections/fields.ts';
import type { Position, RadiusSpec, Ring, Sink } from './sections/placements.ts';
import { type Divided, findingRoom, resolveAngle, sectorCount } from './sectors.ts';

/** One master at one place, before its mesh is known. */
export interface FlatPlacement {
  readonly id: string;
  /** Name of the plan's entry it comes from: naming it in a list means all of the entry's placements. */
  readonly group: string;
  readonly master: string;
  readonly radius: RadiusSpec;
  readonly angleRad: number;
  readonly turnRad: number;
  /** Undefined where the plan leaves it open: then a mesh sinks to its widest contour, a stand-in by its own depth. */
  readonly sink?: Sink | undefined;
  readonly at: TextPlace;
  /** Its entry in the plan's list, and which of that entry's places it is; both from 0. */
  readonly entry: number;
  readonly place: number;
}

/**
 * Every placement of the plan on its own, in the plan's order. An entry is named by its `id`, or else by its master.
 * A single entry with an `id` of its own, or the only entry of its name, keeps the bare name; all others are numbered
 * from 1 through all entries of that name: `snail-1`, `snail-2`, ...
 */
export function expandPlacements(plan: Pick<Plan, 'placements'> & Divided): FlatPlacement[] {
  const entries = (plan.placements ?? []).map((entry) => ({ entry, group: entry.id ?? entry.master }));
  const numbers = new Map<string, number>();
  const sharing = new Map<string, number>();
  for (const { group } of entries) sharing.set(group, (sharing.get(group) ?? 0) + 1);
  return entries.flatMap(({ entry, group }, index) => {
    const bare = 'position' in entry.where && (entry.id !== undefined || sharing.get(group) === 1);
    return places(entry, plan).map((place, which): FlatPlacement => {
      const number = (numbers.get(group) ?? 0) + 1;
      if (!bare) numbers.set(group, number);
      return {
        id: bare ? group : `${group}-${number}`,
        group,
        master: entry.master,
        radius: place.radius,
        angleRad: place.angleRad,
        turnRad: place.turnRad ?? entry.turnRad ?? placementDefaults.turnRad,
        sink: entry.sink,
        at: entry.at,
        entry: index,
        place: which,
      };
    });
  });
}

/** The ids a name in `supports`, `gates` or `vents` stands for: one placement, a whole entry, or `all`. */
export function placementsNamed(placements: readonly FlatPlacement[], name: string): string[] {
  if (name === 'all') return placements.map(({ id }) => id);
  const one = placements.find(({ id }) => id === name);
  return one ? [one.id] : placements.filter(({ group }) => group === name).map(({ id }) => id);
}

/** A size in mm on a disc of the given diameter; undefined where the plan leaves it open. */
export const resolveSize = (size: Size | undefined, discDiameter: number): number | undefined =>
  typeof size === 'object' ? size.share * discDiameter : size;

interface Place {
  readonly radius: RadiusSpec;
  readonly angleRad: number;
  readonly turnRad?: number | undefined;
}

function places({ where, leastDisc = 0 }: PlanPlacement, plan: Divided): readonly Place[] {
  if (plan.disc.diameter < leastDisc) return [];
  return 'each' in where ? where.each : wherePlaces(where, plan);
}

/** Places of what is placed once or in a ring. */
export const wherePlaces = (
  where: { readonly position: Position } | { readonly ring: Ring },
  plan: Divided,
): readonly { radius: RadiusSpec; angleRad: number }[] =>
  'ring' in where
    ? ringPlaces(where.ring, plan)
    : [{ radius: where.position.radius, angleRad: resolveAngle(where.position.angleRad, plan) }];

/** Most places of one ring, as many as a `count` may ask for. */
const mostPlaces = 500;

/** Places of a ring, evenly spaced; by `spacing` as many as the circle has room for, at least one. */
function ringPlaces(ring: Ring, plan: Divided): readonly { radius: RadiusSpec; angleRad: number }[] {
  const { radius, startRad = placementDefaults.startRad, offset = 0 } = ring;
  const count = Math.min(mostPlaces, howMany(ring, plan));
  return Array.from({ length: count }, (_, i) => ({
    radius,
    angleRad: startRad + (2 * Math.PI * (i + offset)) / count,
  }));
}

function howMany(ring: Ring, plan: Divided): number {
  if ('count' in ring) return ring.count;
  if ('perSector' in ring) return ring.perSector * sectorCount(plan);
  return findingRoom(resolveRadius(ring.radius, plan.disc.diameter / 2), ring.spacing);
}
