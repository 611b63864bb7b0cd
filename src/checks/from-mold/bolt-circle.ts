import type { Mold } from '../../mold/index.ts';
import { threadDiameter } from '../../tables/index.ts';
import { leftOut } from './not-given.ts';

/** The bolts of the can, seen from above; shanks as wide as their thread. Lengths in mm. */
export interface BoltCircle {
  readonly radius: number;
  /** Radius of the circle they stand on. */
  readonly circle: number;
  readonly count: number;
  /** Left out: they may stand anywhere on their circle. */
  readonly startRad?: number;
}

/** The bolts the plan gives, or what it leaves out of them; neither where it has none. */
export function boltCircle(bench: Mold['bench']): {
  readonly bolts?: BoltCircle;
  readonly missing: readonly string[];
} {
  const given = bench.closing?.bolts;
  if (!given) return { missing: [] };
  const { circle, count, size, startRad } = given;
  const diameter = threadDiameter(size);
  const missing = leftOut([['closing.bolts.circle', circle]]);
  if (diameter === undefined) missing.push('closing.bolts.size');
  if (circle === undefined || diameter === undefined) return { missing };
  const start = startRad !== undefined && { startRad };
  return { bolts: { radius: diameter / 2, circle: circle / 2, count, ...start }, missing };
}
