import type { FigureName } from '../../../src/findings/index.ts';

/** What a computation is held to, from the strongest kind to the weakest. */
type SourceKind =
  | 'standard'
  | 'handbook'
  | 'paper'
  | "maker's table"
  | 'closed form'
  | 'open mesh'
  | 'common practice, no published source';

/** One check of figures against something outside the project. */
export interface OutsideCheck {
  readonly figures: readonly FigureName[];
  readonly source: string;
  readonly kind: SourceKind;
  /** The value that is expected. */
  readonly value: string;
  /** File in the folder above, and a piece of the full title of the test in it, as it stands in the source. */
  readonly file: string;
  readonly test: string;
}
