import { type Body, type Scope, segmentsFor } from '../kernel/index.ts';
import type { Disc, Sprue } from '../mold/index.ts';
import { fromOuterFace, type Half } from './half.ts';
import { type LabelRoom, labelCutter, labelStroke } from './label.ts';

/** Index mark: a groove in the outer face at angle 0 that runs out through the rim. Common practice, mm. */
export const indexMark = { width: 2, length: 8, depth: 0.8 } as const;
const overlap = 1;

/** What of a mold a blank depends on. */
export interface BlankShape {
  readonly disc: Disc;
  readonly sprue?: Sprue;
  readonly chordError: number;
}

/** The disc of one half in the mold frame, rim polygon inscribed, its outer edge chamfered; no opening, no marks. */
export function discBody(scope: Scope, half: Half, { disc, chordError }: BlankShape): Body {
  const segments = segmentsFor(disc.radius, chordError);
  const thickness = half === 'lower' ? disc.lower : disc.upper;
  const chamfer = disc.rimChamfer;
  // Drawn for the upper half; the lower one is its mirror image.
  const outline = [
    [0, 0],
    [disc.radius, 0],
    [disc.radius, thickness - chamfer],
    ...(chamfer > 0 ? [[disc.radius - chamfer, thickness] as const] : []),
    [0, thickness],
  ] as const;
  const drawn = half === 'upper' ? outline : outline.map(([r, z]) => [r, -z] as const).reverse();
  return scope.revolve(drawn, segments, `${half} disc`);
}

/** Both halves' discs in one body, so that one cut parts them. */
export function wholeDiscBody(scope: Scope, { disc, chordError }: BlankShape): Body {
  const c = disc.rimChamfer;
  const outline = [
    [0, -disc.lower],
    ...(c > 0 ? [[disc.radius - c, -disc.lower] as const] : []),
    [disc.radius, c - disc.lower],
    [disc.radius, disc.upper - c],
    ...(c > 0 ? [[disc.radius - c, disc.upper] as const] : []),
    [0, disc.upper],
  ] as const;
  return scope.revolve(outline, segmentsFor(disc.radius, chordError), 'disc');
}

/** Cutters of what is drawn on one half's outer face: index mark and label. */
export function markCutters(scope: Scope, half: Half, shape: BlankShape): Body[] {
  const { disc } = shape;
  const toMold = fromOuterFace(half, disc);
  const mark = indexCutter(scope, disc);
  const words = disc.label.trim() === '' ? '' : `${disc.label.trim()} ${half}`.toUpperCase();
  const label = labelCutter(scope, words, labelRoom(shape));
  return [mark, ...(label ? [label] : [])].map((body) => scope.move(body, toMold, 'marks'));
}

/** A V-groove along +x; at the rim it is cut below the chamfer too, so that it shows from the side. */
function indexCutter(scope: Scope, disc: Disc): Body {
  const { width, length, depth } = indexMark;
  const from = disc.radius - disc.rimChamfer - length;
  const to = disc.radius + overlap;
  // The groove's floor drops towards the rim by the chamfer.
  const ends = [
    [from, depth],
    [to, depth + disc.rimChamfer],
  ] as const;
  const points = ends.flatMap(([x, deep]) => {
    const half = (width / 2) * ((deep + overlap) / depth);
    return [
      [x, -half, overlap],
      [x, half, overlap],
      [x, 0, -deep],
    ] as const;
  });
  return scope.hull(points, 'index mark');
}

/** A strip between the opening and the rim on the -y side, as wide as the disc is there. */
function labelRoom({ disc, sprue }: BlankShape): LabelRoom {
  const outer = disc.radius - disc.rimChamfer - 2;
  const inner = sprue ? sprue.holeRadius + 2 : 0;
  const height = Math.min(10, (outer - inner) / 2);
  const y = -(inner + (outer - inner) / 2);
  const half = Math.sqrt(Math.max(0, outer ** 2 - (Math.abs(y) + height / 2) ** 2));
  return { x: 0, y, width: 2 * half - labelStroke, height };
}
