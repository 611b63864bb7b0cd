import { movePoint, type Point2, rotation, type Vec3 } from '../../geometry/index.ts';
import { type Channel, type DrawAnew, type Mold, type Placement, runLength } from '../../mold/index.ts';
import { type ChannelEntry, channelDefaults } from '../../plan/index.ts';
import type { CavityRoom } from '../cavity.ts';
import type { Pocket } from '../conditions.ts';
import { sweptIn } from '../of-mold.ts';
import { asPlanLists, type Listed } from './lists.ts';

/** A gate or vent of one more entry of the plan, drawn at each of its placements. */
export interface Way {
  readonly sort: 'gate' | 'vent';
  readonly listed: Listed;
  /** One for each of the like placements, in their order. */
  readonly channels: readonly Channel[];
}

/** Like placements, and what is tried with them: what fits the first has to find room at each. */
export interface Trial {
  readonly mold: Mold;
  readonly kind: readonly Placement[];
  readonly room: CavityRoom;
  readonly anew: DrawAnew;
  /** Channels of all others, and those of these that somebody chose. */
  readonly drawn: readonly Channel[];
  /** Ways looked for so far, since one that is not there takes long to miss. */
  readonly known: Map<string, Way | undefined>;
}

/** Ways that are searched keep a little more than the wall: what is straight leaves it to them, mm. */
const spareWall = 0.15;

/** One channel more, if it is there and keeps its walls to all that stays; undefined where it is not. */
function wayOf(trial: Trial, sort: Way['sort'], listed: Listed, spare: number): Way | undefined {
  const key = JSON.stringify([sort, { ...listed, placements: [], at: undefined }, spare]);
  if (trial.known.has(key)) return trial.known.get(key);
  // Most fail at the first already.
  const { kind } = trial;
  const first = drawnFor(trial, sort, listed, kind.slice(0, 1), { key, spare });
  const channels = first && kind.length > 1 ? drawnFor(trial, sort, listed, kind, { key, spare }) : first;
  const way = channels && { sort, listed, channels };
  trial.known.set(key, way);
  return way;
}

function drawnFor(
  { anew, drawn }: Trial,
  sort: Way['sort'],
  listed: Listed,
  some: readonly Placement[],
  { key, spare }: { readonly key: string; readonly spare: number },
): readonly Channel[] | undefined {
  const one = { ...listed, placements: some.map(({ id }) => id) };
  const lists = { gates: sort === 'gate' ? [one] : [], vents: sort === 'vent' ? [one] : [] };
  // Numbers are given when all is known; until then each is told from all others by what it is.
  const others = drawn.map((channel) => ({ ...channel, id: `kept ${channel.id}` }));
  const made = anew
    .draw(asPlanLists(lists), others)
    .map((channel) => ({ ...channel, id: `${channel.placement} ${key}` }));
  if (made.length < some.length) return undefined;
  return made.every((channel) => anew.isFree(channel, [...others, ...made], spare)) ? made : undefined;
}

/** The way of an entry, straight if there is room, else routed, else straight with just the room it takes, that also keeps its walls to others of the same proposal. */
export function fitted(
  trial: Trial,
  sort: Way['sort'],
  spec: Omit<Listed, 'entry' | 'path' | 'placements'>,
  entry: ChannelEntry,
  beside: readonly Way[],
): Way | undefined {
  const placements = trial.kind.map(({ id }) => id);
  const ways = [
    { path: 'straight', spare: spareWall },
    { path: 'routed', spare: 0 },
    { path: 'straight', spare: 0 },
  ] as const;
  for (const { path, spare } of ways) {
    const way = wayOf(trial, sort, { ...spec, placements, entry, path }, spare);
    if (way?.channels.every((channel) => isFreeOf(trial, channel, beside))) return way;
  }
  return undefined;
}

/** Two gates of one cavity keep a wall between them, for each is cut; vents may run together. */
function isFreeOf({ anew }: Trial, channel: Channel, beside: readonly Way[]): boolean {
  const others = beside.flatMap(({ channels }) => channels);
  const among =
    channel.kind === 'gate'
      ? others.map((other) => (other.kind === 'gate' ? { ...other, placement: '' } : other))
      : others;
  return anew.isFree(channel, among);
}

export const lengthOf = ({ channels: [first] }: Way): number => runLength(first.run);

/** Where a way opens into the first cavity. */
export function mouthOf({ sort, channels: [{ run }] }: Way): Point2 {
  return run[sort === 'gate' ? run.length - 1 : 0].at;
}

/** The channels of the first with these more. */
export const channelsWith = ({ drawn, kind: [{ id }] }: Trial, ways: readonly Way[]): Channel[] => [
  ...drawn.filter(({ placement }) => placement === id),
  ...ways.map(({ channels: [first] }) => first),
];

/** Air that stays in the first under the usual assumption; undefined where no gate opens into it. */
export const airWith = (
  trial: Trial,
  ways: readonly Way[],
  more: readonly Channel[] = [],
): readonly Pocket[] | undefined =>
  trial.room.air(sweptIn(trial.mold, trial.kind[0], [...channelsWith(trial, ways), ...more]));

export const airIn = (pockets: readonly Pocket[]): number =>
  pockets.reduce((sum, { volume }) => sum + volume, 0);

/** How far the mouth of a channel that has no way yet reaches out of the outline, mm. */
const stubOut = 1.5;

/** A mouth at a place of the outline of the first, to see what it would do before a way is looked for. */
export function stubAt(
  { kind: [one] }: Pick<Trial, 'kind'>,
  sort: Way['sort'],
  spec: Listed,
  at: Point2,
): Channel {
  const { width = channelDefaults[sort].width, depth = channelDefaults[sort].depth } = spec;
  const { half = channelDefaults[sort].half, section = channelDefaults[sort].section } = spec;
  const far = Math.hypot(at[0] - one.x, at[1] - one.y);
  const [dx, dy] = far > 0 ? [(at[0] - one.x) / far, (at[1] - one.y) / far] : [1, 0];
  const along = (by: number) => ({ at: [at[0] + by * dx, at[1] + by * dy] as const, width, depth });
  const outward = [along(-width / 2), along(stubOut)];
  const run = sort === 'vent' ? outward : [...outward].reverse();
  return { id: 'stub', kind: sort, placement: one.id, run, laps: [0, 0], section, half };
}

/** A point of the first cavity, turned back as it is filled, where it is in the mold. */
export const inMold = ([one]: readonly Placement[], at: Vec3): Vec3 =>
  movePoint(rotation('z', Math.atan2(one.y, one.x)), at);

/** A point in the mold as the plan names it: in the master's own frame, mm, as fine as a plan is written. */
export function entryAt({ x, y, turnRad, scale }: Placement, [px, py]: Point2): ChannelEntry {
  const own = Math.atan2(y, x) + turnRad;
  const [c, s] = [Math.cos(own), Math.sin(own)];
  const fine = (value: number): number => Math.round((value / scale) * 100) / 100 + 0;
  return { x: fine(c * (px - x) + s * (py - y)), y: fine(c * (py - y) - s * (px - x)) };
}

/** Where a point lies seen from the middle of a cavity and the axis. */
export type Side = 'inner' | 'outer' | 'left' | 'right';
export function sideOf({ x, y }: Placement, [px, py]: Point2): Side {
  const radius = Math.hypot(x, y);
  const out = ((px - x) * x + (py - y) * y) / radius;
  const left = ((py - y) * x - (px - x) * y) / radius;
  if (Math.abs(out) >= Math.abs(left)) return out < 0 ? 'inner' : 'outer';
  return left > 0 ? 'left' : 'right';
}
