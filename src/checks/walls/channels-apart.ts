import { type Finding, finding } from '../../findings/index.ts';
import { clipped, type Point2 } from '../../geometry/index.ts';
import { type Channel, type Check, check, isDrawn, legCorners, legsOf, openRun } from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { type BoxAround, boxAround, boxesApart } from './box-around.ts';
import { middleOf, within } from './channel-course.ts';

interface ApartInput {
  readonly channels: readonly Channel[];
  /** Within the well gates run together on purpose. */
  readonly wellRadius: number;
}

/** Gates and vents of different cavities against each other: all open at the parting surface, whichever half they are in. */
export const channelsApart: Check = check<ApartInput>({
  id: 'channels-apart',
  title: 'Gates, runners and vents apart',
  follows: false,
  processes: everyProcess,
  units: ({ channels, sprue }) => {
    const drawn = channels.filter(isDrawn);
    if (drawn.length < 2) return [];
    return [{ subject: 'mold', about: [], input: { channels: drawn, wellRadius: sprue?.wellRadius ?? 0 } }];
  },
  run: ({ channels, wellRadius }) => {
    const courses = channels.map(courseOf);
    const findings = courses.flatMap((one, i) =>
      courses
        .slice(i + 1)
        .filter(({ box }) => boxesApart(one.box, box) <= 0)
        .filter(({ channel: other }) => {
          const { channel } = one;
          return (
            other.placement !== channel.placement && !bothJoin(other, channel) && !isJunction(other, channel)
          );
        })
        .flatMap((other) => together(one, other, wellRadius)),
    );
    return { findings };
  },
});

/** One comes out of the other, as the plan says. */
export const isJunction = (one: Channel, other: Channel): boolean =>
  one.opensInto === other.id || other.opensInto === one.id;

/** What of a channel lies in none that it opens into as the plan says: siblings may share that. */
interface Course extends Pick<Channel, 'run'> {
  readonly channel: Channel;
  readonly corners: readonly (readonly Point2[])[];
  readonly box: BoxAround;
}

function courseOf(channel: Channel): Course {
  const run = channel.opensInto === undefined ? channel.run : openRun(channel);
  const corners = legsOf(run).map(legCorners);
  return { channel, run, corners, box: boxAround(corners.flat()) };
}

const bothJoin = (one: Channel, other: Channel): boolean => one.joins === true && other.joins === true;

function together(one: Course, { channel: other, corners: others }: Course, wellRadius: number): Finding[] {
  const common = within(one, (corners) => others.flatMap((outline) => clipped(outline, corners)));
  if (common.points.length === 0) return [];
  const beyond = Math.max(...common.points.map((at) => Math.hypot(...at))) - wellRadius;
  const measured = Math.min(common.measured, beyond);
  if (!(measured > 0)) return [];
  const { id: subject, kind, placement } = one.channel;
  const which = kind === 'vent' && other.kind === 'vent' ? 'vents' : 'other';
  const values = { measured, limit: 0, kind, placement, other: other.placement };
  return [
    finding('channels.meet', {
      subject,
      place: middleOf(common.points),
      values: { which, ...values, otherKind: other.kind },
    }),
  ];
}
