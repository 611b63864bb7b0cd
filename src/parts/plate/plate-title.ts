import type { Finding } from '../../findings/index.ts';
import { line, type Path, type Point2, placed, radPerDegree } from '../../geometry/index.ts';
import { type Labeled, labelStroke, lettersReplaced, waysToLay, wordsLeftOff } from '../making/index.ts';
import type { FreeSpace } from './free-space.ts';

/** Left free round a title, mm. */
const margin = 1;
/** Steps in which places on a plate are tried, mm. */
const gridStep = 2;

/** Words engraved on a plate: the pen's lines, the corners of what they take up, and what was left off. */
export interface Title {
  readonly engraved: readonly Path[];
  /** Counter-clockwise; nothing where nothing is engraved. */
  readonly lettered: readonly (readonly Point2[])[];
  readonly findings: readonly Finding[];
}

/** Where the middle of a text is, and how it is turned (rad). */
export interface TitlePlace {
  readonly at: Point2;
  readonly turnRad: number;
}

/** The first place that is free for a box of a width and height (mm), margins included; undefined where none is. */
export type FindTitlePlace = (width: number, height: number) => TitlePlace | undefined;

/** The plan's name and revision, as they are engraved on every fixture with room for them. */
export const planWords = ({ label, revision }: PlanNames): string[] => {
  const words = `${label.trim()}${revision === '' ? '' : ` r${revision}`}`.trim();
  return words === '' ? [] : [words];
};

export interface PlanNames {
  readonly label: string;
  readonly revision: string;
}

/** Engraves words, the most wanted first, as large as there is room for, 4.5 to 9 mm; says what was left off. */
export function layOutTitle(labeled: Labeled, words: readonly string[], find: FindTitlePlace): Title {
  const replaced = lettersReplaced(labeled, words);
  for (const { strokes, width, height, leftOff } of waysToLay(words)) {
    const [w, h] = [width, height].map((size) => size + labelStroke + 2 * margin);
    const place = find(w, h);
    if (!place) continue;
    const { at, turnRad } = place;
    const box: Point2[] = [
      [-w / 2, -h / 2],
      [w / 2, -h / 2],
      [w / 2, h / 2],
      [-w / 2, h / 2],
    ];
    return {
      engraved: strokes.map((stroke) => placed(line(...stroke), turnRad, at)),
      lettered: [box.map((corner) => moved(corner, place))],
      findings: [...replaced, ...wordsLeftOff(labeled, leftOff)],
    };
  }
  return { engraved: [], lettered: [], findings: [...replaced, ...wordsLeftOff(labeled, words)] };
}

const moved = ([x, y]: Point2, { at, turnRad }: TitlePlace): Point2 => {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  return [at[0] + x * c - y * s, at[1] + x * s + y * c];
};

/** Places on a round plate, upright, those nearest to the axis first. */
export function titlePlaceOnPlate(radius: number, space: FreeSpace): FindTitlePlace {
  const steps = Math.floor(radius / gridStep);
  const along = Array.from({ length: 2 * steps + 1 }, (_, i) => (i - steps) * gridStep);
  const places = along
    .flatMap((y) => along.map((x): Point2 => [x, y]))
    .filter(([x, y]) => Math.hypot(x, y) < radius)
    .sort((a, b) => Math.hypot(...a) - Math.hypot(...b) || a[1] - b[1] || a[0] - b[0]);
  return (width, height) => {
    const at = places.find(([x, y]) =>
      space.isFree({
        min: [x - width / 2, y - height / 2],
        max: [x + width / 2, y + height / 2],
      }),
    );
    return at && { at, turnRad: 0 };
  };
}

/** Something round in a ring. */
export interface Round {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Places along a ring, the words running round it, those at the bottom first; clear of what is round in it. */
export function titlePlaceOnRing(inner: number, outer: number, rounds: readonly Round[]): FindTitlePlace {
  // 270 degrees first, then on both sides in turn.
  const turns = Array.from({ length: 36 }, (_, i) => 270 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 10);
  return (width, height) => {
    const far = Math.sqrt(Math.max(0, outer ** 2 - (width / 2) ** 2)) - height / 2;
    if (far - height / 2 < inner || width > 2 * outer) return undefined;
    const middle = (far + inner + height / 2) / 2;
    const places = turns.map((turn): TitlePlace => {
      const angle = turn * radPerDegree;
      return { at: [middle * Math.cos(angle), middle * Math.sin(angle)], turnRad: angle + Math.PI / 2 };
    });
    return places.find((place) => rounds.every((round) => clearOfRound(place, [width, height], round)));
  };
}

function clearOfRound(
  { at, turnRad }: TitlePlace,
  [width, height]: Point2,
  { x, y, radius }: Round,
): boolean {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [dx, dy] = [x - at[0], y - at[1]];
  const across = Math.max(0, Math.abs(dx * c + dy * s) - width / 2);
  const up = Math.max(0, Math.abs(dy * c - dx * s) - height / 2);
  return Math.hypot(across, up) > radius;
}
