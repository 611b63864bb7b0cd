import type { Point2, TriangleMesh } from '../geometry/index.ts';
import { shadowAlong } from './edge-along.ts';
import type { Channel } from './mold.ts';

/**
 * How far a channel reaches into the cavity and into the well or past the rim, as a share of its width, so that they
 * are sure to open into each other.
 */
const overlap = 0.5;

export interface ChannelSpec {
  readonly width: number;
  readonly depth: number;
  readonly half: 'lower' | 'upper';
  /** A vent that may open into another. */
  readonly joins?: true;
}

export const channelId = (kind: Channel['kind'], placement: string): string => `${kind}-${placement}`;

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
export function straightGate(target: Target, wellRadius: number, spec: ChannelSpec): Channel | undefined {
  const end = endOf(target, 'inner');
  const past = overlap * spec.width;
  if (!end || end.radius <= wellRadius) return undefined;
  const along = (radius: number): Point2 => [radius * end.x, radius * end.y];
  return {
    id: channelId('gate', target.id),
    kind: 'gate',
    placement: target.id,
    from: along(wellRadius - past),
    to: along(end.radius + past),
    ...spec,
  };
}

/** A straight vent from the cavity's outer end, found in the same way, through the rim. Undefined past the rim. */
export function straightVent(target: Target, discRadius: number, spec: ChannelSpec): Channel | undefined {
  const end = endOf(target, 'outer');
  const past = overlap * spec.width;
  if (!end || end.radius >= discRadius) return undefined;
  const along = (radius: number): Point2 => [radius * end.x, radius * end.y];
  return {
    id: channelId('vent', target.id),
    kind: 'vent',
    placement: target.id,
    from: along(Math.max(0, end.radius - past)),
    to: along(discRadius + past),
    ...spec,
  };
}

/** The inner or outer end of a master: its distance from the axis and the direction (unit vector) it lies in. */
function endOf(
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
