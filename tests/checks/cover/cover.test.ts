import { describe, expect, it } from 'vitest';
import { coverOfCavities } from '../../../src/checks/cover/cover.ts';
import { coverOfFixtures } from '../../../src/checks/cover/cover-fixtures.ts';
import { leastCover } from '../../../src/checks/cover/cover-least.ts';
import { coverOfParting } from '../../../src/checks/cover/cover-parting.ts';
import { figureCatalogue } from '../../../src/findings/index.ts';
import { translation } from '../../../src/geometry/index.ts';
import type { PartingSurface } from '../../../src/mold/index.ts';
import { sayFinding } from '../../../src/wording/index.ts';
import { ball, box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, nutAt, runCheck, smallSprue, withMaster } from '../small-mold.ts';

/** A surface at one height from x = 20 on, on the plane elsewhere. */
function stepped(height: number): PartingSurface {
  const [nx, ny, cell] = [300, 300, 1];
  const heights = Float32Array.from({ length: nx * ny }, (_, k) => (-150 + (k % nx) >= 20 ? height : 0));
  const sheet = { positions: new Float32Array(), triangles: new Uint32Array() };
  return { flat: false, cell, x0: -150, y0: -150, nx, ny, heights, sheet, error: 0 };
}

const sphere = single(ball(5, [0, 0, 0]));

