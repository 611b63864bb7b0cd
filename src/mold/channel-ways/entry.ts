import type { Point2 } from '../../geometry/index.ts';
import type { ChannelEntry } from '../../plan/index.ts';
import { endOf, type Target } from '../channels.ts';
import { nearestOnRing, type OnRing, ringCrossings } from './ring.ts';

/** Where a channel opens into a cavity, seen from above. */
export interface Entry {
  readonly at: Point2;
  /** Square to the outline, out of the cavity. */
  readonly outward: Point2;
  /** How far from the outline the plan puts it, mm. */
  readonly off: number;
}

/** A placement as channels see it: its shadow's outline, counter-clockwise, mold frame. */
export interface EntryTarget extends Target {
  readonly outline: readonly Point2[];
  readonly turnRad: number;
  readonly scale: number;
}

/**
 * The place of the outline that the plan names: an end as straight channels find it, the side left or right seen from the axis, or a
 * point in the master's own frame, whose +x points outward at turn 0. `width` is that of the channel, over which the
 * outline's direction is taken.
 */
export function entryOn(
  target: EntryTarget,
  entry: Exclude<ChannelEntry, { named: string }>,
  width: number,
): Entry | undefined {
  const { outline, x, y } = target;
  if ('end' in entry) {
    const at =
      entry.end === 'inner' || entry.end === 'outer'
        ? endPoint(target, entry.end)
        : sideOf(target, entry.end);
    return at && onOutline(outline, nearestOnRing(outline, at), width, 0);
  }
  const own = Math.atan2(y, x) + target.turnRad;
  if ('angleRad' in entry) {
    const angle = own + entry.angleRad;
    const last = ringCrossings(outline, [x, y], [Math.cos(angle), Math.sin(angle)]).at(-1);
    return last && onOutline(outline, last, width, 0);
  }
  const [u, v] = [entry.x * target.scale, entry.y * target.scale];
  const [c, s] = [Math.cos(own), Math.sin(own)];
  const wanted: Point2 = [x + c * u - s * v, y + s * u + c * v];
  const nearest = nearestOnRing(outline, wanted);
  return onOutline(outline, nearest, width, Math.hypot(nearest.at[0] - wanted[0], nearest.at[1] - wanted[1]));
}

/** Points that reach as far to within this are of one straight side, mm. */
const level = 0.05;

function endPoint(target: Target, end: 'inner' | 'outer'): Point2 | undefined {
  const found = endOf(target, end);
  return found && [found.radius * found.x, found.radius * found.y];
}

/** Where it reaches farthest to one side of the radius through the middle; of a side along the radius its middle. */
function sideOf({ outline, x, y }: EntryTarget, side: 'left' | 'right'): Point2 | undefined {
  const radius = Math.hypot(x, y);
  if (radius === 0) return undefined;
  const sign = side === 'left' ? 1 : -1;
  const reach = ([px, py]: Point2): number => (sign * (x * py - y * px)) / radius;
  const far = Math.max(...outline.map(reach)) - level;
  const farthest = outline.filter((point) => reach(point) >= far);
  const out = farthest.map(([px, py]) => (px * x + py * y) / radius);
  const middle = (Math.min(...out) + Math.max(...out)) / 2;
  const aside = sign * (far + level);
  return [(x * middle - y * aside) / radius, (y * middle + x * aside) / radius];
}

/** The outline's direction is that of the chord from half a width before the point to half a width after. */
function onOutline(outline: readonly Point2[], { at, side }: OnRing, width: number, off: number): Entry {
  const before = walk(outline, side, at, -width / 2);
  const after = walk(outline, side, at, width / 2);
  const [dx, dy] = [after[0] - before[0], after[1] - before[1]];
  const length = Math.hypot(dx, dy);
  return { at, outward: length > 0 ? [dy / length, -dx / length] : [1, 0], off };
}

/** The point some way on along the ring, backward where it is negative. */
function walk(ring: readonly Point2[], side: number, from: Point2, by: number): Point2 {
  const step = by < 0 ? -1 : 1;
  let [at, left, next] = [from, Math.abs(by), by < 0 ? side : side + 1];
  for (let turns = 0; turns < ring.length; turns++) {
    const to = ring[(next + ring.length) % ring.length];
    const length = Math.hypot(to[0] - at[0], to[1] - at[1]);
    if (length >= left && length > 0) {
      const t = left / length;
      return [at[0] + (to[0] - at[0]) * t, at[1] + (to[1] - at[1]) * t];
    }
    left -= length;
    at = to;
    next += step;
  }
  return at;
}
