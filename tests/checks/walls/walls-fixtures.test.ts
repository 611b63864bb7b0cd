import { describe, expect, it } from 'vitest';
import { wallsToBosses } from '../../../src/checks/walls/walls-bosses.ts';
import { wallsToChannels } from '../../../src/checks/walls/walls-channels.ts';
import { wallsToRim } from '../../../src/checks/walls/walls-rim.ts';
import { wallsToTabs } from '../../../src/checks/walls/walls-tabs.ts';
import { compose, rotation, translation } from '../../../src/geometry/index.ts';
import { measureMesh } from '../../../src/mesh/index.ts';
import { type Boss, type Channel, notchMesh, type Process, tabMesh } from '../../../src/mold/index.ts';
import { notchArea } from '../../parts/notch-area.ts';
import { box, single } from '../../revolved-solids.ts';
import { straightChannel } from '../../straight-channel.ts';
import { emptyMold, figureOf, runCheck, withMaster } from '../small-mold.ts';

const brick = single(box([-4, -3, -2], [4, 3, 2]));
const gate = (y: number, placement = 'other'): Channel =>
  straightChannel({
    id: 'gate-other',
    kind: 'gate',
    placement,
    from: [20, y],
    to: [100, y],
    width: 3,
    depth: 1.5,
    half: 'upper',
  });
const tab = { id: 'tab-1', angleRad: 0, width: 20, length: 12, height: 3, inset: 1 };
const notch = { id: 'notch-1', angleRad: 0, width: 6, depth: 4 };

describe('the bodies', () => {
  it('look outward and hold the volume of a wedge and a V with a round root', () => {
    // A quarter as high at its inner edge.
    expect(measureMesh(tabMesh(tab, 125, 'rubber')).volume).toBeCloseTo((20 * 12 * (3 + 0.75)) / 2, 2);
    const mesh = notchMesh(notch, emptyMold.disc);
    if (!mesh) throw new Error('no notch');
    // The root is drawn by chords at most 0.01 mm inside it.
    expect(Math.abs(measureMesh(mesh).volume / 25.4 - notchArea(notch, 125))).toBeLessThan(Math.PI * 0.01);
  });
});

describe('walls to channels', () => {
  const mold = (y: number, placement?: string) => ({
    ...withMaster(emptyMold, 'brick', brick, translation(60, 0, 0)),
    channels: [gate(y, placement)],
  });

  it('warns of another\u2019s gate that runs close by', async () => {
    const report = await runCheck(wallsToChannels, mold(7));
    expect(report.findings.map(({ code, severity, subject }) => [code, severity, subject])).toEqual([
      ['walls.channel', 'warn', 'brick-1'],
    ]);
    expect(figureOf(report, 'walls.channel', 'brick-1 gate-other')).toBeCloseTo(2.5, 5);
  });

  it('warns where it runs through the cavity, keeps quiet of its own gate and of one far off', async () => {
    const through = await runCheck(wallsToChannels, mold(0));
    expect(through.findings.map(({ code }) => code)).toEqual(['walls.channel']);
    expect(through.findings[0].values.which).toBe('meets');
    expect((await runCheck(wallsToChannels, mold(7, 'brick-1'))).findings).toEqual([]);
    const far = await runCheck(wallsToChannels, mold(30));
    expect(figureOf(far, 'walls.channel', 'brick-1 gate-other')).toBeCloseTo(25.5, 4);
    expect(far.findings).toEqual([]);
  });

  it('says the same when the whole is turned', async () => {
    const turn = rotation('z', 0.7);
    const [c, s] = [Math.cos(0.7), Math.sin(0.7)];
    const channel = gate(7);
    const turned = ([x, y]: readonly [number, number]): [number, number] => [x * c - y * s, x * s + y * c];
    const report = await runCheck(wallsToChannels, {
      ...withMaster(emptyMold, 'brick', brick, compose(turn, translation(60, 0, 0))),
      channels: [{ ...channel, run: channel.run.map((one) => ({ ...one, at: turned(one.at) })) }],
    });
    expect(figureOf(report, 'walls.channel', 'brick-1 gate-other')).toBeCloseTo(2.5, 4);
  });
});

describe('walls to a channel over a slope of its section', () => {
  // Edge of the brick along the gate at (3, 3) over its middle: 3 sqrt 2 from it, less the half-round's radius.
  it('are measured to the round of a gate, not to the bar round it', async () => {
    const mold = {
      ...withMaster(emptyMold, 'brick', brick, translation(60, 6, 5)),
      channels: [gate(0)],
    };
    const report = await runCheck(wallsToChannels, mold);
    expect(figureOf(report, 'walls.channel', 'brick-1 gate-other')).toBeCloseTo(3 * Math.SQRT2 - 1.5, 2);
  });

  it('are the same for one in the lower half as for its mirror image', async () => {
    const at = (half: 'lower' | 'upper', z: number) => ({
      ...withMaster(emptyMold, 'brick', brick, translation(60, 6, z)),
      channels: [{ ...gate(0), half }],
    });
    const above = await runCheck(wallsToChannels, at('upper', 5));
    const below = await runCheck(wallsToChannels, at('lower', -5));
    const of = (report: typeof above): number => figureOf(report, 'walls.channel', 'brick-1 gate-other');
    expect(of(below)).toBeCloseTo(of(above), 6);
  });
});