describe('cover', () => {
  // A ball of radius 5 sunk by h reaches 5 - h up and 5 + h down; cover is half thickness less that.
  it('is the half less the depth and the height, with the places of the poles', async () => {
    const mold = withMaster(emptyMold, 'bead', sphere, translation(40, 0, -1));
    const report = await runCheck(coverOfCavities, mold);
    expect(figureOf(report, 'depth.below', 'bead-1')).toBeCloseTo(6, 6);
    expect(figureOf(report, 'height.above', 'bead-1')).toBeCloseTo(4, 6);
    expect(figureOf(report, 'cover.lower', 'bead-1')).toBeCloseTo(6.7, 6);
    expect(figureOf(report, 'cover.upper', 'bead-1')).toBeCloseTo(8.7, 6);
    const lower = report.figures.find(({ name }) => name === 'cover.lower');
    expect(lower?.places?.[0].map((value) => Math.round(value * 1e4) / 1e4)).toEqual([40, 0, -6]);
    expect(report.findings).toEqual([]);
  });

  it('warns under the limit and names the next stock that is thick enough', async () => {
    // 10.2 below in 12.7 leaves 2.5 where 3 is wanted; 13.2 is needed: 5/8 in = 15.875.
    const mold = withMaster(emptyMold, 'bead', sphere, translation(40, 0, -5.2));
    const { findings } = await runCheck(coverOfCavities, mold);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: 'cover.thin', severity: 'warn', subject: 'bead-1' });
    expect(findings[0].values.measured).toBeCloseTo(2.5, 5);
    expect(findings[0].values).toMatchObject({ limit: 3, stock: '5/8 in' });
    expect(findings[0].place?.[2]).toBeCloseTo(-10.2, 5);
  });

  it('stops where a master comes through, on either side, and at exactly nothing left', async () => {
    for (const [z, half] of [
      [-8, 'lower'],
      [8, 'upper'],
      [-7.7, 'lower'],
    ] as const) {
      const mold = withMaster(emptyMold, 'bead', sphere, translation(40, 0, z));
      const { findings } = await runCheck(coverOfCavities, {
        ...mold,
        disc: { ...mold.disc, lower: 12.7, upper: 12.7 },
      });
      expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['cover.through', 'stop']]);
      expect(findings[0].values.half).toBe(half);
    }
  });

  it('keeps quiet at exactly the limit, and about a half that a master does not enter', async () => {
    const charm = single(box([-5, -5, 0], [5, 5, 9]));
    const mold = withMaster(
      { ...emptyMold, disc: { ...emptyMold.disc, lower: 1, upper: 12 } },
      'charm',
      charm,
      translation(40, 0, 0),
    );
    expect((await runCheck(coverOfCavities, mold)).findings).toEqual([]);
  });

  it('says so where no stock is thick enough, and speaks of no stock for rigid halves', async () => {
    const tall = withMaster(emptyMold, 'pole', single(box([-1, -1, 0], [1, 1, 24])), translation(40, 0, 0));
    const rubber = await runCheck(coverOfCavities, tall);
    expect(sayFinding(rubber.findings[0], 'metric').remedy).toContain('No stock has the 27.00 mm');
    const rigid = await runCheck(coverOfCavities, { ...tall, process: 'rigid' });
    expect(sayFinding(rigid.findings[0], 'metric').remedy).toContain('at least 27.00 mm');
  });

  it('looks at bosses and at the well, but lets the pouring hole through', async () => {
    const mold = { ...emptyMold, sprue: { ...smallSprue, wellDepth: 10 }, bosses: [nutAt('north', 0, 100)] };
    const report = await runCheck(coverOfFixtures, mold);
    expect(figureOf(report, 'cover.lower', 'north')).toBeCloseTo(6.2, 9);
    expect(figureOf(report, 'cover.upper', 'north')).toBeCloseTo(4.2, 9);
    expect(report.findings.map(({ code, subject }) => [code, subject])).toEqual([['cover.thin', 'sprue']]);
  });

  it('gives the least of all, and what each half needs', async () => {
    const mold = {
      ...withMaster(emptyMold, 'bead', sphere, translation(40, 0, -1), translation(-40, 0, 3)),
      bosses: [nutAt('north', 0, 100)],
    };
    const report = await runCheck(leastCover, mold);
    // Upper: 8 of the second bead, 8.5 of the nut; lower: 6.5 of the nut, 6 of the first bead.
    expect(figureOf(report, 'cover.least', 'mold')).toBeCloseTo(4.2, 6);
    expect(figureOf(report, 'cover.needs-upper', 'mold')).toBeCloseTo(11.5, 6);
    expect(figureOf(report, 'cover.needs-lower', 'mold')).toBeCloseTo(9.5, 6);
    expect((await runCheck(leastCover, emptyMold)).figures).toEqual([]);
  });

  it('measures depth and height from the parting surface where it is, and cover from the outer faces', async () => {
    // A ball of radius 5 at the plane's height, under a surface raised by 2: 7 under it, 3 over it.
    const mold = { ...withMaster(emptyMold, 'bead', sphere, translation(60, 0, 0)), parting: stepped(2) };
    const report = await runCheck(coverOfCavities, mold);
    expect(figureOf(report, 'depth.below', 'bead-1')).toBeCloseTo(7, 5);
    expect(figureOf(report, 'height.above', 'bead-1')).toBeCloseTo(3, 5);
    expect(figureOf(report, 'cover.lower', 'bead-1')).toBeCloseTo(7.7, 5);
    expect(figureOf(report, 'cover.upper', 'bead-1')).toBeCloseTo(7.7, 5);
    // What they are called says from where.
    expect(figureCatalogue['depth.below'].label).toBe('reaches below the parting surface');
    expect(figureCatalogue['height.above'].label).toBe('reaches above it');
    expect(figureCatalogue['depth.below'].means).toContain('parting surface');
    expect(figureCatalogue['height.above'].means).toContain('parting surface');
  });

  it('looks at the halves where the parting surface nears their outer faces', async () => {
    const mold = (height: number) => ({ ...emptyMold, parting: stepped(height) });
    const fine = await runCheck(coverOfParting, mold(-4));
    expect(figureOf(fine, 'cover.parting-lower', 'mold')).toBeCloseTo(8.7, 5);
    expect(figureOf(fine, 'cover.parting-upper', 'mold')).toBeCloseTo(12.7, 5);
    expect(fine.findings).toEqual([]);
    const thin = await runCheck(coverOfParting, mold(10.7));
    expect(thin.findings.map(({ code, severity }) => [code, severity])).toEqual([['cover.thin', 'warn']]);
    expect(thin.findings[0].place?.[0]).toBeGreaterThanOrEqual(20);
    const through = await runCheck(coverOfParting, mold(-13));
    expect(through.findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['cover.through', 'stop'],
    ]);
    expect(coverOfParting.units(emptyMold)).toEqual([]);
  });

  it('names the least stock for each half after what drives it', async () => {
    const mold = {
      ...withMaster(emptyMold, 'bead', sphere, translation(40, 0, -1), translation(-40, 0, 3)),
      bosses: [nutAt('north', 0, 100)],
    };
    const report = await runCheck(leastCover, mold);
    // 9.5 below for the nut: 3/8 in is 9.525; 11.5 above for the nut: 1/2 in.
    expect(figureOf(report, 'cover.stock-lower', 'north')).toBeCloseTo(9.525, 6);
    expect(figureOf(report, 'cover.stock-upper', 'north')).toBeCloseTo(12.7, 6);
    expect((await runCheck(leastCover, { ...mold, process: 'rigid' })).figures).toHaveLength(3);
  });
});
