import { type Finding, finding } from '../../findings/index.ts';
import { clipped, type Point2 } from '../../geometry/index.ts';
import { type Channel, type Check, channelCorners, check } from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { isDrawn, lengthAlong, middleOf } from './channel-course.ts';

interface ApartInput {
  readonly channels: readonly Channel[];
  /** Within the well gates run together on purpose. */
  readonly wellRadius: number;
}

/** Gates and vents of different cavities against each other: all open at the parting surface, whichever half they are in. */
export const channelsApart: Check = check<ApartInput>({
  id: 'channels-apart',
  title: 'Gates and vents apart',
  follows: false,
  processes: everyProcess,
  units: ({ channels, sprue }) => {
    const drawn = channels.filter(isDrawn);
    if (drawn.length < 2) return [];
    return [{ subject: 'mold', about: [], input: { channels: drawn, wellRadius: sprue?.wellRadius ?? 0 } }];
  },
  run: ({ channels, wellRadius }) => {
    const strips = channels.map((channel) => ({ channel, corners: channelCorners(channel) }));
    const findings = strips.flatMap((one, i) =>
      strips
        .slice(i + 1)
        .filter(
          ({ channel }) => channel.placement !== one.channel.placement && !bothJoin(channel, one.channel),
        )
        .flatMap((other) => together(one, other, wellRadius)),
    );
    return { findings };
  },
});

interface Strip {
  readonly channel: Channel;
  readonly corners: readonly Point2[];
}

const bothJoin = (one: Channel, other: Channel): boolean => one.joins === true && other.joins === true;

function together(one: Strip, other: Strip, wellRadius: number): Finding[] {
  const common = clipped(other.corners, one.corners);
  if (common.length === 0) return [];
  const beyond = Math.max(...common.map((at) => Math.hypot(...at))) - wellRadius;
  const measured = Math.min(lengthAlong(one.channel, common), beyond);
  if (!(measured > 0)) return [];
  const { id: subject, kind, placement } = one.channel;
  const which = kind === 'vent' && other.channel.kind === 'vent' ? 'vents' : 'other';
  const values = { measured, limit: 0, kind, placement, other: other.channel.placement };
  return [
    finding('channels.meet', {
      subject,
      place: middleOf(common),
      values: { which, ...values, otherKind: other.channel.kind },
    }),
  ];
}
