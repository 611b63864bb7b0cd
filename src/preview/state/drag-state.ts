import { computed, signal } from '@preact/signals';
import { compose, inverse, type Matrix4, rotation, translation } from '../../geometry/index.ts';
import type { ItemName, Move } from '../../plan/index.ts';
import type { Dragged } from '../worker/messages.ts';
import { mold } from './store.ts';

/** Where a thing lies on the disc: mm and rad; `turnRad` as the plan counts it. */
export interface Pose {
  readonly radius: number;
  readonly angleRad: number;
  readonly turnRad: number;
  /** Depth of its lowest point below the parting plane; placements only. */
  readonly depth: number;
  readonly height: number;
}

/** What is being dragged: not in the plan's text before it is let go. */
export interface DragState {
  readonly item: ItemName;
  readonly pose: Pose;
}

export const dragState = signal<DragState | undefined>(undefined);
/** Whether it is still being moved; else the plan has been changed and the picture will follow. */
export const isDragging = signal(false);

/** Everything on the disc that can be moved, in the order of the plan. */
export const items = computed<readonly ItemName[]>(() => {
  const now = mold.value;
  if (!now) return [];
  const named = (kind: ItemName['kind'], list: readonly { readonly id: string }[]) =>
    list.map(({ id }): ItemName => ({ kind, id }));
  return [
    ...named('placement', now.placements),
    ...named('boss', now.bosses),
    ...named('tab', now.tabs),
    ...named('notch', now.notches),
  ];
});

export const itemOf = (id: string | undefined): ItemName | undefined =>
  items.value.find((one) => one.id === id);

/** Where the plan has a thing. */
export function poseOf(id: string): Pose | undefined {
  const now = mold.value;
  const placed = now?.placements.find((one) => one.id === id);
  if (placed) {
    const { x, y, turnRad, lowest, highest } = placed;
    return { ...polar(x, y), turnRad, depth: -lowest, height: highest - lowest };
  }
  const boss = now?.bosses.find((one) => one.id === id);
  if (boss) return { ...polar(boss.x, boss.y), turnRad: boss.turnRad, depth: 0, height: 0 };
  const rim = [...(now?.tabs ?? []), ...(now?.notches ?? [])].find((one) => one.id === id);
  if (!rim || !now) return undefined;
  return { radius: now.disc.radius, angleRad: rim.angleRad, turnRad: 0, depth: 0, height: 0 };
}

const polar = (x: number, y: number) => ({ radius: Math.hypot(x, y), angleRad: Math.atan2(y, x) });

/** The mold frame of a thing at a pose. */
const frameOf = ({ kind }: ItemName, { radius, angleRad, turnRad, depth }: Pose): Matrix4 => {
  if (kind === 'tab' || kind === 'notch') return rotation('z', angleRad);
  // A boss is turned against the disc, a master against its own radius.
  const turn = kind === 'boss' ? turnRad : angleRad + turnRad;
  return compose(
    translation(radius * Math.cos(angleRad), radius * Math.sin(angleRad), -depth),
    rotation('z', turn),
  );
};

/** The way of what is dragged from where the plan has it. */
export const dragged = computed<Dragged | undefined>(() => {
  const now = dragState.value;
  const from = now && poseOf(now.item.id);
  if (!now || !from) return undefined;
  const matrix = compose(frameOf(now.item, now.pose), inverse(frameOf(now.item, from)));
  return { ...now.item, matrix };
});

/** What of a pose is to be written, compared with where the plan has the thing. */
export function moveTo({ item, pose }: DragState): Move {
  const from = poseOf(item.id);
  if (!from) return {};
  const differs = (a: number, b: number) => Math.abs(a - b) > 1e-9;
  return {
    ...(differs(pose.radius, from.radius) && { radius: pose.radius }),
    ...(differs(pose.angleRad, from.angleRad) && { angleRad: pose.angleRad }),
    ...(differs(pose.turnRad, from.turnRad) && { turnRad: pose.turnRad }),
    ...(differs(pose.depth, from.depth) && { sink: { depth: pose.depth, height: pose.height } }),
  };
}
