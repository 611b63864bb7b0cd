import { inverse, type Outline, type Path, pointsOf, polygonsOf } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import type { Drawing, Fixture, Solid } from '../../mold/index.ts';
import { asSolid, labelDepth, onBed, type SolidNaming, strokeOutlines } from '../making/index.ts';
import { footCutters } from './foot-chamfer.ts';

/** Where the plan does not say, mm; common practice. */
const usualThickness = 3;

/** Thickness of the plates that are laid on the disc, mm. */
export const plateThickness = ({ plateThickness: given }: Fixture): number => given ?? usualThickness;

export interface Plate {
  readonly outline: Outline;
  readonly thickness: number;
  /** Lines engraved into the upper face, with the pen of the labels. */
  readonly engraved: readonly Path[];
}

/**
 * A flat plate on z = 0: its edge inscribed, its openings circumscribed, the edges it stands on chamfered as the plan
 * says, by half its thickness at most.
 */
export function plateBody(
  scope: Scope,
  plate: Plate,
  { chordError, footChamfer = 0 }: Pick<Fixture, 'chordError' | 'footChamfer'>,
  what: string,
): Body {
  const { outline, thickness, engraved } = plate;
  const polygons = polygonsOf(outline, 'pin', chordError);
  const chamfer = Math.min(footChamfer, thickness / 2);
  const cutters = chamfer > 0 ? footCutters(scope, polygons, chamfer, what) : [];
  if (engraved.length > 0) {
    const pen = engraved.map((path) => pointsOf(path, chordError)).flatMap(strokeOutlines);
    cutters.push(scope.extrude(pen, thickness - labelDepth, thickness + 1, what));
  }
  return scope.subtract(scope.extrude(polygons, 0, thickness, what), cutters, what);
}

/** The plate as a solid, in the mold frame where `toPrint` brings it from, and the drawing it is cut and engraved by. */
export function engravedPlate(
  scope: Scope,
  plate: Plate,
  fixture: Pick<Fixture, 'chordError' | 'footChamfer'>,
  naming: SolidNaming,
  toPrint = onBed(0),
): { solid: Solid; drawing: Drawing } {
  const { id, title, subjects, estimated = false } = naming;
  const { outline, thickness, engraved } = plate;
  const body = scope.move(plateBody(scope, plate, fixture, title), inverse(toPrint), title);
  const marks = [
    { layer: 'cut', outline, texts: [] },
    { layer: 'engrave', outline: engraved, texts: [] },
  ] as const;
  return {
    solid: asSolid(scope, body, toPrint, naming),
    drawing: { id, title, subjects, marks, thickness, estimated },
  };
}