describe('walls to bosses by the process', () => {
  const cone: Boss = {
    id: 'cone',
    kind: 'cone',
    x: 60,
    y: 0,
    turnRad: 0,
    size: '12',
    acrossFlats: 0,
    rootDepth: 6,
    headRadius: 6,
    headHeight: 7.2,
    clearance: 0,
  };
  const wall = async (process: Process, boss: Boss, z: number): Promise<number> => {
    const mold = { ...withMaster(emptyMold, 'brick', brick, translation(48, 0, z)), process, bosses: [boss] };
    return figureOf(await runCheck(wallsToBosses, mold), 'walls.boss', `brick-1 ${boss.id}`);
  };

  it('count the root where the boss is laid in, and not where it is one with the lower half', async () => {
    // The brick ends at x = 52, its top 4 under the plane; the foot of the cone begins at 54, its root goes down 6.
    expect(await wall('rubber', cone, -6)).toBeCloseTo(2, 1);
    expect(await wall('poured', cone, -6)).toBeCloseTo(Math.hypot(2, 4), 1);
    expect(await wall('rigid', cone, -6)).toBeCloseTo(Math.hypot(2 - 0.6, 4), 1);
    const nut: Boss = { ...cone, id: 'nut', kind: 'cap nut', acrossFlats: 11, headHeight: 8 };
    expect(await wall('poured', nut, -6)).toBeCloseTo(54 - 52 - (11 / Math.sqrt(3) - 6), 1);
  });

  it('and what is left to the rim count in rigid halves what is cut for them, lead-in and clearance', async () => {
    const atRim = async (process: Process) => {
      const boss = { ...cone, clearance: 0.25 };
      return figureOf(
        await runCheck(wallsToRim, { ...emptyMold, process, bosses: [boss] }),
        'walls.rim',
        'cone',
      );
    };
    expect(await atRim('rubber')).toBeCloseTo(125 - 66, 6);
    expect(await atRim('poured')).toBeCloseTo(125 - 66, 6);
    // A gap c square to a wall that leans is c sqrt(r2 + h2) / h level.
    const gap = (0.25 * Math.hypot(6, 7.2)) / 7.2;
    expect(await atRim('rigid')).toBeCloseTo(125 - 66 - gap - 0.6, 6);
  });
});

describe('walls to tabs and notches', () => {
  it('measure to the wedge, which is thinner inward, not to the box round it', async () => {
    const inner = Math.sqrt(124 ** 2 - 100) - 12;
    // The edge of the brick at the inner edge of the tab, 2 over the plane: h / 8 of the wedge is 0.375, its flank rises by 1.125 on 12.
    const over = withMaster(emptyMold, 'brick', brick, translation(inner - 4, 0, 4));
    const report = await runCheck(wallsToTabs, { ...over, tabs: [tab] });
    expect(figureOf(report, 'walls.tab', 'brick-1 tab-1')).toBeCloseTo(
      (2 - 0.375) / Math.hypot(1, 1.125 / 12),
      4,
    );
  });

  it('warns of both under the limit', async () => {
    const inner = Math.sqrt(124 ** 2 - 100) - 12;
    const atTab = withMaster(emptyMold, 'brick', brick, translation(inner - 2 - 4, 0, 0));
    const byTab = await runCheck(wallsToTabs, { ...atTab, tabs: [tab] });
    expect(figureOf(byTab, 'walls.tab', 'brick-1 tab-1')).toBeCloseTo(2, 4);
    expect(byTab.findings.map(({ code }) => code)).toEqual(['walls.tab']);
    const atNotch = withMaster(emptyMold, 'brick', brick, translation(121 - 1.5 - 4, 0, 0));
    const byNotch = await runCheck(wallsToTabs, { ...atNotch, notches: [notch] });
    expect(figureOf(byNotch, 'walls.tab', 'brick-1 notch-1')).toBeCloseTo(1.5, 4);
    // Of two bricks the nearer one alone is measured far off.
    const far = withMaster(emptyMold, 'brick', brick, translation(-60, 0, 0), translation(60, 0, 0));
    const byBoth = await runCheck(wallsToTabs, { ...far, tabs: [tab], notches: [notch] });
    expect(byBoth.findings).toEqual([]);
    expect(byBoth.figures.map(({ subject }) => subject)).toEqual(['brick-2 tab-1', 'brick-2 notch-1']);
    expect(figureOf(byBoth, 'walls.tab', 'brick-2 notch-1')).toBeCloseTo(121 - 64, 4);
  });
});
