import { defaultChordError, type Point2, segmentsFor } from '../../geometry/index.ts';
import { threadDiameter } from '../../tables/index.ts';
import type { Mold } from '../mold.ts';
import { bossSpace, fitsOnRim, notchCorners, tabCorners } from '../shapes/index.ts';

/** Something a channel has to pass, by its outline where the halves part. */
export interface FixtureOutline {
  readonly id: string;
  readonly thing: 'boss' | 'bolt' | 'tab' | 'notch';
  readonly outline: readonly Point2[];
}

type Fixed = Pick<Mold, 'bosses' | 'bench' | 'tabs' | 'notches' | 'disc' | 'process'>;

/** All but the sprue that stands in the way of channels. It meets the parting surface, from which channels hang. */
export function fixtureOutlines({ bosses, bench, tabs, notches, disc, process }: Fixed): FixtureOutline[] {
  return [
    ...bosses.map((boss): FixtureOutline => {
      const { id, x, y } = boss;
      return { id, thing: 'boss', outline: round([x, y], bossSpace(boss, process).reach) };
    }),
    ...(process === 'rubber' ? boltsIn(bench, disc.radius) : []),
    ...tabs
      .filter((tab) => fitsOnRim(tab, disc.radius))
      .map((tab): FixtureOutline => ({ id: tab.id, thing: 'tab', outline: tabCorners(tab, disc.radius) })),
    ...notches.map(
      (notch): FixtureOutline => ({
        id: notch.id,
        thing: 'notch',
        outline: notchCorners(notch, disc.radius),
      }),
    ),
  ].filter(({ outline }) => outline.length > 0);
}

/** The bolts of the can, seen from above; shanks as wide as their thread. Lengths in mm. */
export interface BoltCircle {
  readonly radius: number;
  /** Radius of the circle they stand on. */
  readonly circle: number;
  readonly count: number;
  /** Left out: they may stand anywhere on their circle. */
  readonly startRad?: number;
}

/** The bolts the plan gives, where it says enough of them. */
export function boltsOn(bench: Mold['bench']): BoltCircle | undefined {
  const given = bench.closing?.bolts;
  const diameter = given && threadDiameter(given.size);
  if (!given || given.circle === undefined || diameter === undefined) return undefined;
  const { circle, count, startRad } = given;
  return { radius: diameter / 2, circle: circle / 2, count, ...(startRad !== undefined && { startRad }) };
}

/** Where the plan says where they stand. */
function boltsIn(bench: Mold['bench'], discRadius: number): FixtureOutline[] {
  const bolts = boltsOn(bench);
  if (bolts?.startRad === undefined || bolts.circle - bolts.radius >= discRadius) return [];
  const { circle, count, radius, startRad } = bolts;
  return Array.from({ length: count }, (_, k): FixtureOutline => {
    const angle = startRad + (2 * Math.PI * k) / count;
    const middle: Point2 = [circle * Math.cos(angle), circle * Math.sin(angle)];
    return { id: `bolt-${k + 1}`, thing: 'bolt', outline: round(middle, radius) };
  });
}

function round([x, y]: Point2, radius: number): Point2[] {
  const sides = segmentsFor(radius, defaultChordError);
  return Array.from({ length: sides }, (_, k): Point2 => {
    const angle = (2 * Math.PI * k) / sides;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
}
