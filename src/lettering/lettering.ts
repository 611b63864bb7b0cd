import type { Point2 } from '../geometry/index.ts';

/** A line of text, mm. It runs along `turnRad` (counter-clockwise from +x) and stands on `at` with its `anchor`. */
export interface Lettering {
  readonly words: string;
  readonly at: Point2;
  /** Height of a capital. */
  readonly height: number;
  readonly turnRad: number;
  readonly anchor: 'start' | 'middle' | 'end';
}
