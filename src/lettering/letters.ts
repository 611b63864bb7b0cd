import text from '@jscad/modeling/src/text/index.js';
import { line, type Path, type Point2, placed } from '../geometry/index.ts';
import type { Lettering } from './lettering.ts';

/** Capitals of the stroke alphabet stand this much over the height it is asked for. Measured on `H`. */
const capitals = 1.5;

/** A text as pen strokes, so that a cutter needs no font. Letters with marks lose them, others outside ASCII become ?. */
export function lettersOf({ words, at, height, turnRad, anchor }: Lettering): Path[] {
  const plain = words.normalize('NFD').replace(/\p{M}/gu, '');
  const strokes = text.vectorText({ height: height / capitals }, plain);
  const right = strokes.flat().reduce((most, [x]) => Math.max(most, x), 0);
  const shift = { start: 0, middle: right / 2, end: right }[anchor];
  return strokes.map((stroke) =>
    placed(line(...stroke.map(([x, y]): Point2 => [x - shift, y])), turnRad, at),
  );
}
