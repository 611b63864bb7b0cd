import type { Point2 } from '../geometry/index.ts';
import type { Plan } from '../plan/index.ts';
import { fixtureOutlines } from './channel-ways/fixture-outlines.ts';
import { leastGap } from './channel-ways/line.ts';
import { nearestOnRing } from './channel-ways/ring.ts';
import { type Memoize, makeAlways } from './memoize.ts';
import type { Channel, Mold } from './mold.ts';
import { outlineOf, resolveChannels } from './resolve-channels.ts';
import { resolvePlacements } from './resolve-placements.ts';
import { channelOutline, isDrawn, openRun } from './shapes/index.ts';

/** Gates and vents as a plan lists them. */
export type ChannelLists = Pick<Plan, 'gates' | 'vents'>;

/** A laid-out mold whose gates and vents are drawn anew from other lists, all else as it lies. */
export interface DrawAnew {
  /** All that could be drawn without a fault; those drawn already stay as they are. */
  draw(lists: ChannelLists, already?: readonly Channel[]): readonly Channel[];
  /** Whether a channel keeps its walls, and `spare` mm more, to all else: fixtures, other cavities, other channels. */
  isFree(channel: Channel, among: readonly Channel[], spare?: number): boolean;
  /** The place of a cavity's outline nearest to a point, and how far that is. */
  onOutline(placement: string, to: Point2): { readonly at: Point2; readonly away: number } | undefined;
}

export function drawAnew(plan: Plan, mold: Mold, memoize: Memoize = makeAlways): DrawAnew {
  const { placed } = resolvePlacements(plan, mold.masters, memoize);
  const { wall } = mold.limits;
  const ground = { ...mold, sprue: mold.sprue, placed, wall };
  // Meshes stay the same objects here, and need not be told apart by their content.
  const known = new Map<object, unknown>();
  const once: Memoize = (what, input, make) => {
    // Ways are tried by the hundred here, each once.
    if (what !== 'outline') return make();
    const key = (input as { readonly mesh: object }).mesh;
    if (!known.has(key)) known.set(key, memoize(what, input, make));
    return known.get(key) as ReturnType<typeof make>;
  };
  const outlines = placed.map((one) => ({ id: one.id, outline: outlineOf(one, once) }));
  const fixtures = fixtureOutlines(mold);
  return {
    draw: (lists, already) => {
      const { channels, findings } = resolveChannels({ ...plan, ...lists }, ground, once, already);
      const faulty = new Set(findings.map(({ subject }) => subject));
      return channels.filter((channel) => isDrawn(channel) && !faulty.has(channel.id));
    },
    isFree: (channel, among, spare = 0) => {
      const line = openRun(channel).map(({ at }) => at);
      const half = Math.max(...channel.run.map(({ width }) => width)) / 2;
      // Vents of one cavity may run together: their air has one way out.
      const isBeside = (other: Channel) =>
        other.placement === channel.placement && other.kind === channel.kind;
      const others = [
        ...fixtures,
        ...outlines.filter(({ id }) => id !== channel.placement),
        ...among
          .filter((other) => other.id !== channel.id && !isBeside(other) && isDrawn(other))
          // What lies in well and cavity is no wall.
          .map((other) => ({ outline: channelOutline({ run: openRun(other) }) })),
      ];
      return leastGap(line, others) - half >= wall + spare;
    },
    onOutline: (placement, to) => {
      const outline = outlines.find(({ id }) => id === placement)?.outline ?? [];
      if (outline.length === 0) return undefined;
      const { at } = nearestOnRing(outline, to);
      return { at, away: Math.hypot(at[0] - to[0], at[1] - to[1]) };
    },
  };
}
