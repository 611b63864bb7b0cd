import type { Point2 } from '../../geometry/index.ts';
import type { Channel, Station } from '../mold.ts';
import { heightAt, type PartingSurface } from '../parting-surface.ts';
import { sectionArea, sectionMiddle } from './channel-section.ts';
import type { Lump } from './lump.ts';

/** A straight piece of a channel from one station to the next. */
export interface Leg {
  readonly from: Station;
  readonly to: Station;
  readonly length: number;
  /** Its way, a unit vector. */
  readonly along: Point2;
  /** Across the path at both ends, to its left: mitred where it bends, so that pieces meet in one face. */
  readonly across: readonly [Point2, Point2];
}

type Run = readonly Station[];

/** The straight pieces of a run that have a length. */
export function legsOf(run: Run): Leg[] {
  const straight = run.slice(1).flatMap((to, i) => {
    const from = run[i];
    const [dx, dy] = [to.at[0] - from.at[0], to.at[1] - from.at[1]];
    const length = Math.hypot(dx, dy);
    return length > 0 ? [{ from, to, length, along: [dx / length, dy / length] as const }] : [];
  });
  const round = isRing(run);
  const along = (i: number): Point2 | undefined =>
    straight[round ? (i + straight.length) % straight.length : i]?.along;
  return straight.map((leg, i) => ({
    ...leg,
    across: [miter(along(i - 1), leg.along), miter(leg.along, along(i + 1))],
  }));
}

/** So near its beginning a run ends in it, mm. */
const sameEnd = 1e-9;

/** Whether it goes round and ends where it begins. */
export function isRing(run: Run): boolean {
  if (run.length < 4) return false;
  const [{ at: first }, { at: last }] = [run[0], run[run.length - 1]];
  return Math.hypot(last[0] - first[0], last[1] - first[1]) < sameEnd;
}

/** Left of the path where two pieces meet, as long as keeps both as wide as they are. */
function miter(before: Point2 | undefined, after: Point2 | undefined): Point2 {
  const [one, other] = [before ?? after ?? [1, 0], after ?? before ?? [1, 0]];
  // Half the square of the sum of two unit vectors.
  const fold = 1 + one[0] * other[0] + one[1] * other[1];
  if (one === other || fold < 1e-9) return [-one[1], one[0]];
  return [-(one[1] + other[1]) / fold, (one[0] + other[0]) / fold];
}

/** How long a channel's path is, mm. */
export const runLength = (run: Run): number => legsOf(run).reduce((sum, { length }) => sum + length, 0);

/** With a length, a width and a depth, so that there is something to cut. */
export const isDrawn = ({ run }: Pick<Channel, 'run'>): boolean =>
  legsOf(run).length > 0 && run.every(({ width, depth }) => width > 0 && depth > 0);

/** The four corners of a leg seen from above, counter-clockwise from the right of its beginning. */
export function legCorners({ from, to, across: [near, far] }: Leg): Point2[] {
  const aside = ({ at, width }: Station, [x, y]: Point2, side: number): Point2 => [
    at[0] + (side * x * width) / 2,
    at[1] + (side * y * width) / 2,
  ];
  return [aside(from, near, -1), aside(to, far, -1), aside(to, far, 1), aside(from, near, 1)];
}

/** Both sides of a run from its beginning to its end, seen from above. */
export function runSides(run: Run): { readonly right: Point2[]; readonly left: Point2[] } {
  const corners = legsOf(run).map(legCorners);
  const last = corners[corners.length - 1];
  if (!last) return { right: [], left: [] };
  return {
    right: [...corners.map(([right]) => right), last[1]],
    left: [...corners.map(([, , , left]) => left), last[2]],
  };
}

/** Its outline seen from above, mold frame, counter-clockwise from the right of its beginning. */
export function channelOutline({ run }: Pick<Channel, 'run'>): Point2[] {
  const { right, left } = runSides(run);
  return [...right, ...left.reverse()];
}

const between = (from: Station, to: Station, t: number): Station => ({
  at: [from.at[0] + (to.at[0] - from.at[0]) * t, from.at[1] + (to.at[1] - from.at[1]) * t],
  width: from.width + (to.width - from.width) * t,
  depth: from.depth + (to.depth - from.depth) * t,
});

/** The piece of a run from one distance along it to another, mm; nothing where they cross. */
export function cutRun(run: Run, start: number, end: number): Station[] {
  const stations: Station[] = [];
  let passed = 0;
  for (const { from, to, length } of legsOf(run)) {
    const [s, e] = [Math.max(0, start - passed), Math.min(length, end - passed)];
    passed += length;
    if (!(e > s)) continue;
    if (stations.length === 0) stations.push(s > 0 ? between(from, to, s / length) : from);
    stations.push(e < length ? between(from, to, e / length) : to);
  }
  return stations;
}

/** The part of a channel that is in no other hollow and not past the rim. */
export const openRun = ({ run, laps: [begin, end] }: Channel): Station[] =>
  cutRun(run, begin, runLength(run) - end);

/** Mean of what grows along a leg by a square or a cube at most (Simpson's rule, exact for these). */
const meanAlong = ({ from, to }: Leg, of: (station: Station) => number): number =>
  (of(from) + 4 * of(between(from, to, 0.5)) + of(to)) / 6;

/** What a channel holds outside other hollows, mm3: a mitred bend keeps the volume of its path (Pappus). */
export function channelVolume(channel: Channel): number {
  return legsOf(openRun(channel)).reduce(
    (sum, leg) => sum + leg.length * meanAlong(leg, (station) => sectionArea(channel.section, station)),
    0,
  );
}

/** What is empty in the half, or full of metal, between its ends. */
export function channelLump(channel: Channel, surface: PartingSurface): Lump {
  const down = channel.half === 'lower' ? -1 : 1;
  const pieces = legsOf(openRun(channel)).map((leg) => {
    const middle = between(leg.from, leg.to, 0.5);
    const [x, y] = middle.at;
    const z = heightAt(surface, x, y) + down * sectionMiddle(channel.section, middle);
    const volume = leg.length * meanAlong(leg, (station) => sectionArea(channel.section, station));
    return { volume, x, y, z };
  });
  const volume = pieces.reduce((sum, piece) => sum + piece.volume, 0);
  const [x, y] = channel.run[0].at;
  if (volume === 0) return { volume, x, y, z: heightAt(surface, x, y) };
  const mean = (axis: 'x' | 'y' | 'z'): number =>
    pieces.reduce((sum, piece) => sum + piece.volume * piece[axis], 0) / volume;
  return { volume, x: mean('x'), y: mean('y'), z: mean('z') };
}
