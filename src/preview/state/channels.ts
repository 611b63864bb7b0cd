import type { Point2 } from '../../geometry/index.ts';
import type { Channel } from '../../mold/index.ts';
import { type Company, moveChannel, removeChannel } from '../../plan/index.ts';
import { requestProposal, tryChannel } from './actions.ts';
import {
  asWritten,
  type ChannelPoint,
  type ChannelPoints,
  held,
  lastAsk,
  type MovableChannel,
  movableChannels,
  nameOf,
  nextAsk,
  onProposed,
  onTried,
  pickedChannel,
  shownPoints,
  tried,
} from './channel-state.ts';
import { put } from './drag.ts';
import { persisted } from './persist.ts';
import { fault, mold, picked, plan } from './store.ts';

// Gates and vents moved by hand: shown and tried while they are held, written into the plan when they are let go.

/** Whether those of the same entry go along, each at its own cavity. */
export const channelCompany = persisted<Company>('gates move', 'together', ['together', 'alone']);

/** Room for a bend beside well and rim, in widths; and from how near a way point goes there by itself, mm. */
const bendRoom = 1.6;
const snapWithin = 2;

/** The circle beside the well or the rim that a way point is held to. */
function besideEnd({ kind, run }: Channel): number | undefined {
  const now = mold.peek();
  const room = bendRoom * Math.max(...run.map(({ width }) => width));
  if (kind === 'vent') return now && now.disc.radius - room;
  return now?.sprue && now.sprue.wellRadius + room;
}

const atRadius = ([x, y]: Point2, radius: number): Point2 => {
  const far = Math.hypot(x, y) || 1;
  return [(x / far) * radius, (y / far) * radius];
};

/** A way point where the hand has it, within the disc and out of the well; near well or rim it goes to its circle. */
function snapped(one: Channel, at: Point2): Point2 {
  const circle = besideEnd(one);
  const far = Math.hypot(...at);
  if (circle === undefined) return at;
  const isPast = one.kind === 'gate' ? far < circle : far > circle;
  return isPast || Math.abs(far - circle) < snapWithin ? atRadius(at, circle) : at;
}

/** Holds one point of the picked channel somewhere. */
export function holdPoint(point: ChannelPoint, at: Point2): void {
  const [one, points] = [pickedChannel.peek(), shownPoints.peek()];
  if (!one || !points) return;
  if (point === 'entry') hold(one, { ...points, entry: at }, { entry: true });
  else if (point === 'end') holdEnd(one, points, at);
  else {
    const through = points.through.map((way, i) => (i === point ? { ...way, at: snapped(one, at) } : way));
    hold(one, { ...points, through }, { through: true });
  }
}

/** Where it meets well or rim follows from its last way point: the one beside that is moved, or made. */
function holdEnd(one: Channel, points: ChannelPoints, at: Point2): void {
  const circle = besideEnd(one);
  if (circle === undefined) return;
  const isGate = one.kind === 'gate';
  const last = isGate ? points.through[0] : points.through[points.through.length - 1];
  const isThere = last && Math.abs(Math.hypot(...last.at) - circle) < 0.05;
  const moved = { ...(isThere ? last : {}), at: atRadius(at, circle) };
  const rest = isThere ? points.through.filter((way) => way !== last) : points.through;
  const through = isGate ? [moved, ...rest] : [...rest, moved];
  const end = atRadius(at, Math.hypot(...points.end));
  hold(one, { ...points, end, through }, { through: true });
}

/** One way point more, before the one of this number as they are counted from the axis outward. */
export function addPoint(before: number, at: Point2): void {
  const [one, points] = [pickedChannel.peek(), shownPoints.peek()];
  if (!one || !points) return;
  const through = [...points.through];
  through.splice(before, 0, { at: snapped(one, at) });
  hold(one, { ...points, through }, { through: true });
}

export function removePoint(point: number): void {
  const [one, points] = [pickedChannel.peek(), shownPoints.peek()];
  if (!one || !points) return;
  hold(one, { ...points, through: points.through.filter((_, i) => i !== point) }, { through: true });
  release();
}

let waiting = false;
let again = false;

function hold(
  one: Channel,
  points: ChannelPoints,
  change: { readonly entry?: true; readonly through?: true },
): void {
  const before = held.peek()?.id === one.id ? held.peek()?.moved : undefined;
  const moved = {
    entry: change.entry === true || before?.entry === true,
    through: change.through === true || before?.through === true,
  };
  held.value = { id: one.id, points, moved };
  if (waiting) again = true;
  else ask();
}

