import { computed, signal } from '@preact/signals';
import type { Point2 } from '../../geometry/index.ts';
import { type Channel, openRun } from '../../mold/index.ts';
import { type ChannelName, findChannel, readPlan, resolveRadius, type WayPoint } from '../../plan/index.ts';
import type { ProposedText, TriedChannel } from '../worker/messages.ts';
import { mold, picked, plan } from './store.ts';

// The picked gate or vent: where the plan has its points, and where a hand holds them.

/** A point that can be moved: where it opens into the cavity, where it meets well or rim, or a way point by its number. */
export type ChannelPoint = 'entry' | 'end' | number;

/** Places of a channel, mold frame; way points from the axis outward. */
export interface ChannelPoints {
  readonly entry: Point2;
  readonly end: Point2;
  readonly through: readonly { readonly at: Point2; readonly was?: number }[];
}

/** What a hand holds: not in the plan's text before it is let go. */
export interface HeldChannel {
  readonly id: string;
  readonly points: ChannelPoints;
  /** Which of it differs from the plan. */
  readonly moved: { readonly entry: boolean; readonly through: boolean };
}

export const held = signal<HeldChannel | undefined>(undefined);
/** What the held or last moved one would do; until the exact forecast is there. */
export const tried = signal<TriedChannel | undefined>(undefined);

/** What a hand moves; runners and the blind pockets of slowing bends are the text's. */
export type MovableChannel = Channel & { readonly kind: ChannelName['kind'] };
const isMovable = (one: Channel): one is MovableChannel => one.kind === 'gate' || one.kind === 'vent';

export const movableChannels = computed<readonly MovableChannel[]>(
  () => mold.value?.channels.filter(isMovable) ?? [],
);

export const pickedChannel = computed<MovableChannel | undefined>(() =>
  movableChannels.value.find(({ id }) => id === picked.value),
);

/** How the plan names it: the number is at the end of its id from the second on. */
export function nameOf({ id, kind, placement }: MovableChannel): ChannelName {
  const number = Number(id.slice(`${kind}-${placement}-`.length));
  return { kind, placement, number: number > 0 ? number : 1 };
}

const planNow = computed(() => readPlan(plan.value?.text ?? '', 'plan').plan);

/** The picked one as the plan lists it. */
export const listedChannel = computed(() => {
  const [now, one] = [planNow.value, pickedChannel.value];
  return now && one && findChannel(now, nameOf(one));
});

/** Direction of its placement, which its way points are counted from. */
function directionOf({ placement }: Pick<Channel, 'placement'>): number {
  const one = mold.value?.placements.find(({ id }) => id === placement);
  return one ? Math.atan2(one.y, one.x) : 0;
}

const writtenPoints = computed<ChannelPoints | undefined>(() => {
  const [one, listed, now] = [pickedChannel.value, listedChannel.value, mold.value];
  const run = one && openRun(one);
  if (!one || !run || run.length < 2 || !now) return undefined;
  const [first, last] = [run[0].at, run[run.length - 1].at];
  const path = listed?.entry?.path;
  const middle = directionOf(one);
  const through = typeof path === 'object' && 'through' in path ? path.through : [];
  return {
    ...(one.kind === 'gate' ? { entry: last, end: first } : { entry: first, end: last }),
    through: through.map(({ radius, angleRad }, was) => {
      const far = resolveRadius(radius, now.disc.radius);
      return { at: [far * Math.cos(middle + angleRad), far * Math.sin(middle + angleRad)], was };
    }),
  };
});

/** Points of the picked one as they are shown. */
export const shownPoints = computed<ChannelPoints | undefined>(() =>
  held.value && held.value.id === picked.value ? held.value.points : writtenPoints.value,
);

/** Way points as the plan writes them. */
export function asWritten(one: Channel, through: ChannelPoints['through']): WayPoint[] {
  const middle = directionOf(one);
  return through.map(({ at: [x, y], was }) => {
    const turn = Math.atan2(y, x) - middle;
    return {
      radius: Math.hypot(x, y),
      angleRad: turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)),
      ...(was !== undefined && { was }),
    };
  });
}

/** What came of the last proposal. */
export const proposed = signal<ProposedText | undefined>(undefined);
export const isProposing = signal(false);
/** Called when one comes. */
export const onProposed: { listen: ((message: ProposedText) => void) | undefined } = { listen: undefined };

export function receiveProposed(message: ProposedText): void {
  isProposing.value = false;
  proposed.value = message;
  onProposed.listen?.(message);
}

/** Called when an answer comes. */
export const onTried: { listen: (() => void) | undefined } = { listen: undefined };

let asked = 0;
export const nextAsk = (): number => ++asked;
export const lastAsk = (): number => asked;

export function receiveTried(message: TriedChannel): void {
  if (message.ask === asked && held.peek()?.id === message.id) tried.value = message;
  onTried.listen?.();
}

/** What was moved is in the mold now. */
export function letGo(): void {
  held.value = undefined;
}
