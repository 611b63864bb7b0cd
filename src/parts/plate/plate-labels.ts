import { type Finding, finding } from '../../findings/index.ts';
import { type Bounds2, boundsOfOutline, line, type Path, type Point2, placed } from '../../geometry/index.ts';
import { lettersOf } from '../../lettering/index.ts';
import type { Labeled } from '../making/index.ts';
import { boxOf, cornersOf, type FreeSpace } from './free-space.ts';

const leading = 1.5;
const gap = 1.5;
/** Places along an outline at which a text is tried beside it. */
const places = 24;

export interface LabelWish {
  readonly id: string;
  /** What it stands beside. */
  readonly rings: readonly (readonly Point2[])[];
  /** Lines of text, the fullest first. */
  readonly texts: readonly (readonly string[])[];
}

/** A text in its place: the pen's lines and its box; `text` is which of the wished ones it is. */
interface Laid {
  readonly paths: readonly Path[];
  readonly box: Bounds2;
  readonly text: number;
}

/** Labels being placed; what they take up is taken from the space. */
export interface PlateLabels {
  readonly height: number;
  readonly space: FreeSpace;
  readonly laid: ReadonlyMap<string, Laid>;
}

export const engravedIn = ({ laid }: PlateLabels): Path[] => [...laid.values()].flatMap(({ paths }) => paths);

/** Corners of each text, counter-clockwise. */
export const letteredIn = ({ laid }: PlateLabels): Point2[][] =>
  [...laid.values()].map(({ box }) => cornersOf(box));

/**
 * The shortest text of each wish beside its opening, level, capitals `height` mm high, with a line to its own; those
 * with the fewest places first.
 */
export function shortestLabels(wishes: readonly LabelWish[], space: FreeSpace, height: number): PlateLabels {
  const laid = new Map<string, Laid>();
  const ordered = wishes
    .map((wish, i) => ({
      wish,
      i,
      free: spotsFor(wish, wish.texts.length - 1, space, height, places).length,
    }))
    .sort((a, b) => a.free - b.free || a.i - b.i);
  for (const { wish } of ordered) {
    const found = layOne(wish, wish.texts.length - 1, space, height);
    if (!found) continue;
    space.take(found.box);
    laid.set(wish.id, found);
  }
  return { height, space, laid };
}

/** Every label put for the fullest of its texts that there is room for beside the others. */
export function fuller(labels: PlateLabels, wishes: readonly LabelWish[]): PlateLabels {
  const { height, space } = labels;
  const laid = new Map(labels.laid);
  for (const wish of wishes) {
    const now = laid.get(wish.id);
    if (!now) continue;
    space.leave(now.box);
    const texts = Array.from({ length: now.text }, (_, text) => text);
    const better = firstOf(texts, (text) => layOne(wish, text, space, height)) ?? now;
    space.take(better.box);
    laid.set(wish.id, better);
  }
  return { height, space, laid };
}

function firstOf<T, U>(items: readonly T[], find: (item: T) => U | undefined): U | undefined {
  for (const item of items) {
    const found = find(item);
    if (found) return found;
  }
  return undefined;
}

/** What stands on a plate without its name. */
export function unlabeled({ id, title }: Labeled, ids: readonly string[]): Finding[] {
  const count = ids.length;
  if (count === 0) return [];
  return [finding('plate.no-name', { subject: id, values: { measured: count, limit: 0, title, ids } })];
}

function layOne(wish: LabelWish, text: number, space: FreeSpace, height: number): Laid | undefined {
  const [place] = spotsFor(wish, text, space, height, 1);
  if (!place) return undefined;
  const { letters, at, box, leader } = place;
  return { paths: [...letters.map((path) => placed(path, 0, at)), line(...leader)], box, text };
}

/** The first few free places for a text of a wish. */
function spotsFor({ rings, texts }: LabelWish, text: number, space: FreeSpace, height: number, most: number) {
  if (rings.length === 0) return [];
  const letters = texts[text].flatMap((words, i) =>
    lettersOf({ words, at: [0, -i * leading * height], height, turnRad: 0, anchor: 'middle' }),
  );
  const own = boundsOfOutline(letters);
  const middle: Point2 = [(own.min[0] + own.max[0]) / 2, (own.min[1] + own.max[1]) / 2];
  const size: Point2 = [own.max[0] - own.min[0], own.max[1] - own.min[1]];
  const free: { letters: Path[]; at: Point2; box: Bounds2; leader: [Point2, Point2] }[] = [];
  for (const [x, y] of [...spotsAlong(rings, size), ...spotsBeside(boxOf(rings.flat()), size)]) {
    const at: Point2 = [x - middle[0], y - middle[1]];
    const box = grown({ min: plus(own.min, at), max: plus(own.max, at) }, gap / 2);
    if (!space.isFree(box)) continue;
    const leader = nearestTo(box, rings.flat());
    if (space.isFreeLine(...leader)) free.push({ letters, at, box, leader });
    if (free.length === most) break;
  }
  return free;
}

const plus = ([x, y]: Point2, [dx, dy]: Point2): Point2 => [x + dx, y + dy];

/** From a text's box to the corner of its opening that is nearest to it. */
function nearestTo({ min, max }: Bounds2, corners: readonly Point2[]): [Point2, Point2] {
  const nearest: [Point2, Point2] = [min, min];
  let least = Number.POSITIVE_INFINITY;
  for (const to of corners) {
    const x = Math.min(Math.max(to[0], min[0]), max[0]);
    const y = Math.min(Math.max(to[1], min[1]), max[1]);
    const far = Math.hypot(x - to[0], y - to[1]);
    if (far >= least) continue;
    least = far;
    nearest[0] = [x, y];
    nearest[1] = to;
  }
  return nearest;
}

/** Middles for a block of text beside, over and under places along an outline. */
function spotsAlong(rings: readonly (readonly Point2[])[], [w, h]: Point2): Point2[] {
  const ring = rings.reduce((longest, one) => (one.length > longest.length ? one : longest));
  const [dx, dy] = [w / 2 + gap, h / 2 + gap];
  return Array.from({ length: places }, (_, k) => ring[Math.floor((k * ring.length) / places)]).flatMap(
    ([x, y]): Point2[] => [
      [x + dx, y],
      [x - dx, y],
      [x, y + dy],
      [x, y - dy],
    ],
  );
}

/** Middles for a block of text on all sides of a box, near ones first. */
function spotsBeside({ min, max }: Bounds2, [w, h]: Point2): Point2[] {
  const [cx, cy] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  return [0, 2, 4, 8, 14].flatMap((more): Point2[] => {
    const [dx, dy] = [(max[0] - min[0] + w) / 2 + gap + more, (max[1] - min[1] + h) / 2 + gap + more];
    const along = [0, 0.25, -0.25, 0.5, -0.5];
    return along.flatMap((share): Point2[] => [
      [cx + dx, cy + share * 2 * dy],
      [cx - dx, cy + share * 2 * dy],
      [cx + share * 2 * dx, cy + dy],
      [cx + share * 2 * dx, cy - dy],
    ]);
  });
}

const grown = ({ min, max }: Bounds2, by: number): Bounds2 => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
});
