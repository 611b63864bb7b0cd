import type { Point2, TriangleMesh, Vec3 } from '../../geometry/index.ts';
import {
  bossSpace,
  type Channel,
  channelMesh,
  fitsOnRim,
  heightAt,
  legsOf,
  type Mold,
  notchMesh,
  type PartingSurface,
  rodMesh,
  soundSprue,
  sprueSpace,
  tabMesh,
} from '../../mold/index.ts';
import { boltCircle } from '../from-mold/index.ts';
import type { Fixture, WallKind } from './measure-wall.ts';

/** All that cavities keep walls to, but the cavities themselves. */
export const everyFixture = (mold: Mold): Fixture[] =>
  [bossesOf, wellOf, channelsOf, tabsOf, notchesOf, boltsOf].flatMap((of) => of(mold));

export function bossesOf({ process, bosses, limits }: Mold): Fixture[] {
  const limit = limits.cavityToBoss;
  return bosses.map((boss) => ({
    id: boss.id,
    ...boundsAlong({ from: [boss.x, boss.y], to: [boss.x, boss.y] }, bossSpace(boss, process).reach),
    points: [[boss.x, boss.y, 0]],
    kind: { limit, name: 'walls.boss', code: 'walls.boss', broken: 'walls.broken' },
    shape: () => ({ boss, process }),
  }));
}

export function wellOf(mold: Mold): Fixture[] {
  const { disc, limits } = mold;
  const sprue = soundSprue(mold);
  if (!sprue) return [];
  const limit = limits.cavityToWell;
  return [
    {
      id: 'sprue',
      ...boundsAlong({ from: [0, 0], to: [0, 0] }, sprueSpace(sprue).reach),
      points: Array.from({ length: 24 }, (_point, k): Vec3 => {
        const angle = (k * Math.PI) / 12;
        return [sprue.wellRadius * Math.cos(angle), sprue.wellRadius * Math.sin(angle), 0];
      }),
      kind: { limit, name: 'walls.well', code: 'walls.well', broken: 'walls.broken' },
      shape: () => ({ sprue, upper: disc.upper }),
    },
  ];
}

export function channelsOf({ channels, limits, parting }: Mold): Fixture[] {
  return channels.flatMap((channel) => {
    const mesh = channelMesh(channel, parting, 0);
    if (!mesh) return [];
    const legs = legsOf(channel.run).map(({ from, to }) => ({
      from: from.at,
      to: to.at,
      width: Math.max(from.width, to.width) / 2,
    }));
    const broken = channel.kind === 'runner' ? 'channels.in-cavity' : 'walls.channel';
    return [
      {
        id: channel.id,
        // A slowing bend's pocket keeps its wall to the cavity it is for.
        ...(channel.kind !== 'pocket' && { own: channel.placement }),
        gapTo: (x, y, reach) =>
          Math.min(...legs.map(({ from, to, width }) => fromPath({ from, to }, x, y) - reach - width)),
        points: pointsOf(channel, parting),
        // A channel through another's cavity feeds or vents that one too: bad, but the mold stays whole.
        kind: { limit: limits.wall, name: 'walls.channel', code: 'walls.channel', broken },
        shape: () => ({ mesh }),
      },
    ];
  });
}

/** Points where the channel hangs from the parting surface, 5 mm apart at most. */
function pointsOf({ run }: Channel, surface: PartingSurface): Vec3[] {
  return legsOf(run).flatMap(({ from: { at: from }, to: { at: to }, length }, leg) => {
    const steps = Math.max(1, Math.ceil(length / 5));
    const points = Array.from({ length: steps + 1 }, (_, k): Vec3 => {
      const [x, y] = [0, 1].map((axis) => from[axis] + ((to[axis] - from[axis]) * k) / steps);
      return [x, y, heightAt(surface, x, y)];
    });
    return leg === 0 ? points : points.slice(1);
  });
}

const tabKind = (limit: number) =>
  ({ limit, name: 'walls.tab', code: 'walls.tab', broken: 'walls.broken' }) as const;

