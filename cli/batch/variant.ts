import type { Setting } from '../../src/plan/index.ts';

/** One mold of a batch: the plan with some fields set. */
export interface Variant {
  /** Its folder's name; no two of a batch are alike. */
  readonly name: string;
  /** What it was called in the table, letters and blanks as written. */
  readonly given?: string;
  readonly settings: readonly Setting[];
  /** Its row in the table of variants, the head being row 1. */
  readonly row?: number;
  /** What is wrong with the row itself; then it has no settings. */
  readonly fault?: string;
}

/** Most variants of one batch: a slip in a step must not ask for a million molds. */
export const mostVariants = 10_000;
