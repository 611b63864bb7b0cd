import { unfilled } from './outcome.ts';
import { type Share, wilson } from './wilson.ts';
import type { Casting } from './yields.ts';

/** What the forecast said of a cavity as it was cut: air stays in all, in some, in none of the range of assumptions. */
export type Told = 'all' | 'some' | 'none';

/** How many castings stayed short or porous of those the forecast said one thing of. */
export interface Hits {
  readonly told: Told;
  readonly failed: Share;
}

/** Whether a casting has a fault that air or missing metal makes. */
export const isUnfilled = ({ came }: Pick<Casting, 'came'>): boolean =>
  came.some((one) => one !== 'good' && unfilled.includes(one));

/**
 * How often the forecast was right. Castings of cavities it said nothing of are left out, and those whose one fault has
 * nothing to do with filling count as filled. The castings must be of pours with gates and vents as they were forecast.
 */
export function forecastHits(castings: readonly Casting[], told: ReadonlyMap<string, Told>): Hits[] {
  return (['all', 'some', 'none'] as const).map((kind) => {
    const mine = castings.filter(({ id }) => told.get(id) === kind);
    return { told: kind, failed: wilson(mine.filter(isUnfilled).length, mine.length) };
  });
}
