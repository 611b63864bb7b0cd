import type { Point2 } from '../geometry/index.ts';
import { type EntryPlace, type Plan, partingDefaults } from '../plan/index.ts';
import { entryOn } from './channel-ways/entry.ts';
import { lapsOf } from './channels.ts';
import { makeAlways } from './memoize.ts';
import type { Mold } from './mold.ts';
import type { Sink } from './orient-master.ts';
import { findPartingSurface } from './parting/index.ts';
import { heightAt } from './parting-surface.ts';
import { outlineOf } from './resolve-channels.ts';
import { type PlacedMaster, resolvePlacements } from './resolve-placements.ts';

/** A master seen from above as it will lie, about the middle a placement has, +x outward at turn 0. Lengths in mm. */
export interface Shadow {
  readonly outline: readonly Point2[];
  /** How much larger than the casting it is. */
  readonly scale: number;
  /** Height of the parting surface along it, mm over the plane: the middle one. 0 where it is flat. */
  readonly level: number;
  /** Where a channel of a width opens into it: on its outline, and as far within as it laps. */
  mouth(place: EntryPlace, width: number): { readonly entry: Point2; readonly within: Point2 } | undefined;
}

export function shadowOf(
  plan: Plan,
  { masters }: Pick<Mold, 'masters'>,
  { master, sink }: { readonly master: string; readonly sink?: Sink | undefined },
): Shadow | undefined {
  const at = plan.masters?.[master]?.at;
  if (!at) return undefined;
  const where = { position: { radius: { length: 0 }, angleRad: 0 } };
  const placement = { id: undefined, leastDisc: undefined, turnRad: 0, sink, master, where, at };
  const [placed] = resolvePlacements({ ...plan, placements: [placement] }, masters).placed;
  if (!placed) return undefined;
  const target = { ...placed, outline: outlineOf(placed, makeAlways) };
  return {
    outline: target.outline,
    scale: placed.scale,
    level: levelOf(plan, placed, target.outline),
    mouth: (place, width) => {
      const entry = entryOn(target, place, width);
      if (!entry) return undefined;
      const [, lap] = lapsOf({ width, endWidth: width });
      const [x, y] = entry.at;
      return { entry: entry.at, within: [x - entry.outward[0] * lap, y - entry.outward[1] * lap] };
    },
  };
}

/** As fine as a level is wanted, mm. */
const levelCell = 0.4;

/** Where a parting surface of its own would meet it, free to rise as it likes. */
function levelOf({ parting }: Plan, placed: PlacedMaster, outline: readonly Point2[]): number {
  if ((parting?.surface ?? partingDefaults.surface) === 'flat') return 0;
  const reach = Math.max(...outline.map(([x, y]) => Math.hypot(x, y)));
  const free = 1000;
  const { surface } = findPartingSurface({
    discRadius: 2 * reach + 20,
    masters: [{ id: placed.id, mesh: placed.mesh }],
    pins: [],
    slopeRad: parting?.slopeRad ?? partingDefaults.slopeRad,
    limitUp: free,
    limitDown: free,
    cell: Math.max(levelCell, reach / 80),
  });
  const heights = outline.map(([x, y]) => heightAt(surface, x, y)).sort((a, b) => a - b);
  return heights[heights.length >> 1];
}
