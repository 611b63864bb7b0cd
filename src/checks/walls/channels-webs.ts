import { type Finding, finding } from '../../findings/index.ts';
import { clipped, sidesApart } from '../../geometry/index.ts';
import {
  type Channel,
  type Check,
  channelOutline,
  check,
  isDrawn,
  legCorners,
  legsOf,
  openRun,
} from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { type BoxAround, boxAround, boxesApart } from './box-around.ts';
import { isJunction } from './channels-apart.ts';

interface WebsInput {
  readonly channels: readonly Channel[];
  readonly limit: number;
}

/** The tongues of rubber between channels that carry metal side by side, out of the well above all. A vent needs none. */
export const channelsWebs: Check = check<WebsInput>({
  id: 'channels-webs',
  title: 'Webs between gates and runners',
  follows: false,
  processes: everyProcess,
  units: (mold) => {
    const channels = mold.channels.filter((channel) => channel.kind !== 'vent' && isDrawn(channel));
    if (channels.length < 2) return [];
    return [{ subject: 'mold', about: [], input: { channels, limit: mold.limits.web } }];
  },
  run: ({ channels, limit }) => {
    const open = channels
      .map((channel) => ({ channel, run: openRun(channel) }))
      .filter(({ run }) => isDrawn({ run }))
      .map(({ channel, run }) => {
        const outline = channelOutline({ run });
        return { channel, run, outline, box: boxAround(outline) };
      });
    return {
      findings: open.flatMap((one, i) =>
        open
          .slice(i + 1)
          .filter((other) => !isJunction(one.channel, other.channel))
          .flatMap((other) => webBetween(one, other, limit)),
      ),
    };
  },
});

interface Open extends Pick<Channel, 'run'> {
  readonly channel: Channel;
  readonly outline: ReturnType<typeof channelOutline>;
  readonly box: BoxAround;
}

function webBetween(one: Open, other: Open, limit: number): Finding[] {
  if (boxesApart(one.box, other.box) >= limit) return [];
  const { distance: measured, middle } = sidesApart(one.outline, other.outline);
  // What runs together leaves no web.
  if (measured >= limit || measured === 0 || areMeeting(one, other)) return [];
  const { id: subject, kind, placement } = one.channel;
  const values = { measured, limit, kind, placement };
  const about = { other: other.channel.placement, otherKind: other.channel.kind };
  return [finding('channels.web', { subject, place: [...middle, 0], values: { ...values, ...about } })];
}

function areMeeting(one: Open, other: Open): boolean {
  const others = legsOf(other.run).map(legCorners);
  return legsOf(one.run).some((leg) =>
    others.some((corners) => clipped(corners, legCorners(leg)).length > 0),
  );
}
