import type { UnitSystem } from '../../findings/index.ts';
import { showBox } from '../../wording/index.ts';

interface ListColumn {
  readonly title: string;
  /** Share of a page's width. */
  readonly share: number;
  readonly align?: 'left' | 'right';
}

/** One table of the list, as it stands on paper and in the terminal. */
export interface Listing {
  readonly title: string;
  readonly columns: readonly ListColumn[];
  readonly rows: readonly (readonly string[])[];
}

/** Sizes in both systems, or where a line is narrow in the person's own. */
export type Sizes = 'both' | 'own';

/** Sides of a box, mm. */
export const sizeText = (sides: readonly number[], units: UnitSystem, sizes: Sizes): string =>
  showBox(sides, units, sizes === 'both');
