import modeling from '@jscad/modeling';
import type { Body, Scope } from '../kernel/index.ts';

/** Common practice, no published source: strokes a 0.4 mm nozzle, a mill of 0.8 mm and a cast half can still show. */
export const labelStroke = 0.8;
export const labelDepth = 0.6;
const letterHeight = 6;
const leastHeight = 3;
/** How far the cutter stands out of the face, so that no two faces lie in one plane. */
const overlap = 1;

/** Where a line of text may stand: its middle, and the room across and up. */
export interface LabelRoom {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * A cutter that engraves a line of text into a face at z = 0 seen from +z, 0.6 mm deep, letters up to 6 mm high, as
 * large as the room allows. Undefined where there is no text or it would come out under 3 mm high.
 */
export function labelCutter(scope: Scope, words: string, room: LabelRoom): Body | undefined {
  const strokes = modeling.text.vectorText({ height: letterHeight, align: 'center' }, words);
  const points = strokes.flat();
  if (points.length === 0) return undefined;
  const [left, right] = extent(points.map(([x]) => x));
  const [bottom, top] = extent(points.map(([, y]) => y));
  const scale = Math.min(
    1,
    (room.width - labelStroke) / (right - left),
    (room.height - labelStroke) / (top - bottom),
  );
  if (!(scale * letterHeight >= leastHeight)) return undefined;
  const place = ([x, y]: readonly number[]): [number, number] => [
    room.x + (x - (left + right) / 2) * scale,
    room.y + (y - (bottom + top) / 2) * scale,
  ];
  const outlines = strokes.flatMap((stroke) => strokeOutlines(stroke.map(place)));
  return scope.extrude(outlines, -labelDepth, overlap, 'label');
}

/** A pen stroke with round ends as outlines, counter-clockwise, holes clockwise. */
function strokeOutlines(points: readonly [number, number][]): [number, number][][] {
  const path = modeling.geometries.path2.fromPoints({ closed: false }, [...points]);
  const pen = modeling.expansions.expand({ delta: labelStroke / 2, corners: 'round', segments: 12 }, path);
  return modeling.geometries.geom2.toOutlines(pen).map((outline) => outline.map(([x, y]) => [x, y]));
}

const extent = (values: readonly number[]): [number, number] =>
  values.reduce<[number, number]>(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
