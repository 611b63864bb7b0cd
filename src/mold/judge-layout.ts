import { type Finding, finding } from '../findings/index.ts';
import type { Boss, Notch, Process, Tab } from './mold.ts';
import type { Fixed } from './resolve-parting.ts';
import { bossSpace, sprueSpace, tabFace } from './shapes/index.ts';

// A tab as wide as its chord allows ends on the rim itself; rounding must not call that outside.
const slack = 1e-9;

/** A thing on the disc by the ring it takes up: nearest and farthest distance from the axis, mm. */
interface Ring {
  readonly id: string;
  readonly near: number;
  readonly far: number;
  readonly place: readonly [number, number, number];
}

const bossRing = (boss: Boss, process: Process): Ring => {
  const { id, x, y } = boss;
  const middle = Math.hypot(x, y);
  const { reach } = bossSpace(boss, process);
  return { id, near: middle - reach, far: middle + reach, place: [x, y, 0] };
};

/** Room between what two bosses take, seen from above, by the circles round it; below 0 where they stand in one another. */
export const roomBetween = (one: Boss, other: Boss, process: Process): number =>
  Math.hypot(one.x - other.x, one.y - other.y) -
  bossSpace(one, process).reach -
  bossSpace(other, process).reach;

function inOneAnother(bosses: readonly Boss[], process: Process): Finding[] {
  return bosses.flatMap((boss, i) =>
    bosses.slice(0, i).flatMap((earlier) => {
      const gap = roomBetween(boss, earlier, process);
      if (gap >= 0) return [];
      return [
        finding('layout.bosses-meet', {
          subject: boss.id,
          place: [boss.x, boss.y, 0],
          values: { measured: gap, limit: 0, other: earlier.id, by: -gap },
        }),
      ];
    }),
  );
}

const tabRing = (tab: Tab, radius: number): Ring => {
  const { id, angleRad, inset, length, width } = tab;
  const outer = tabFace(tab, radius);
  return {
    id,
    near: outer - length,
    far: Math.max(radius - inset, width / 2 + inset),
    place: onRim(angleRad, outer),
  };
};

const notchRing = ({ id, angleRad, width, depth }: Notch, radius: number): Ring => ({
  id,
  near: radius - depth,
  far: Math.max(radius, width / 2),
  place: onRim(angleRad, radius),
});

const onRim = (angleRad: number, radius: number): [number, number, number] => [
  radius * Math.cos(angleRad),
  radius * Math.sin(angleRad),
  0,
];

/**
 * Tabs and notches against the rim, they and bosses against the well, bosses against each other. What cavities and bosses leave to the rim
 * the wall checks say.
 */
export function judgeLayout({ process, disc, sprue, bosses, tabs, notches }: Fixed): Finding[] {
  const bossRings = bosses.map((boss) => bossRing(boss, process));
  const rimThings = [
    ...tabs.map((tab) => tabRing(tab, disc.radius)),
    ...notches.map((notch) => notchRing(notch, disc.radius)),
  ];
  const well = sprue ? sprueSpace(sprue).reach : 0;
  return [
    ...rimThings.flatMap((ring) => pastRim(ring, disc.radius)),
    ...inOneAnother(bosses, process),
    // What reaches past the rim is told of once.
    ...[...bossRings, ...rimThings.filter(({ far }) => far <= disc.radius + slack)].flatMap((ring) =>
      overWell(ring, well),
    ),
  ];
}

function pastRim({ id, far, place }: Ring, radius: number): Finding[] {
  if (far <= radius + slack) return [];
  return [
    finding('layout.outside-disc', {
      subject: id,
      place,
      values: { measured: far, limit: radius, beyond: far - radius },
    }),
  ];
}

function overWell({ id, near, place }: Ring, well: number): Finding[] {
  if (near >= well) return [];
  return [
    finding('layout.over-well', {
      subject: id,
      place,
      values: { measured: near, limit: well },
    }),
  ];
}
