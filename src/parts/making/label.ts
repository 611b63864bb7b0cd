// By their rooms: the whole of it takes ten times as long to load.
import geom2 from '@jscad/modeling/src/geometries/geom2/index.js';
import path2 from '@jscad/modeling/src/geometries/path2/index.js';
import expansions from '@jscad/modeling/src/operations/expansions/index.js';
import pen from '@jscad/modeling/src/text/index.js';
import { type Finding, finding } from '../../findings/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import { overlap } from '../../mold/index.ts';

/** Common practice, no published source: strokes a 0.4 mm nozzle, a mill of 0.8 mm and a cast half can still show. */
export const labelStroke = 0.8;
export const labelDepth = 0.6;
const letterHeight = 9;
/** Capitals half as high still have gaps of half a stroke in an E. */
export const leastLetters = 4.5;
/** The alphabet's own measure of height is two thirds of a capital. */
const capitalShare = 1.5;
const lineSpacing = 2.1;

/**
 * Where a text may stand: its middle, and the room across and up. With `bend` the strip lies round an arc of that radius
 * about the middle instead, over it, letters standing outward; its width is along the arc.
 */
export interface LabelRoom {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly bend?: number;
}

/** A text laid out in its room: pen strokes in mm, capitals `height` high, and the words there was no room for. */
export interface LaidLabel {
  readonly strokes: readonly (readonly (readonly [number, number])[])[];
  readonly height: number;
  readonly leftOff: readonly string[];
}

/**
 * Lays words (most wanted first) into a room: all in one line or one below the other, whichever gives the larger
 * capitals, 4.5 to 9 mm high; where that fails, without the last words. Letters with marks lose them, other letters
 * outside ASCII become `?`; capitals throughout.
 */
export function layLabel(words: readonly string[], room: LabelRoom): LaidLabel {
  const wanted = words.map((word) => word.trim()).filter((word) => word !== '');
  const plain = wanted.map((word) => plainLetters(word).toUpperCase());
  for (let count = plain.length; count > 0; count--) {
    const kept = plain.slice(0, count);
    const [best] = [kept.join(' '), ...(count > 1 ? [kept.join('\n')] : [])]
      .map((text) => fitted(text, room))
      .sort((a, b) => b.height - a.height);
    if (best.height >= leastLetters) return { ...best, leftOff: wanted.slice(count) };
  }
  return { strokes: [], height: 0, leftOff: wanted };
}

const plainLetters = (word: string): string =>
  [...word.normalize('NFD').replace(/\p{M}/gu, '')]
    .map((letter) => (letter >= ' ' && letter <= '~' ? letter : '?'))
    .join('');

/** A text about its own middle, lines parted by `\n`, capitals 9 mm high; sizes of its center lines, mm. */
interface TextBlock {
  readonly strokes: readonly (readonly (readonly [number, number])[])[];
  readonly width: number;
  readonly height: number;
}

function blockOf(text: string): TextBlock {
  const options = { height: letterHeight / capitalShare, align: 'center', lineSpacing } as const;
  const strokes = pen.vectorText(options, text);
  const points = strokes.flat();
  if (points.length === 0) return { strokes: [], width: 0, height: 0 };
  const [left, right] = extent(points.map(([x]) => x));
  const [bottom, top] = extent(points.map(([, y]) => y));
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  return {
    strokes: strokes.map((stroke) => stroke.map((at): [number, number] => [at[0] - x, at[1] - y])),
    width: right - left,
    height: top - bottom,
  };
}

function fitted(text: string, room: LabelRoom): Pick<LaidLabel, 'strokes' | 'height'> {
  const { strokes, width, height } = blockOf(text);
  if (strokes.length === 0) return { strokes: [], height: 0 };
  const scale = Math.min(
    1,
    (room.width - labelStroke) / Math.max(width, 1e-9),
    (room.height - labelStroke) / Math.max(height, 1e-9),
  );
  const place = ([x, y]: readonly [number, number]): [number, number] => inRoom(room, x * scale, y * scale);
  return { strokes: strokes.map((stroke) => stroke.map(place)), height: scale * letterHeight };
}