export function tabsOf({ tabs, disc, limits, process }: Mold): Fixture[] {
  return tabs
    .filter((tab) => fitsOnRim(tab, disc.radius))
    .map((tab) => ({
      id: tab.id,
      // The flat outer face lies inside the rim by more than the inset: a whole width more is sure to hold it.
      ...boundsAlong(
        inward(disc.radius, tab.angleRad, tab.inset + tab.length + tab.width / 2),
        tab.width / 2,
      ),
      points: verticesOf(tabMesh(tab, disc.radius, process)),
      kind: tabKind(limits.wall),
      shape: () => ({ mesh: tabMesh(tab, disc.radius, process) }),
    }));
}

export function notchesOf({ notches, disc, limits }: Mold): Fixture[] {
  return notches.flatMap((notch) => {
    const mesh = notchMesh(notch, disc);
    if (!mesh) return [];
    return [
      {
        id: notch.id,
        ...boundsAlong(inward(disc.radius, notch.angleRad, notch.depth), notch.width / 2),
        points: verticesOf(mesh),
        kind: tabKind(limits.wall),
        shape: () => ({ mesh }),
      },
    ];
  });
}

/** The bolts where they stand, or all of their circle where the plan does not say. Those outside the disc: none. */
export function boltsOf({ bench, disc, limits, process }: Mold): Fixture[] {
  const { bolts } = boltCircle(bench);
  if (process !== 'rubber' || !bolts || bolts.circle - bolts.radius >= disc.radius) return [];
  const { radius, circle, count, startRad } = bolts;
  const kind: WallKind = {
    limit: limits.wall,
    name: 'walls.bolt',
    code: 'walls.bolt',
    broken: 'fit.bolt-hits',
  };
  const span = { low: -disc.lower, high: disc.upper };
  const onCircle = (angle: number): [number, number] => [circle * Math.cos(angle), circle * Math.sin(angle)];
  const inDisc = ([x, y]: readonly [number, number]): Vec3 => [x, y, 0];
  if (startRad === undefined) {
    const ring = { ...span, inner: circle - radius, outer: circle + radius };
    return [
      {
        id: 'bolts',
        gapTo: (x, y, reach) => Math.abs(Math.hypot(x, y) - circle) - reach - radius,
        points: Array.from({ length: 72 }, (_, k) => inDisc(onCircle((k * Math.PI) / 36))),
        kind,
        shape: () => ({ mesh: rodMesh(ring, 0, 0) }),
      },
    ];
  }
  return Array.from({ length: count }, (_, k) => {
    const at = onCircle(startRad + (2 * Math.PI * k) / count);
    return {
      id: `bolt-${k + 1}`,
      ...boundsAlong({ from: at, to: at }, radius),
      points: [inDisc(at)],
      kind,
      shape: () => ({ mesh: rodMesh({ ...span, outer: radius }, ...at) }),
    };
  });
}

interface Path {
  readonly from: Point2;
  readonly to: Point2;
}

/** From the rim straight inward, seen from above. */
const inward = (radius: number, angleRad: number, by: number): Path => ({
  from: [(radius - by) * Math.cos(angleRad), (radius - by) * Math.sin(angleRad)],
  to: [radius * Math.cos(angleRad), radius * Math.sin(angleRad)],
});

const verticesOf = ({ positions }: TriangleMesh): Vec3[] =>
  Array.from({ length: positions.length / 3 }, (_, v) => [
    positions[v * 3],
    positions[v * 3 + 1],
    positions[v * 3 + 2],
  ]);

/** What stays within `width` of a straight path, seen from above. */
const boundsAlong = (path: Path, width: number) => ({
  gapTo: (x: number, y: number, reach: number): number => fromPath(path, x, y) - reach - width,
});

/** Distance of (x, y) from a straight path, seen from above. */
function fromPath({ from, to }: Path, x: number, y: number): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((x - from[0]) * dx + (y - from[1]) * dy) / square : 0;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - from[0] - t * dx, y - from[1] - t * dy);
}
