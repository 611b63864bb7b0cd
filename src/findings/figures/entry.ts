import type { Unit } from '../value.ts';

/** What is known of a figure beforehand. */
export interface FigureEntry {
  /** A few words, for a table under its check's heading. */
  readonly label: string;
  readonly unit: Unit;
  /** One sentence. */
  readonly means: string;
}
