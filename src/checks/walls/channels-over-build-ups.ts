import { type Finding, finding } from '../../findings/index.ts';
import type { Point2 } from '../../geometry/index.ts';
import {
  type BuildUpSpace,
  buildUpFootprint,
  buildUpSpaces,
  type Channel,
  type Check,
  channelCorners,
  check,
  heightAt,
  leastBuildUp,
  makeAlways,
} from '../../mold/index.ts';
import { isDrawn, lengthAlong, middleOf } from './channel-course.ts';

interface BuildUpInput {
  readonly space: BuildUpSpace;
  readonly channels: readonly Channel[];
}

/** Gates and vents against the build-ups of other masters than their own, which lie where rubber would be cut. */
export const channelsOverBuildUps: Check = check<BuildUpInput>({
  id: 'channels-over-build-ups',
  title: 'Gates and vents over build-ups',
  follows: false,
  processes: ['rubber'],
  units: (mold) =>
    buildUpSpaces(mold).flatMap((space) => {
      const channels = mold.channels.filter(
        (channel) => isDrawn(channel) && channel.placement !== space.id && runsUpOrDown(channel, space),
      );
      return channels.length > 0
        ? [{ subject: space.id, about: [space.id], input: { space, channels } }]
        : [];
    }),
  run: ({ space, channels }, { memoize = makeAlways }) => {
    const { id: _, number: __, ...rest } = space;
    const ground = buildUpFootprint(rest, memoize);
    return { findings: channels.flatMap((channel) => over(channel, space.id, ground)) };
  },
});

/** Whether the parting surface is anywhere along the channel, near the build-up, as far off the plane as one has to be. */
function runsUpOrDown(channel: Channel, { surface }: BuildUpSpace): boolean {
  const { from, to } = channel;
  const [right, , , left] = channelCorners(channel);
  const steps = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / surface.cell);
  for (const [x, y] of [right, from, left]) {
    for (let i = 0; i <= steps; i++) {
      const [dx, dy] = [((to[0] - from[0]) * i) / steps, ((to[1] - from[1]) * i) / steps];
      if (Math.abs(heightAt(surface, x + dx, y + dy)) > leastBuildUp / 2) return true;
    }
  }
  return false;
}

function over(channel: Channel, other: string, ground: readonly Point2[]): Finding[] {
  const { id: subject, kind, placement, from, to, width } = channel;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const within = ground.filter(([x, y]) => {
    const [dx, dy] = [x - from[0], y - from[1]];
    const along = dx * ux + dy * uy;
    return along >= 0 && along <= length && Math.abs(dx * uy - dy * ux) <= width / 2;
  });
  const measured = lengthAlong(channel, within);
  if (!(measured > 0)) return [];
  const values = { measured, limit: 0, kind, placement, other };
  return [finding('channels.build-up', { subject, place: middleOf(within), values })];
}
