import { type Bounds2, boundsOfOutline, type Outline } from '../geometry/index.ts';
import type { Lettering } from '../lettering/index.ts';

/** What is done along a line: cut through, engraved to be seen, or scored half through. */
export type Layer = 'cut' | 'engrave' | 'score';

/** What is drawn on one layer. */
interface Marks {
  readonly layer: Layer;
  readonly outline: Outline;
  readonly texts: readonly Lettering[];
}

/**
 * A flat thing at its true size, mm, y up; lying on the disc it is seen from above (mold frame x, y) unless its title
 * says otherwise. `id` is the file stem. `subjects` are the plan's ids it was made from: a stop about one of them
 * withholds it. `estimated` is true when a stand-in went into it.
 */
export interface Drawing {
  readonly id: string;
  readonly title: string;
  readonly subjects: readonly string[];
  readonly marks: readonly Marks[];
  /** What it is cut from, where that is not what the fixtures are made of. */
  readonly material?: string;
  /** Of the sheet it is to be cut from, where that matters. */
  readonly thickness?: number;
  readonly estimated: boolean;
}

/** The box round all lines of a drawing; texts stand inside them. */
export const sizeOf = ({ marks }: Drawing): Bounds2 =>
  boundsOfOutline(marks.flatMap(({ outline }) => outline));