function ask(): void {
  const [one, now] = [pickedChannel.peek(), held.peek()];
  if (!one || now?.id !== one.id) return;
  waiting = true;
  again = false;
  onTried.listen = answered;
  tryChannel({
    ask: nextAsk(),
    id: one.id,
    name: nameOf(one),
    ...(now.moved.entry && { entry: now.points.entry }),
    ...(now.moved.through && { through: asWritten(one, now.points.through) }),
  });
}

/** Has the cells of the picked one's cavity found before a hand moves it: the first try takes several times as long. */
export function readyPicked(): void {
  const one = pickedChannel.peek();
  if (one && !held.peek() && !waiting) tryChannel({ ask: nextAsk(), id: one.id, name: nameOf(one) });
}

let toWrite: ReturnType<typeof setTimeout> | undefined;
/** How long an answer is waited for before the plan is written without it, ms. */
const patience = 1500;

function answered(): void {
  waiting = false;
  if (again) ask();
  else if (toWrite !== undefined) write();
}

/** Lets go: written as soon as it is known where on the outline it opens. */
export function release(): void {
  clearTimeout(toWrite);
  toWrite = undefined;
  if (!held.peek()) return;
  if (waiting) toWrite = setTimeout(write, patience);
  else write();
}

export function cancelHold(): void {
  clearTimeout(toWrite);
  toWrite = undefined;
  held.value = undefined;
  tried.value = undefined;
}

function write(): void {
  clearTimeout(toWrite);
  toWrite = undefined;
  waiting = false;
  const [now, text] = [held.peek(), plan.peek()?.text];
  const one = movableChannels.peek().find(({ id }) => id === now?.id);
  if (!now || !one || text === undefined) return;
  const answer = tried.peek()?.ask === lastAsk() ? tried.peek() : undefined;
  const entry = now.moved.entry ? answer?.entry?.own : undefined;
  const through = now.moved.through ? asWritten(one, now.points.through) : undefined;
  if (!entry && !through) {
    fault.value = `${one.id} stays where it was: the mold is not laid out far enough yet to move it.`;
    cancelHold();
    return;
  }
  const move = { ...(entry && { entry }), ...(through && { through }) };
  if (!put(moveChannel(text, nameOf(one), move, channelCompany.peek()))) cancelHold();
}

let resting: ReturnType<typeof setTimeout> | undefined;
/** Keys pressed within this time of one another, ms, are one edit. */
const burst = 350;

/** A small step by keys, mm along x and y of the disc as seen from above. */
export function nudgePoint(point: ChannelPoint, [dx, dy]: Point2): void {
  const points = shownPoints.peek();
  if (!points) return;
  const at = typeof point === 'number' ? points.through[point]?.at : points[point];
  if (!at) return;
  holdPoint(point, [at[0] + dx, at[1] + dy]);
  clearTimeout(resting);
  resting = setTimeout(release, burst);
}

/** A way point more in the middle of its longest straight piece. */
export function addInMiddle(): void {
  const [one, points] = [pickedChannel.peek(), shownPoints.peek()];
  if (!one || !points) return;
  const places = fromAxis(one, points);
  const lengths = places.slice(1).map(([x, y], i) => Math.hypot(x - places[i][0], y - places[i][1]));
  const k = lengths.indexOf(Math.max(...lengths));
  addPoint(k, middle(places[k], places[k + 1]));
  release();
}

/** Its places from the axis outward: end or entry first, then the way points. */
export const fromAxis = (
  { kind }: Pick<Channel, 'kind'>,
  { entry, end, through }: ChannelPoints,
): Point2[] => {
  const ways = through.map(({ at }) => at);
  return kind === 'gate' ? [end, ...ways, entry] : [entry, ...ways, end];
};

export const middle = (a: Point2, b: Point2): Point2 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

export function takeAway(one: MovableChannel): void {
  const text = plan.peek()?.text;
  if (text !== undefined && put(removeChannel(text, nameOf(one), channelCompany.peek())))
    picked.value = undefined;
}

/** Asks for gates and vents for one placement and its like, or for all; written into the plan when they come. */
export function propose(only?: string): void {
  onProposed.listen = ({ text, fault: why }) => {
    if (text !== undefined) put({ text });
    else if (why !== undefined) put({ fault: why });
  };
  requestProposal(only);
}
