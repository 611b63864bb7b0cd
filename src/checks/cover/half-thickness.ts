import { type Finding, finding } from '../../findings/index.ts';
import type { Vec3 } from '../../geometry/index.ts';
import type { Mold, Process } from '../../mold/index.ts';
import { nextStock } from '../../tables/index.ts';
import { floorOf, isUnder, type ProcessFloor } from '../from-mold/index.ts';

export interface HalfThickness {
  readonly lower: number;
  readonly upper: number;
  readonly limit: number;
  readonly process: Process;
  readonly floor?: ProcessFloor;
}

export function halfThicknessOf(mold: Mold): HalfThickness {
  const { disc, limits, process } = mold;
  const floor = floorOf(mold);
  return {
    lower: disc.lower,
    upper: disc.upper,
    limit: limits.cover,
    process,
    ...(floor && { floor }),
  };
}

/** The least a half has to keep: the plan's limit, or what its process makes whole where that is more. */
export const leastOf = ({ limit, floor }: HalfThickness): number => Math.max(limit, floor?.least ?? 0);

export const coverSource = 'extent of the placed mesh against the thickness of the half';

interface Thin {
  readonly subject: string;
  readonly place: Vec3;
  readonly cover: number;
  /** How far the thing stands into the half. */
  readonly reach: number;
}

/** Of a cover that is less than it has to be: through, under what the process makes whole, or under the limit. */
export function tooThin(
  which: 'thing' | 'parting',
  half: 'lower' | 'upper',
  { subject, place, cover, reach }: Thin,
  halves: HalfThickness,
): Finding {
  const { limit, floor, process } = halves;
  const needed = reach + leastOf(halves);
  if (isUnder(cover, floor)) {
    const { least, process: making } = floor;
    const values = { which, half, measured: cover, limit: least, making, needed };
    return finding('cover.under-process', { subject, place, values });
  }
  // Stock comes in steps only where halves are cut from it.
  const stock = process === 'rubber' ? nextStock(needed) : undefined;
  const values = {
    which,
    half,
    measured: cover,
    limit,
    process,
    needed,
    stock: stock?.name,
    stockThickness: stock?.thickness,
  };
  if (cover > 0) return finding('cover.thin', { subject, place, values });
  const through = { ...values, reach, thickness: halves[half] };
  return finding('cover.through', { subject, place, values: through });
}
