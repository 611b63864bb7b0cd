import type { Point2 } from '../geometry/index.ts';
import { treeOf } from '../mesh/index.ts';
import { type EntryPlace, type Plan, partingDefaults } from '../plan/index.ts';
import { entryOn } from './channel-ways/entry.ts';
import { nearestOnRing } from './channel-ways/ring.ts';
import { lapsOf } from './channels.ts';
import { makeAlways } from './memoize.ts';
import type { Mold } from './mold.ts';
import type { Sink } from './orient-master.ts';
import { findPartingSurface } from './parting/index.ts';
import { flatPartingSurface, heightAt, type PartingSurface } from './parting-surface.ts';
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
  mouth(place: EntryPlace, channel: Mouthpiece): ShadowMouth | undefined;
}

/** The end of a channel: mm, and down or up from the parting surface. */
export interface Mouthpiece {
  readonly width: number;
  readonly depth: number;
  readonly half: 'upper' | 'lower';
}

interface ShadowMouth {
  readonly entry: Point2;
  readonly within: Point2;
  /** Whether the master itself is met there: its shadow may lie over or under the channel. */
  readonly opens: boolean;
  /** Radius of the largest circle in the master about a point of its lap, mm: little in a thin leg. */
  readonly deep: number;
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
  const surface = ownSurface(plan, placed, target.outline);
  return {
    outline: target.outline,
    scale: placed.scale,
    level: levelAlong(surface, target.outline),
    mouth: (place, channel) => {
      const { width } = channel;
      const entry = entryOn(target, place, width);
      if (!entry) return undefined;
      const [, lap] = lapsOf({ width, endWidth: width });
      const [x, y] = entry.at;
      const within: Point2 = [x - entry.outward[0] * lap, y - entry.outward[1] * lap];
      const deep = deepest(target.outline, entry.at, within);
      return {
        entry: entry.at,
        within,
        deep,
        opens: opensInto(placed, surface, { ...channel, entry: entry.at, within }),
      };
    },
  };
}

/** As fine as a level is wanted, mm. */
const levelCell = 0.4;

/** A parting surface of its own, free to rise as it likes. */
function ownSurface({ parting }: Plan, placed: PlacedMaster, outline: readonly Point2[]): PartingSurface {
  const reach = Math.max(...outline.map(([x, y]) => Math.hypot(x, y)));
  const discRadius = 2 * reach + 20;
  if ((parting?.surface ?? partingDefaults.surface) === 'flat') return flatPartingSurface(discRadius);
  const free = 1000;
  return findPartingSurface({
    discRadius,
    masters: [{ id: placed.id, mesh: placed.mesh }],
    pins: [],
    slopeRad: parting?.slopeRad ?? partingDefaults.slopeRad,
    limitUp: free,
    limitDown: free,
    cell: Math.max(levelCell, reach / 80),
  }).surface;
}

function levelAlong(surface: PartingSurface, outline: readonly Point2[]): number {
  const heights = outline.map(([x, y]) => heightAt(surface, x, y)).sort((a, b) => a - b);
  return heights[heights.length >> 1];
}

/** By a few points of a lap. */
const deepest = (outline: readonly Point2[], [x, y]: Point2, [u, v]: Point2): number =>
  Math.max(
    ...[0.2, 0.4, 0.6, 0.8, 1].map((t) => {
      const [px, py]: Point2 = [x + t * (u - x), y + t * (v - y)];
      const [qx, qy] = nearestOnRing(outline, [px, py]).at;
      return Math.hypot(qx - px, qy - py);
    }),
  );

/** Places along the lap that are looked at, and how many of them have to lie in the master. */
const [looked, met] = [[0.3, 0.5, 0.7, 0.9], 2] as const;

function opensInto(
  { mesh }: PlacedMaster,
  surface: PartingSurface,
  { entry, within, depth, half }: Mouthpiece & Pick<ShadowMouth, 'entry' | 'within'>,
): boolean {
  const tree = treeOf(mesh);
  const down = half === 'lower' ? -1 : 1;
  const inside = looked.filter((t) => {
    const [x, y] = [entry[0] + t * (within[0] - entry[0]), entry[1] + t * (within[1] - entry[1])];
    const z = heightAt(surface, x, y);
    return [0.1, 0.3, 0.5].some((share) => tree.windingAt(x, y, z + down * share * depth) > 0.5);
  });
  return inside.length >= met;
}
