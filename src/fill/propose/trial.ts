import { movePoint, type Point2, rotation, type Vec3 } from '../../geometry/index.ts';
import { type Channel, channelId, type DrawAnew, type Mold, type Placement } from '../../mold/index.ts';
import type { ChannelEntry } from '../../plan/index.ts';
import type { CavityRoom } from '../cavity.ts';
import type { Pocket } from '../conditions.ts';
import { sweptIn } from '../of-mold.ts';
import { asPlanLists, type Listed, type Lists } from './lists.ts';

/** Like placements, and what is tried with them: what fits the first has to find room at each. */
export interface Trial {
  readonly mold: Mold;
  readonly kind: readonly Placement[];
  readonly room: CavityRoom;
  readonly anew: DrawAnew;
  /** Gates and vents of all others, and those of these that somebody chose. */
  readonly base: Lists;
  /** Channels of the others, as they are drawn. */
  readonly drawn: readonly Channel[];
}

const lists = ({ base }: Trial, gates: readonly Listed[], vents: readonly Listed[]): Lists => ({
  gates: [...base.gates, ...gates],
  vents: [...base.vents, ...vents],
});

/** The channels of the first, with these more. */
export function channelsWith(trial: Trial, gates: readonly Listed[], vents: readonly Listed[]): Channel[] {
  const { anew, drawn, kind } = trial;
  const all = anew.draw(asPlanLists(lists(trial, gates, vents)), drawn);
  return all.filter(({ placement }) => placement === kind[0].id);
}

/** Air that stays in the first under the usual assumption. */
export const airWith = (trial: Trial, channels: readonly Channel[]): readonly Pocket[] | undefined =>
  trial.room.air(sweptIn(trial.mold, trial.kind[0], channels));

/** The last listed of its sort at a placement, by the name it gets. */
function lastAt(sort: 'gate' | 'vent', { gates, vents }: Lists, placement: string): string {
  const list = sort === 'gate' ? gates : vents;
  return channelId(sort, placement, list.filter(({ placements }) => placements.includes(placement)).length);
}

/** Ways that are searched keep a little more than the wall: what is straight leaves it to them, mm. */
const spareWall = 0.15;

/** One channel more, straight if it has room so at each of the placements, else routed; undefined where it has none. */
export function fitted(
  trial: Trial,
  sort: 'gate' | 'vent',
  { gates, vents }: Pick<Lists, 'gates' | 'vents'>,
  spec: Omit<Listed, 'entry' | 'path' | 'placements'>,
  entry: ChannelEntry,
  paths: readonly ('straight' | 'routed')[] = ['straight', 'routed'],
): { readonly listed: Listed; readonly channels: readonly Channel[] } | undefined {
  const { anew, drawn, kind } = trial;
  for (const path of paths) {
    const drawnFor = (some: readonly Placement[]) => {
      const listed: Listed = { ...spec, placements: some.map(({ id }) => id), entry, path };
      const tried = lists(
        trial,
        sort === 'gate' ? [...gates, listed] : gates,
        sort === 'vent' ? [...vents, listed] : vents,
      );
      const all = anew.draw(asPlanLists(tried), drawn);
      const fits = some.every(({ id }) => {
        const name = lastAt(sort, tried, id);
        const channel = all.find((one) => one.id === name);
        return channel !== undefined && anew.isFree(channel, all, path === 'straight' ? spareWall : 0);
      });
      return fits && { listed, channels: all.filter(({ placement }) => placement === kind[0].id) };
    };
    // Most fail at the first already.
    const fit = drawnFor(kind.slice(0, 1)) && drawnFor(kind);
    if (fit) return fit;
  }
  return undefined;
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
