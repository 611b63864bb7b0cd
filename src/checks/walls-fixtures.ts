import type { ReportPart } from '../findings/index.ts';
import type { TriangleMesh } from '../kernel/index.ts';
import { type Channel, type Check, type Mold, work } from '../mold/index.ts';
import { channelMesh, notchMesh, tabMesh } from './lofted-mesh.ts';
import { type Cavity, cavityOf, everyProcess, type Kind, measure } from './walls.ts';

interface FixtureInput {
  readonly cavity: Cavity;
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly kind: Kind;
}

/** Cavities against the gates and vents of others; their own open into them. */
export const wallsToChannels: Check = work<FixtureInput, ReportPart>({
  id: 'walls-channels',
  title: 'Walls between cavities and channels',
  scope: 'pair',
  processes: everyProcess,
  jobs: (mold) => {
    const limit = mold.limits.wall;
    const kind: Kind = { limit, name: 'walls.channel', code: 'walls.channel' };
    return mold.channels.flatMap((channel) => {
      const near = mold.placements.filter(
        ({ id, x, y, reach }) =>
          id !== channel.placement && fromPath(channel, x, y) - reach - channel.width / 2 <= limit,
      );
      const mesh = near.length > 0 ? channelMesh(channel, mold.parting) : undefined;
      return near.flatMap((placement) =>
        mesh
          ? [
              {
                subject: placement.id,
                input: { cavity: cavityOf(mold, placement), id: channel.id, mesh, kind },
              },
            ]
          : [],
      );
    });
  },
  run: measureFixture,
});

/** Cavities against tabs and notches. */
export const wallsToTabs: Check = work<FixtureInput, ReportPart>({
  id: 'walls-tabs',
  title: 'Walls between cavities, tabs and notches',
  scope: 'pair',
  processes: everyProcess,
  jobs: (mold) => {
    const limit = mold.limits.wall;
    const kind: Kind = { limit, name: 'walls.tab', code: 'walls.tab' };
    return [...tabsOf(mold), ...notchesOf(mold)].flatMap(({ id, angleRad, inward, width, mesh }) => {
      const radius = mold.disc.radius;
      const path = {
        from: [(radius - inward) * Math.cos(angleRad), (radius - inward) * Math.sin(angleRad)],
        to: [radius * Math.cos(angleRad), radius * Math.sin(angleRad)],
      } as const;
      return mold.placements
        .filter(({ x, y, reach }) => fromPath(path, x, y) - reach - width / 2 <= limit)
        .map((placement) => ({
          subject: placement.id,
          input: { cavity: cavityOf(mold, placement), id, mesh, kind },
        }));
    });
  },
  run: measureFixture,
});

const tabsOf = ({ tabs, disc }: Mold) =>
  tabs.map((tab) => ({
    id: tab.id,
    angleRad: tab.angleRad,
    // The flat outer face lies inside the rim by more than the inset: a whole width more is sure to hold it.
    inward: tab.inset + tab.length + tab.width / 2,
    width: tab.width,
    mesh: tabMesh(tab, disc.radius),
  }));

const notchesOf = ({ notches, disc }: Mold) =>
  notches.map((notch) => ({
    id: notch.id,
    angleRad: notch.angleRad,
    inward: notch.depth,
    width: notch.width,
    mesh: notchMesh(notch, disc),
  }));

function measureFixture({ cavity, id, mesh, kind }: FixtureInput): ReportPart {
  return measure(cavity, { id, mesh, estimated: false }, kind);
}

/** Distance of (x, y) from a straight path, seen from above. */
function fromPath({ from, to }: Pick<Channel, 'from' | 'to'>, x: number, y: number): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((x - from[0]) * dx + (y - from[1]) * dy) / square : 0;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - from[0] - t * dx, y - from[1] - t * dy);
}
