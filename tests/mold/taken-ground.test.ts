import { describe, expect, it } from 'vitest';
import {
  type Boss,
  bossSpace,
  notchCorners,
  type Process,
  type Tab,
  tabCorners,
} from '../../src/mold/index.ts';
import { judgeLayout } from '../../src/mold/judge-layout.ts';
import { pinsOf } from '../../src/mold/resolve-parting.ts';
import { obstaclesOf, pointClearance } from '../../src/parts/printing/obstacles.ts';
import { emptyMold, nutAt, smallSprue } from '../checks/small-mold.ts';

const disc = { ...emptyMold.disc, radius: 40 };
/** So wide that its flat outer face lies 9 mm inside the rim. */
const wide: Tab = { id: 'tab-1', angleRad: 0.3, width: 50, length: 8, height: 3, inset: 1 };
const deep = { id: 'notch-1', angleRad: 2, width: 3, depth: 9 };
const dome: Boss = {
  ...nutAt('dome', 24, 0),
  kind: 'dome',
  acrossFlats: 0,
  headRadius: 6,
  headHeight: 4,
  clearance: 1.5,
};
const nothing = { disc, sprue: undefined, bosses: [], tabs: [], notches: [], process: 'rigid' } as const;

describe('what a fixture takes up of the parting plane', () => {
  it('is level ground: all of a wide tab, all that is cut for a rigid boss', () => {
    const reached = (pins: ReturnType<typeof pinsOf>, x: number, y: number) =>
      pins.some((pin) =>
        'outside' in pin
          ? Math.hypot(x, y) >= pin.outside
          : Math.hypot(pin.x - x, pin.y - y) <= pin.radius + 1e-9,
      );
    const ofTab = pinsOf({ ...nothing, tabs: [wide] });
    for (const [x, y] of tabCorners(wide, disc.radius)) expect(reached(ofTab, x, y)).toBe(true);
    const { reach } = bossSpace(dome, 'rigid');
    expect(reach).toBeGreaterThan(dome.headRadius + 2);
    expect(reached(pinsOf({ ...nothing, bosses: [dome] }), dome.x + reach, 0)).toBe(true);
  });

  it('is nothing a split runs through: corners of a wide tab and the tip of a deep notch', () => {
    const mold = { ...emptyMold, disc, tabs: [wide], notches: [deep] };
    const [tab, notch] = obstaclesOf(mold, 'half');
    for (const [x, y] of tabCorners(wide, disc.radius)) expect(pointClearance(tab, x, y)).toBeLessThan(0.01);
    const corners = notchCorners(deep, disc.radius);
    expect(Math.min(...corners.map(([x, y]) => Math.hypot(x, y)))).toBeCloseTo(40 - 9, 9);
    for (const [x, y] of corners) expect(pointClearance(notch, x, y)).toBeLessThan(0.01);
  });

  it('keeps off the well and other bosses, in rigid halves with clearance and lead-in', () => {
    const codes = (process: Process, bosses: readonly Boss[]) =>
      judgeLayout({ disc, sprue: smallSprue, process, bosses, tabs: [], notches: [] }).map(
        ({ code }) => code,
      );
    // The well is 15 wide: the dome leaves 3 mm, its socket 0.9.
    expect(codes('rigid', [dome])).toEqual([]);
    const near = { ...dome, x: 22 };
    expect(codes('rubber', [near])).toEqual([]);
    expect(codes('rigid', [near])).toEqual(['layout.over-well']);
    // 13 apart: 1 mm between the domes, none between their sockets.
    const other = { ...dome, id: 'other', y: 13 };
    expect(codes('rubber', [dome, other])).toEqual([]);
    expect(codes('rigid', [dome, other])).toEqual(['layout.bosses-meet']);
  });
});
