import { describe, expect, it } from 'vitest';
import { draft } from '../../../src/checks/release/draft.ts';
import { release } from '../../../src/checks/release/release.ts';
import { compose, rotation, translation } from '../../../src/geometry/index.ts';
import type { Mold } from '../../../src/mold/index.ts';
import { ball, box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, runCheck, withMaster } from '../small-mold.ts';

const brick = single(box([-4, -3, -2], [4, 3, 2]));
const bead = single(ball(5, [0, 0, 0]));
const rigid: Mold = { ...emptyMold, process: 'rigid' };
const poured: Mold = { ...emptyMold, process: 'poured' };

describe('release', () => {
  it('of a box across the plane leaves nothing', async () => {
    for (const mold of [emptyMold, rigid, poured]) {
      const report = await runCheck(release, withMaster(mold, 'brick', brick, translation(60, 0, 0)));
      expect(report.findings).toEqual([]);
      expect(figureOf(report, 'undercut.share', 'brick-1')).toBeCloseTo(0, 6);
    }
  });

  // The brick above the plane holds on to the air under it: 8 x 6 x 1 mm in the lower half's columns.
  it('finds the air under a raised box, on the upper half\u2019s side', async () => {
    const report = await runCheck(release, withMaster(emptyMold, 'brick', brick, translation(60, 0, 3)));
    expect(figureOf(report, 'undercut.lower', 'brick-1')).toBeCloseTo(0, 6);
    expect(figureOf(report, 'undercut.upper', 'brick-1') / 48).toBeCloseTo(1, 1);
    expect(figureOf(report, 'undercut.depth-upper', 'brick-1')).toBeCloseTo(1, 5);
    expect(figureOf(report, 'undercut.share', 'brick-1')).toBeCloseTo(0.25, 2);
    expect(report.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['release.undercut', 'warn'],
    ]);
  });

  it('stops a rigid half over 0.05 mm, unless undercuts are filled', async () => {
    const at = (z: number) => translation(60, 0, 2 + z);
    const raised = withMaster(rigid, 'brick', brick, at(0.06));
    const stopped = await runCheck(release, raised);
    expect(stopped.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['release.locked', 'stop'],
    ]);
    expect(stopped.findings[0].values.measured).toBeCloseTo(0.06, 5);
    expect((await runCheck(release, withMaster(rigid, 'brick', brick, at(0.04)))).findings).toEqual([]);
    const relieved = { ...raised, fixture: { ...raised.fixture, relieve: true } };
    expect((await runCheck(release, relieved)).findings.map(({ code }) => code)).toEqual([
      'release.relieved',
    ]);
  });

  it('of placements that differ in place and turn alone is the same, each with its own place', async () => {
    const raised = translation(0, 0, 2);
    const mold = withMaster(
      emptyMold,
      'bead',
      bead,
      compose(translation(60, 0, 0), raised),
      compose(rotation('z', 2.1), translation(60, 10, 0), rotation('z', 0.4), raised),
    );
    const report = await runCheck(release, mold);
    const [first, second] = ['bead-1', 'bead-2'].map((id) => figureOf(report, 'undercut.upper', id));
    expect(first).toBeGreaterThan(8);
    expect(second).toBe(first);
    const depths = report.figures.filter(({ name }) => name === 'undercut.depth-upper');
    expect(depths[0].value).toBeGreaterThan(1);
    for (const [i, { x, y }] of mold.placements.entries()) {
      const [px, py] = depths[i].places?.[0] ?? [0, 0];
      expect(Math.hypot(px - x, py - y)).toBeLessThan(5.1);
    }
  });

  it('does not judge what is narrower than two columns', async () => {
    // A blade 0.05 mm wide under the plane\u2019s height hits one column at most.
    const blade = single(box([-3, -0.025, 0.5], [3, 0.025, 2]));
    const report = await runCheck(release, withMaster(rigid, 'blade', blade, translation(60, 0, 0)));
    expect(report.findings).toEqual([]);
  });
});

describe('draft', () => {
  const areas = async (mold: Mold): Promise<Map<number, number>> => {
    const { series } = await runCheck(draft, mold);
    return new Map(series[0].x.values.map((x, i) => [x, series[0].y.values[i]]));
  };

  it('of a box: walls at 0, floors at 90', async () => {
    const found = await areas(withMaster(rigid, 'brick', brick, translation(60, 0, 0)));
    expect(found.get(2.5)).toBeCloseTo(2 * 4 * (8 + 6), 4);
    expect(found.get(87.5)).toBeCloseTo(2 * 8 * 6, 4);
    expect([...found.values()].reduce((sum, area) => sum + area)).toBeCloseTo(112 + 96, 4);
  });

  it('counts what is undercut below 0: the underside of a raised box', async () => {
    const found = await areas(withMaster(rigid, 'brick', brick, translation(60, 0, 4)));
    expect(found.get(-87.5)).toBeCloseTo(48, 4);
  });

  it('is for rigid halves', () => {
    expect(draft.units(withMaster(emptyMold, 'brick', brick, translation(60, 0, 0)))).toEqual([]);
  });
});
