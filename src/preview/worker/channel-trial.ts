import { type ShownCavity, shownCavity } from '../../fill/index.ts';
import type { Point2 } from '../../geometry/index.ts';
import {
  type Channel,
  type DrawAnew,
  drawAnew,
  type Memoize,
  type Mold,
  type Placement,
} from '../../mold/index.ts';
import { type ChannelMove, type Plan, withMovedChannel } from '../../plan/index.ts';
import { fillGrid } from './fill-grid.ts';
import type { TriedChannel, TryChannel } from './messages.ts';
import { turnOf } from './show-filling.ts';

/** Gates and vents of a placed mold tried elsewhere. What does not change from one try to the next is found once. */
export class ChannelTrial {
  private anew: DrawAnew | undefined;
  private cavity: { readonly placement: string; readonly shown: ShownCavity | undefined } | undefined;

  constructor(
    private readonly plan: Plan,
    private readonly mold: Mold,
    private readonly memoize: Memoize,
  ) {}

  run({ ask, id, name, entry: wanted, through }: TryChannel): TriedChannel {
    const start = performance.now();
    const { plan, mold } = this;
    const placement = mold.placements.find((one) => one.id === name.placement);
    this.anew ??= drawAnew(plan, mold, this.memoize);
    const at = wanted && this.anew.onOutline(name.placement, wanted)?.at;
    const entry = placement && at && { at, own: ownPlace(placement, at) };
    const move: ChannelMove = { ...(entry && { entry: entry.own }), ...(through && { through }) };
    const others = mold.channels.filter((one) => one.id !== id);
    const channels = this.anew.draw(withMovedChannel(plan, name, move), others);
    const channel = channels.find((one) => one.id === id);
    return {
      ask,
      id,
      placement: name.placement,
      isFree: channel !== undefined && this.anew.isFree(channel, channels),
      ...(entry && { entry }),
      ...(channel && { run: channel.run.map((station) => station.at) }),
      ...(placement && channel && this.fill(placement, channels)),
      took: performance.now() - start,
    };
  }

  private fill(placement: Placement, channels: readonly Channel[]): Pick<TriedChannel, 'filling' | 'air'> {
    const { id } = placement;
    if (this.cavity?.placement !== id) this.cavity = { placement: id, shown: shownCavity(this.mold, id) };
    const { shown } = this.cavity;
    const filled = shown?.fill(channels);
    if (!shown || !filled) return {};
    const turnRad = turnOf(placement);
    return {
      filling: { subject: id, turnRad, grid: fillGrid(shown, filled.order, turnRad) },
      // Under a gate the report has a finding of its own.
      air: filled.air
        .filter(({ where }) => where !== 'gate')
        .map(({ stays, volumes, place, where, sealed }) => ({ stays, volumes, place, where, sealed })),
    };
  }
}

/** A place of the mold in the master's own frame, as fine as a plan is written. */
function ownPlace({ x, y, turnRad, scale }: Placement, [px, py]: Point2): { x: number; y: number } {
  const own = Math.atan2(y, x) + turnRad;
  const [c, s] = [Math.cos(own), Math.sin(own)];
  const fine = (value: number): number => Math.round((value / scale) * 100) / 100 + 0;
  return { x: fine(c * (px - x) + s * (py - y)), y: fine(c * (py - y) - s * (px - x)) };
}
