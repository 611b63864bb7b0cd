import type { TextSpot } from '../findings/index.ts';
import type { TriangleMesh } from '../kernel/index.ts';
import { type Point2, shadowAlong } from './edge-along.ts';
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
  readonly at?: TextSpot;
}

export interface Target {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly mesh: TriangleMesh;
}

/**
 * A straight gate from the well's edge along the radius to the cavity's nearest edge. Undefined where the radius
 * through the placement's origin misses its shadow or the shadow already reaches the well.
 */
export function straightGate(target: Target, wellRadius: number, spec: ChannelSpec): Channel | undefined {
  const far = Math.hypot(target.x, target.y);
  if (far <= wellRadius) return undefined;
  const along = (radius: number): Point2 => [(target.x / far) * radius, (target.y / far) * radius];
  const start = wellRadius - overlap * spec.width;
  const shadow = shadowAlong(target.mesh, along(start), along(far * 2));
  if (!shadow || shadow.first <= 0) return undefined;
  const edge = start + shadow.first * (far * 2 - start);
  if (edge <= wellRadius) return undefined;
  return {
    id: `gate-${target.id}`,
    kind: 'gate',
    placement: target.id,
    from: along(start),
    to: along(edge + overlap * spec.width),
    ...spec,
  };
}

/** A straight vent from the cavity's outermost edge along the radius through the rim. Undefined as for gates. */
export function straightVent(target: Target, discRadius: number, spec: ChannelSpec): Channel | undefined {
  const far = Math.hypot(target.x, target.y);
  if (far === 0) return undefined;
  const along = (radius: number): Point2 => [(target.x / far) * radius, (target.y / far) * radius];
  const shadow = shadowAlong(target.mesh, [0, 0], along(discRadius));
  if (!shadow) return undefined;
  const edge = shadow.last * discRadius;
  return {
    id: `vent-${target.id}`,
    kind: 'vent',
    placement: target.id,
    from: along(edge - overlap * spec.width),
    to: along(discRadius + overlap * spec.width),
    ...spec,
  };
}
