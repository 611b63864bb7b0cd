import { toDegrees } from '../geometry/index.ts';
import type { Placement } from './mold.ts';

/** A tipping about an axis of the master's own file. */
export interface Tip {
  readonly axis: 'x' | 'y';
  readonly degrees: number;
}

/** Smaller tips come of rounding, degrees. */
const least = 0.05;

/**
 * How a master lies: its tipping about x, then y of its own file; what turns it flat on the disc is its turn. None
 * where it lies as in its file.
 */
export function tipsOf({ matrix, scale }: Pick<Placement, 'matrix' | 'scale'>): Tip[] {
  const entry = (row: number, column: number): number => matrix[4 * column + row] / scale;
  const tips: Tip[] = [
    { axis: 'x', degrees: toDegrees(Math.atan2(entry(2, 1), entry(2, 2))) },
    { axis: 'y', degrees: toDegrees(Math.asin(Math.max(-1, Math.min(1, -entry(2, 0))))) },
  ];
  return tips.filter((tip) => Math.abs(tip.degrees) >= least);
}
