import { type Body, type Outline, type Path, pointsOf, polygonsOf, type Scope } from '../kernel/index.ts';
import { labelDepth, strokeOutlines } from './label.ts';

export interface Plate {
  readonly outline: Outline;
  readonly thickness: number;
  /** Lines engraved into the upper face, with the pen of the labels. */
  readonly engraved: readonly Path[];
}

/** A flat plate on z = 0: its edge inscribed, its openings circumscribed. */
export function plateBody(scope: Scope, plate: Plate, chordError: number, what: string): Body {
  const { outline, thickness, engraved } = plate;
  const plain = scope.extrude(polygonsOf(outline, 'pin', chordError), 0, thickness, what);
  if (engraved.length === 0) return plain;
  const strokes = engraved.map((path) => pointsOf(path, chordError));
  const pen = strokes.flatMap(strokeOutlines);
  return scope.subtract(plain, [scope.extrude(pen, thickness - labelDepth, thickness + 1, what)], what);
}
