import { signal } from '@preact/signals';
import { mmPerInch, toDegrees, toRadians } from '../../geometry/index.ts';
import { addMaster, type Company, type Edited, moveItem, removeItem, repeatRound } from '../../plan/index.ts';
import { changePlan } from './actions.ts';
import { dragState, isDragging, itemOf, moveTo, type Pose, poseOf } from './drag-state.ts';
import { persisted } from './persist.ts';
import { said } from './show.ts';
import { fault, mold, picked, plan } from './store.ts';
import { units } from './view.ts';

// Moving things by hand. What is dragged is shown at once; when it is let go, the plan's text is edited, and all
// that is shown then follows from that text.

/** Whether things in the picture are moved when they are dragged. */
export const arranging = signal(false);
export const doings = ['move', 'turn', 'sink'] as const;
/** What dragging and the arrow keys do. */
export const doing = signal<(typeof doings)[number]>('move');
/** Whether a ring comes along when one of it is moved. */
export const company = signal<Company>('alone');

export const angleSteps = ['0.5', '1', '5', '15'] as const;
export const lengthSteps = { mm: ['0.1', '0.5', '1', '5'], in: ['1/64', '1/32', '1/16', '1/4'] } as const;
/** Degrees. */
export const angleStep = persisted('angle step', '1', angleSteps);
export const mmStep = persisted('step in mm', '0.5', lengthSteps.mm);
export const inchStep = persisted('step in inches', '1/32', lengthSteps.in);

const parts: Readonly<Record<string, number>> = { '1/64': 64, '1/32': 32, '1/16': 16, '1/4': 4 };
const stepRad = (): number => toRadians(Number(angleStep.value));
const stepMm = (): number =>
  units.value === 'mm' ? Number(mmStep.value) : mmPerInch / parts[inchStep.value];

const toStep = (value: number, step: number): number => Math.round(value / step) * step;

/** A pose brought to the steps; only what differs from where it was, so that a turn moves nothing. */
export function snapped(pose: Pose, from: Pose): Pose {
  const snap = (value: number, before: number, step: number) =>
    Math.abs(value - before) < 1e-12 ? before : toStep(value, step);
  return {
    ...pose,
    radius: snap(pose.radius, from.radius, stepMm()),
    angleRad: snap(pose.angleRad, from.angleRad, stepRad()),
    turnRad: snap(pose.turnRad, from.turnRad, stepRad()),
    depth: Math.max(0, snap(pose.depth, from.depth, stepMm())),
  };
}

/** Shows a thing somewhere, not written yet. */
export function dragTo(id: string, pose: Pose): void {
  const item = itemOf(id);
  if (!item) return;
  isDragging.value = true;
  dragState.value = { item, pose };
}

/** Writes where the dragged thing is into the plan. It stays shown there until the mold is laid out anew. */
export function finishDrag(): void {
  clearTimeout(resting);
  resting = undefined;
  isDragging.value = false;
  const now = dragState.peek();
  const text = plan.peek()?.text;
  if (!now || text === undefined) return;
  const move = moveTo(now);
  performance.mark('let go');
  if (Object.keys(move).length === 0) dragState.value = undefined;
  else if (!put(moveItem(text, now.item, move, company.peek()))) dragState.value = undefined;
}

export function cancelDrag(): void {
  clearTimeout(resting);
  resting = undefined;
  isDragging.value = false;
  dragState.value = undefined;
}

/** An edit goes into the plan, or its fault is told. */
export function put(edited: Edited): boolean {
  if ('fault' in edited) {
    fault.value = typeof edited.fault === 'string' ? edited.fault : said(edited.fault).says;
    return false;
  }
  fault.value = undefined;
  changePlan(edited.text);
  return true;
}

let resting: ReturnType<typeof setTimeout> | undefined;
/** Keys pressed within this time of one another, ms, are one edit. */
const burst = 350;

/** One small step with the arrow keys: `right` and `up` are 1, 0 or -1. */
export function nudge(right: number, up: number): void {
  const id = picked.peek();
  const from = id === undefined ? undefined : poseOf(id);
  if (id === undefined || !from) return;
  const pose = dragState.peek()?.item.id === id ? (dragState.peek()?.pose ?? from) : from;
  dragTo(id, stepped(pose, right, up));
  clearTimeout(resting);
  resting = setTimeout(finishDrag, burst);
}

function stepped(pose: Pose, right: number, up: number): Pose {
  switch (doing.value) {
    case 'turn':
      return { ...pose, turnRad: pose.turnRad - (right - up) * stepRad() };
    case 'sink':
      return { ...pose, depth: Math.max(0, pose.depth - (up + right) * stepMm()) };
    case 'move':
      return {
        ...pose,
        radius: Math.max(0, pose.radius + up * stepMm()),
        angleRad: pose.angleRad - right * stepRad(),
      };
  }
}

/** Puts a thing where fields say. */
export function setPose(id: string, change: Partial<Pose>): void {
  const from = poseOf(id);
  if (!from) return;
  dragTo(id, { ...from, ...change });
  finishDrag();
}

export function removeThing(id: string): void {
  const item = itemOf(id);
  const text = plan.peek()?.text;
  if (item && text !== undefined && put(removeItem(text, item))) picked.value = undefined;
}

export function allRound(id: string, count: number): void {
  const item = itemOf(id);
  const text = plan.peek()?.text;
  if (item && text !== undefined) put(repeatRound(text, item, count));
}

/** Puts masters that came as files into the plan, each in the next free direction half way out. */
export function addMasters(files: readonly string[]): void {
  for (const file of files) {
    const text = plan.peek()?.text;
    if (text === undefined) return;
    const radius = Math.round((mold.peek()?.disc.radius ?? 100) * 0.6);
    const added = addMaster(text, {
      file,
      radius,
      angleRad: freeDirection() + (mastersAdded++ * Math.PI) / 6,
    });
    if (put(added) && added.id !== undefined) picked.value = added.id;
  }
}

let mastersAdded = 0;

/** The middle of the widest gap between things, whole degrees. */
function freeDirection(): number {
  const placed = (mold.peek()?.placements ?? []).map(({ x, y }) => Math.atan2(y, x)).sort((a, b) => a - b);
  if (placed.length === 0) return 0;
  let best = { gap: 0, middle: 0 };
  for (const [i, from] of placed.entries()) {
    const to = placed[i + 1] ?? placed[0] + 2 * Math.PI;
    if (to - from > best.gap) best = { gap: to - from, middle: (from + to) / 2 };
  }
  return toRadians(Math.round(toDegrees(best.middle)));
}
