import type { Point2 } from '../../kernel/index.ts';

/** What a reader of drawings found: paths in mm, y up, curves already drawn as chords. */
export interface DrawnPaths {
  /** Paths the file itself closes; the last point is not repeated. */
  readonly closed: readonly (readonly Point2[])[];
  readonly open: readonly (readonly Point2[])[];
  /** Kinds of drawn things that were not read, with how many of each. */
  readonly ignored: ReadonlyMap<string, number>;
  /** What was assumed about units, as a sentence, where the file does not say. */
  readonly assumed?: string;
}

/** The file cannot be understood; `reason` is a clause for the user. */
export interface Unreadable {
  readonly reason: string;
}
