import { describe, expect, it } from 'vitest';
import { channelMesh, notchMesh, tabMesh } from '../../src/checks/lofted-mesh.ts';
import { wallsToChannels, wallsToTabs } from '../../src/checks/walls-fixtures.ts';
import { compose, rotation, translation } from '../../src/kernel/index.ts';
import { measureMesh } from '../../src/mesh/index.ts';
import type { Channel } from '../../src/mold/index.ts';
import { notchArea } from '../parts/notch-area.ts';
import { box, single } from '../turned-solids.ts';
import { emptyMold, figureOf, runCheck, withMaster } from './small-mold.ts';

const brick = single(box([-4, -3, -2], [4, 3, 2]));
const gate = (y: number, placement = 'other'): Channel => ({
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
  it('look outward and hold the volume of a bar, a box and a V with a round root', () => {
    expect(measureMesh(channelMesh(gate(0), emptyMold.parting)).volume).toBeCloseTo(80 * 3 * 1.5, 3);
    const lower = { ...gate(0), half: 'lower' } as const;
    expect(measureMesh(channelMesh(lower, emptyMold.parting)).volume).toBeCloseTo(80 * 3 * 1.5, 3);
    expect(measureMesh(tabMesh(tab, 125)).volume).toBeCloseTo(20 * 12 * 3, 2);
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
      channels: [{ ...channel, from: turned(channel.from), to: turned(channel.to) }],
    });
    expect(figureOf(report, 'walls.channel', 'brick-1 gate-other')).toBeCloseTo(2.5, 4);
  });
});

describe('walls to tabs and notches', () => {
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
