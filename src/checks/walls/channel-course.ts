import { type Finding, finding } from '../../findings/index.ts';
import { clipped, type Point2, sidesApart } from '../../geometry/index.ts';
import {
  type Channel,
  type Check,
  channelOutline,
  check,
  type FixtureOutline,
  fixtureOutlines,
  isDrawn,
  type Leg,
  legCorners,
  legsOf,
} from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';

interface CourseInput {
  readonly obstacle: FixtureOutline;
  readonly channels: readonly Channel[];
  readonly wall: number;
}

/**
 * The course of gates and vents past bosses, bolts, tabs and notches. All of these meet the parting surface, from which
 * channels hang, so what is seen from above is what there is. A vent carries no metal and needs no wall.
 */
export const channelCourse: Check = check<CourseInput>({
  id: 'channel-course',
  title: 'Course of gates and vents',
  follows: true,
  processes: everyProcess,
  units: (mold) => {
    const channels = mold.channels.filter(isDrawn);
    if (channels.length === 0) return [];
    const { wall } = mold.limits;
    return fixtureOutlines(mold).map((obstacle) => ({
      subject: obstacle.id,
      about: [obstacle.id],
      input: { obstacle, channels, wall },
    }));
  },
  run: ({ obstacle, channels, wall }) => ({
    findings: channels.flatMap((channel) => past(channel, obstacle, wall)),
  }),
});

function past(channel: Channel, { id: other, thing, outline }: FixtureOutline, wall: number): Finding[] {
  const { id: subject, kind, placement } = channel;
  const about = { kind, placement, other, thing } as const;
  const { measured, points } = within(channel, (corners) => clipped(outline, corners));
  if (measured > 0) {
    const details = { subject, place: middleOf(points), values: { measured, limit: 0, ...about } };
    if (kind === 'vent') return [finding('channels.through', { ...details, severity: 'warn' })];
    const open = thing === 'tab' || thing === 'notch';
    return [finding(open ? 'channels.leads-out' : 'channels.through', details)];
  }
  if (kind === 'vent') return [];
  const { distance, middle } = sidesApart(outline, channelOutline(channel));
  if (distance >= wall) return [];
  const values = { measured: distance, limit: wall, ...about };
  return [finding('channels.near', { subject, place: [...middle, 0], values })];
}

/** What of something lies in a channel: the points found in its legs, and how far they reach along it in all, mm. */
export function within(
  { run }: Pick<Channel, 'run'>,
  inLeg: (corners: readonly Point2[], leg: Leg) => readonly Point2[],
): { readonly measured: number; readonly points: readonly Point2[] } {
  const found = legsOf(run).map((leg) => ({ leg, points: inLeg(legCorners(leg), leg) }));
  return {
    measured: found.reduce((sum, { leg, points }) => sum + lengthAlong(leg, points), 0),
    points: found.flatMap(({ points }) => points),
  };
}

function lengthAlong({ along: [ux, uy] }: Leg, points: readonly Point2[]): number {
  const along = points.map(([x, y]) => x * ux + y * uy);
  return points.length === 0 ? 0 : Math.max(...along) - Math.min(...along);
}

/** The middle of points on the parting plane. */
export function middleOf(points: readonly Point2[]): [number, number, number] {
  const mean = (axis: 0 | 1): number => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  return [mean(0), mean(1), 0];
}
