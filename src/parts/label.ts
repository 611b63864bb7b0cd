import modeling from '@jscad/modeling';
import { type Finding, finding } from '../findings/index.ts';
import type { Body, Scope } from '../kernel/index.ts';

/** Common practice, no published source: strokes a 0.4 mm nozzle, a mill of 0.8 mm and a cast half can still show. */
export const labelStroke = 0.8;
export const labelDepth = 0.6;
const letterHeight = 9;
/** Capitals half as high still have gaps of half a stroke in an E. */
export const leastLetters = 4.5;
/** The alphabet's own measure of height is two thirds of a capital. */
const capitalShare = 1.5;
const lineSpacing = 2.1;
/** How far the cutter stands out of the face, so that no two faces lie in one plane. */
const overlap = 1;

/** Where a text may stand: its middle, and the room across and up. */
export interface LabelRoom {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A text laid out in its room: pen strokes in mm, capitals `height` high, and the words there was no room for. */
export interface LaidLabel {
  readonly strokes: readonly (readonly (readonly [number, number])[])[];
  readonly height: number;
  readonly leftOff: readonly string[];
  /** Letters that stand for others the alphabet of strokes lacks. */
  readonly replaced: readonly string[];
}

/**
 * Lays words (most wanted first) into a room: all in one line or one below the other, whichever gives the larger
 * capitals, 4.5 to 9 mm high; where that fails, without the last words. Letters with marks lose them, other letters
 * outside ASCII become `?`; capitals throughout.
 */
export function layLabel(words: readonly string[], room: LabelRoom): LaidLabel {
  const wanted = words.map((word) => word.trim()).filter((word) => word !== '');
  const plain = wanted.map((word) => plainLetters(word).toUpperCase());
  const replaced = [...new Set(wanted.flatMap((word) => [...word].filter((letter) => letter > '~')))];
  for (let count = plain.length; count > 0; count--) {
    const kept = plain.slice(0, count);
    const [best] = [kept.join(' '), ...(count > 1 ? [kept.join('\n')] : [])]
      .map((text) => fitted(text, room))
      .sort((a, b) => b.height - a.height);
    if (best.height >= leastLetters) return { ...best, leftOff: wanted.slice(count), replaced };
  }
  return { strokes: [], height: 0, leftOff: wanted, replaced };
}

const plainLetters = (word: string): string =>
  [...word.normalize('NFD').replace(/\p{M}/gu, '')]
    .map((letter) => (letter >= ' ' && letter <= '~' ? letter : '?'))
    .join('');

function fitted(text: string, room: LabelRoom): Pick<LaidLabel, 'strokes' | 'height'> {
  const options = { height: letterHeight / capitalShare, align: 'center', lineSpacing } as const;
  const strokes = modeling.text.vectorText(options, text);
  const points = strokes.flat();
  if (points.length === 0) return { strokes: [], height: 0 };
  const [left, right] = extent(points.map(([x]) => x));
  const [bottom, top] = extent(points.map(([, y]) => y));
  const scale = Math.min(
    1,
    (room.width - labelStroke) / Math.max(right - left, 1e-9),
    (room.height - labelStroke) / Math.max(top - bottom, 1e-9),
  );
  const place = ([x, y]: readonly number[]): [number, number] => [
    room.x + (x - (left + right) / 2) * scale,
    room.y + (y - (bottom + top) / 2) * scale,
  ];
  return { strokes: strokes.map((stroke) => stroke.map(place)), height: scale * letterHeight };
}

/** A cutter that engraves words into a face at z = 0 seen from +z, 0.6 mm deep; undefined where none has room. */
export function labelCutter(scope: Scope, words: readonly string[], room: LabelRoom): Body | undefined {
  const { strokes } = layLabel(words, room);
  if (strokes.length === 0) return undefined;
  const outlines = strokes.flatMap(strokeOutlines);
  return scope.extrude(outlines, -labelDepth, overlap, 'label');
}

/** What of a label comes out otherwise than written. */
export function labelFindings(subject: string, words: readonly string[], room: LabelRoom): Finding[] {
  const { height, leftOff, replaced } = layLabel(words, room);
  const findings: Finding[] = [];
  if (replaced.length > 0) {
    const letters = replaced.map((letter) => `\`${letter}\``).join(', ');
    const says = `The label of the ${subject} has ${letters}, engraved without marks or as \`?\`.`;
    findings.push(finding('solid.label-letters', { subject, says }));
  }
  if (leftOff.length > 0) {
    const rest = leftOff.map((word) => `\`${word}\``).join(', ');
    findings.push(
      finding('solid.label-left-off', {
        subject,
        measured: { value: height, unit: 'mm' },
        limit: { value: leastLetters, unit: 'mm' },
        says: `The ${subject} has no room of ${room.width.toFixed(0)} x ${room.height.toFixed(0)} mm for ${rest}, which ${leftOff.length === 1 ? 'is' : 'are'} left off.`,
      }),
    );
  }
  return findings;
}

/** A pen stroke with round ends as outlines, counter-clockwise, holes clockwise. */
export function strokeOutlines(points: readonly (readonly [number, number])[]): [number, number][][] {
  const path = modeling.geometries.path2.fromPoints(
    { closed: false },
    points.map(([x, y]) => [x, y] as [number, number]),
  );
  const pen = modeling.expansions.expand({ delta: labelStroke / 2, corners: 'round', segments: 12 }, path);
  return modeling.geometries.geom2.toOutlines(pen).map((outline) => outline.map(([x, y]) => [x, y]));
}

const extent = (values: readonly number[]): [number, number] =>
  values.reduce<[number, number]>(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
