import type { Point2, TriangleMesh } from '../geometry/index.ts';
import { shadowAlong } from './edge-along.ts';
import type { Channel, ChannelKind, Station } from './mold.ts';

/**
 * How far a channel reaches into the cavity and into the well or past the rim, as a share of its width, so that they
 * are sure to open into each other.
 */
const overlap = 0.5;

export const lapsOf = ({ width, endWidth }: Pick<ChannelSpec, 'width' | 'endWidth'>) =>
  [overlap * width, overlap * endWidth] as const;

/** How a channel is cut: as wide and deep at its beginning and at its end. */
export interface ChannelSpec extends Pick<Channel, 'half' | 'section' | 'joins'> {
  readonly width: number;
  readonly depth: number;
  readonly endWidth: number;
  readonly endDepth: number;
}

/** A way, its size changing evenly from one end to the other. */
function stationsAlong(way: readonly Point2[], spec: ChannelSpec): Station[] {
  const steps = way.map((at, i) => (i === 0 ? 0 : Math.hypot(at[0] - way[i - 1][0], at[1] - way[i - 1][1])));
  const whole = steps.reduce((sum, step) => sum + step, 0);
  let passed = 0;
  return way.map((at, i) => {
    passed += steps[i];
    const t = whole > 0 ? passed / whole : 0;
    return {
      at,
      width: spec.width + (spec.endWidth - spec.width) * t,
      depth: spec.depth + (spec.endDepth - spec.depth) * t,
    };
  });
}

/** A channel cut along a way. */
export function channelAlong(
  { id, kind, placement, spec }: Pick<Channel, 'id' | 'kind' | 'placement'> & { readonly spec: ChannelSpec },
  way: readonly Point2[],
  laps: Channel['laps'],
): Channel {
  const { section, half, joins } = spec;
  const run = stationsAlong(way, spec);
  return { id, kind, placement, run, laps, section, half, ...(joins && { joins }) };
}

/** Channels of one kind and placement are numbered from the second on. */
export const channelId = (kind: ChannelKind, placement: string, number = 1): string =>
  number === 1 ? `${kind}-${placement}` : `${kind}-${placement}-${number}`;

export interface Target {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly mesh: TriangleMesh;
}

/**
 * A crossing counts as the master's inner (or outer) end within this share of its extent along the radius; beyond it
 * the channel would run along the master, and goes to its nearest (or farthest) point instead.
 */
const endShare = 1 / 3;

/**
 * A straight gate from the well's edge to the cavity's inner end: along the radius through the placement's middle
 * where that meets the master's inner third, else along the radius through its point nearest the axis. Undefined
 * where the master reaches the well.
 */
export function straightGate(
  id: string,
  target: Target,
  wellRadius: number,
  spec: ChannelSpec,
): Channel | undefined {
  const end = endOf(target, 'inner');
  const laps = lapsOf(spec);
  if (!end || end.radius <= wellRadius) return undefined;
  const along = (radius: number): Point2 => [radius * end.x, radius * end.y];
  const way = [along(wellRadius - laps[0]), along(end.radius + laps[1])];
  return channelAlong({ id, kind: 'gate', placement: target.id, spec }, way, laps);
}

/** A straight vent from the cavity's outer end, found in the same way, through the rim. Undefined past the rim. */
export function straightVent(
  id: string,
  target: Target,
  discRadius: number,
  spec: ChannelSpec,
): Channel | undefined {
  const end = endOf(target, 'outer');
  const laps = lapsOf(spec);
  if (!end || end.radius >= discRadius) return undefined;
  const along = (radius: number): Point2 => [radius * end.x, radius * end.y];
  const way = [along(Math.max(0, end.radius - laps[0])), along(discRadius + laps[1])];
  return channelAlong({ id, kind: 'vent', placement: target.id, spec }, way, laps);
}

/** The inner or outer end of a master: its distance from the axis and the direction (unit vector) it lies in. */
export function endOf(
  { mesh, x, y }: Target,
  which: 'inner' | 'outer',
): { readonly radius: number; readonly x: number; readonly y: number } | undefined {
  const { near, far } = radialExtent(mesh);
  const middle = Math.hypot(x, y);
  // A master round the axis itself has no inner end.
  if (middle === 0 || near.radius === 0) return undefined;
  const reach = far.radius + 1;
  const shadow = shadowAlong(mesh, [0, 0], [(x / middle) * reach, (y / middle) * reach]);
  const deep = endShare * (far.radius - near.radius);
  const onRadius = (share: number) => ({ radius: share * reach, x: x / middle, y: y / middle });
  if (which === 'inner') {
    return shadow && shadow.first * reach <= near.radius + deep ? onRadius(shadow.first) : near;
  }
  return shadow && shadow.last * reach >= far.radius - deep ? onRadius(shadow.last) : far;
}

function radialExtent({ positions }: TriangleMesh) {
  let [near, nearest] = [0, Number.POSITIVE_INFINITY];
  let [far, farthest] = [0, 0];
  for (let i = 0; i < positions.length; i += 3) {
    const square = positions[i] * positions[i] + positions[i + 1] * positions[i + 1];
    if (square < nearest) [near, nearest] = [i, square];
    if (square > farthest) [far, farthest] = [i, square];
  }
  const end = (i: number) => {
    const radius = Math.hypot(positions[i], positions[i + 1]);
    return { radius, x: positions[i] / radius, y: positions[i + 1] / radius };
  };
  return { near: end(near), far: end(far) };
}
