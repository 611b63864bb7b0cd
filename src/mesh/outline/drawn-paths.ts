import type { CodeValues } from '../../findings/index.ts';
import type { Point2 } from '../../geometry/index.ts';

/** What a reader of drawings found: paths in mm, y up, curves already drawn as chords. */
export interface DrawnPaths {
  /** Paths the file itself closes; the last point is not repeated. */
  readonly closed: readonly (readonly Point2[])[];
  readonly open: readonly (readonly Point2[])[];
  /** Kinds of drawn things that were not read, with how many of each. */
  readonly ignored: ReadonlyMap<string, number>;
  /** What was assumed about units, where the file does not say. */
  readonly assumed?: CodeValues<'outline.unit-assumed'>['which'];
}

/** Why a file cannot be understood. */
export type UnreadableReason = Omit<CodeValues<'outline.unreadable'>, 'file'>;

export interface Unreadable {
  readonly reason: UnreadableReason;
}