function inRoom({ x, y, bend }: LabelRoom, across: number, up: number): [number, number] {
  if (bend === undefined) return [x + across, y + up];
  const angle = across / bend;
  return [x + (bend + up) * Math.sin(angle), y + (bend + up) * Math.cos(angle)];
}

/** In the middle of a round face of this radius, as wide as the circle is at the height given. */
export function roomInRound(radius: number, height: number): LabelRoom {
  const width = 2 * Math.sqrt(Math.max(0, radius ** 2 - (height / 2) ** 2));
  return { x: 0, y: 0, width, height };
}

/** A label as it may be tried in many places: what is left off of it, and its strokes at one height. */
export interface LabelTry extends TextBlock {
  /** Height of a capital, mm. */
  readonly capital: number;
  readonly leftOff: readonly string[];
}

/** All ways to lay words out, best first: all of them before fewer, large before small, one line before several. */
export function waysToLay(words: readonly string[]): LabelTry[] {
  const wanted = words.map((word) => word.trim()).filter((word) => word !== '');
  const plain = wanted.map((word) => plainLetters(word).toUpperCase());
  return plain.flatMap((_, dropped) => {
    const kept = plain.slice(0, plain.length - dropped);
    const blocks = [kept.join(' '), ...(kept.length > 1 ? [kept.join('\n')] : [])].map(blockOf);
    const leftOff = wanted.slice(kept.length);
    return [letterHeight, 7.5, 6, leastLetters].flatMap((capital) =>
      blocks.map((block) => ({ ...scaled(block, capital / letterHeight), capital, leftOff })),
    );
  });
}

const scaled = ({ strokes, width, height }: TextBlock, by: number): TextBlock => ({
  strokes: strokes.map((stroke) => stroke.map(([x, y]): [number, number] => [x * by, y * by])),
  width: width * by,
  height: height * by,
});

/** A cutter that engraves words into a face at z = 0 seen from +z, 0.6 mm deep; undefined where none has room. */
export function labelCutter(scope: Scope, words: readonly string[], room: LabelRoom): Body | undefined {
  const { strokes } = layLabel(words, room);
  if (strokes.length === 0) return undefined;
  const outlines = strokes.flatMap(strokeOutlines);
  return scope.extrude(outlines, -labelDepth, overlap, 'label');
}

/** What of a label comes out otherwise than written. */
export function labelFindings(id: string, words: readonly string[], room: LabelRoom, title = id): Finding[] {
  const { leftOff } = layLabel(words, room);
  const labeled = { id, title };
  return [...lettersReplaced(labeled, words), ...wordsLeftOff(labeled, leftOff, room)];
}

/** A solid with a label. */
export interface Labeled {
  readonly id: string;
  readonly title: string;
}

/** Letters of a label that the alphabet of strokes lacks. */
export function lettersReplaced({ id, title }: Labeled, words: readonly string[]): Finding[] {
  const letters = [...new Set(words.flatMap((word) => [...word.trim()].filter((letter) => letter > '~')))];
  if (letters.length === 0) return [];
  return [finding('solid.label-letters', { subject: id, values: { title, letters } })];
}

/** Words of a label that found no room, of which the size may be said. */
export function wordsLeftOff(
  { id, title }: Labeled,
  words: readonly string[],
  room?: Pick<LabelRoom, 'width' | 'height'>,
): Finding[] {
  if (words.length === 0) return [];
  const values = { limit: leastLetters, title, words, width: room?.width, height: room?.height };
  return [finding('solid.label-left-off', { subject: id, values })];
}

/** A pen stroke with round ends as outlines, counter-clockwise, holes clockwise. */
export function strokeOutlines(points: readonly (readonly [number, number])[]): [number, number][][] {
  const path = path2.fromPoints(
    { closed: false },
    points.map(([x, y]) => [x, y] as [number, number]),
  );
  const drawn = expansions.expand({ delta: labelStroke / 2, corners: 'round', segments: 12 }, path);
  return geom2.toOutlines(drawn).map((outline) => outline.map(([x, y]) => [x, y]));
}

const extent = (values: readonly number[]): [number, number] =>
  values.reduce<[number, number]>(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
