import { type Finding, finding } from '../../findings/index.ts';
import type { Point2 } from '../../geometry/index.ts';
import {
  type BuildUpSpace,
  buildUpFootprint,
  buildUpSpaces,
  type Channel,
  type Check,
  check,
  heightAt,
  isDrawn,
  leastBuildUp,
  legCorners,
  legsOf,
  makeAlways,
} from '../../mold/index.ts';
import { middleOf, within } from './channel-course.ts';

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
  return legsOf(channel.run).some((leg) => {
    const [right, farRight, farLeft, left] = legCorners(leg);
    const steps = Math.ceil(leg.length / surface.cell);
    const lines = [[right, farRight] as const, [leg.from.at, leg.to.at] as const, [left, farLeft] as const];
    return lines.some(([from, to]) => {
      for (let i = 0; i <= steps; i++) {
        const [x, y] = [0, 1].map((axis) => from[axis] + ((to[axis] - from[axis]) * i) / steps);
        if (Math.abs(heightAt(surface, x, y)) > leastBuildUp / 2) return true;
      }
      return false;
    });
  });
}

function over(channel: Channel, other: string, ground: readonly Point2[]): Finding[] {
  const { id: subject, kind, placement } = channel;
  const { measured, points } = within(channel, (_, leg) => {
    const { from, to, length, along: way } = leg;
    return ground.filter(([x, y]) => {
      const [dx, dy] = [x - from.at[0], y - from.at[1]];
      const along = dx * way[0] + dy * way[1];
      const width = from.width + ((to.width - from.width) * along) / length;
      return along >= 0 && along <= length && Math.abs(dx * way[1] - dy * way[0]) <= width / 2;
    });
  });
  if (!(measured > 0)) return [];
  const values = { measured, limit: 0, kind, placement, other };
  return [finding('channels.build-up', { subject, place: middleOf(points), values })];
}
