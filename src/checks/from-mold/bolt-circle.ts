import { type BoltCircle, boltsOn, type Mold } from '../../mold/index.ts';
import { threadDiameter } from '../../tables/index.ts';
import { leftOut } from './not-given.ts';

/** The bolts the plan gives, or what it leaves out of them; neither where it has none. */
export function boltCircle(bench: Mold['bench']): {
  readonly bolts?: BoltCircle;
  readonly missing: readonly string[];
} {
  const given = bench.closing?.bolts;
  if (!given) return { missing: [] };
  const missing = leftOut([['closing.bolts.circle', given.circle]]);
  if (threadDiameter(given.size) === undefined) missing.push('closing.bolts.size');
  const bolts = boltsOn(bench);
  return bolts ? { bolts, missing } : { missing };
}
