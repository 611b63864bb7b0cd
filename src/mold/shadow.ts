import type { Point2 } from '../geometry/index.ts';
import type { EntryPlace, Plan } from '../plan/index.ts';
import { entryOn } from './channel-ways/entry.ts';
import { lapsOf } from './channels.ts';
import { makeAlways } from './memoize.ts';
import type { Mold } from './mold.ts';
import { outlineOf } from './resolve-channels.ts';
import { resolvePlacements } from './resolve-placements.ts';

/** A master seen from above as it will lie, about the middle a placement has, +x outward at turn 0. Lengths in mm. */
export interface Shadow {
  readonly outline: readonly Point2[];
  /** How much larger than the casting it is. */
  readonly scale: number;
  /** Where a channel of a width opens into it: on its outline, and as far within as it laps. */
  mouth(place: EntryPlace, width: number): { readonly entry: Point2; readonly within: Point2 } | undefined;
}

export function shadowOf(plan: Plan, { masters }: Pick<Mold, 'masters'>, master: string): Shadow | undefined {
  const at = plan.masters?.[master]?.at;
  if (!at) return undefined;
  const where = { position: { radius: { length: 0 }, angleRad: 0 } };
  const placement = { id: undefined, leastDisc: undefined, turnRad: 0, sink: undefined, master, where, at };
  const [placed] = resolvePlacements({ ...plan, placements: [placement] }, masters).placed;
  if (!placed) return undefined;
  const target = { ...placed, outline: outlineOf(placed, makeAlways) };
  return {
    outline: target.outline,
    scale: placed.scale,
    mouth: (place, width) => {
      const entry = entryOn(target, place, width);
      if (!entry) return undefined;
      const [, lap] = lapsOf({ width, endWidth: width });
      const [x, y] = entry.at;
      return { entry: entry.at, within: [x - entry.outward[0] * lap, y - entry.outward[1] * lap] };
    },
  };
}
