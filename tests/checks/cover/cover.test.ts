import { describe, expect, it } from 'vitest';
import { coverOfCavities } from '../../../src/checks/cover/cover.ts';
import { coverOfFixtures } from '../../../src/checks/cover/cover-fixtures.ts';
import { leastCover } from '../../../src/checks/cover/cover-least.ts';
import { coverOfParting } from '../../../src/checks/cover/cover-parting.ts';
import { figureCatalogue } from '../../../src/findings/index.ts';
import {
  compose,
  type Matrix4,
  rotation,
  type TriangleMesh,
  translation,
} from '../../../src/geometry/index.ts';
import type { PartingSurface } from '../../../src/mold/index.ts';
import { sayFinding } from '../../../src/wording/index.ts';
import { ball, box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, nutAt, runCheck, smallSprue, withMaster } from '../small-mold.ts';

/** A surface at one height from x = 20 on, on the plane elsewhere. */
function stepped(height: number): PartingSurface {
  const [nx, ny, cell] = [60, 64, 5];
  const heights = Float32Array.from({ length: nx * ny }, (_, k) => (-150 + 5 * (k % nx) >= 20 ? height : 0));
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

  it('says where bosses and well reach, as no estimate', async () => {
    const mold = { ...emptyMold, sprue: { ...smallSprue, wellDepth: 5 }, bosses: [nutAt('north', 7, 100)] };
    const { figures } = await runCheck(coverOfFixtures, mold);
    const at = (name: string, subject: string) =>
      figures.find((one) => one.name === name && one.subject === subject);
    // Rooted 6.5 deep and 8.5 high, where the nut stands; the well 5 deep on the axis.
    expect(at('depth.below', 'north')).toMatchObject({
      value: 6.5,
      places: [[7, 100, -6.5]],
      estimated: false,
    });
    expect(at('height.above', 'north')).toMatchObject({ value: 8.5, places: [[7, 100, 8.5]] });
    expect(at('cover.lower', 'north')?.places).toEqual([[7, 100, -6.5]]);
    expect(at('cover.upper', 'north')?.places).toEqual([[7, 100, 8.5]]);
    expect(at('depth.below', 'sprue')?.value).toBe(5);
  });

  it('of several that reach as far, the stock is said of the first by name, whatever the order of the plan', async () => {
    const bosses = ['north', 'east', 'west'].map((id, i) => nutAt(id, 100 * Math.cos(i), 100 * Math.sin(i)));
    for (const some of [bosses, bosses.toReversed()]) {
      const report = await runCheck(leastCover, { ...emptyMold, bosses: some });
      expect(figureOf(report, 'cover.stock-lower', 'east')).toBeCloseTo(9.525, 6);
      expect(figureOf(report, 'cover.stock-upper', 'east')).toBeCloseTo(12.7, 6);
      const stock = report.figures.find(({ name }) => name === 'cover.stock-lower');
      // Both: how it was found and whose stock it is.
      expect(stock?.source).toMatch(/^extent of the placed mesh .*; \S/);
    }
  });

  it('one estimated placement makes the least cover an estimate', async () => {
    const mold = withMaster(emptyMold, 'bead', sphere, translation(40, 0, -1), translation(-40, 0, 3));
    const [first, second] = mold.placements;
    const known = await runCheck(leastCover, mold);
    expect(known.figures.some(({ estimated }) => estimated)).toBe(false);
    const guessed = { ...mold, placements: [first, { ...second, estimated: true }] };
    expect((await runCheck(leastCover, guessed)).figures.every(({ estimated }) => estimated)).toBe(true);
  });

  it('where the lower half decides, it is the least', async () => {
    const mold = withMaster(emptyMold, 'bead', sphere, translation(40, 0, -3));
    // 8 down and 2 up in halves of 12.7.
    expect(figureOf(await runCheck(leastCover, mold), 'cover.least', 'mold')).toBeCloseTo(4.7, 6);
  });

  it('gives as the parting\u2019s extremes the nodes where they are, and what is wanted of the halves there', async () => {
    const surface = stepped(0);
    // Node (30, 40) up by 10.7, node (-50, -60) down by 11.
    const node = (x: number, y: number): number => ((y + 150) / 5) * surface.nx + (x + 150) / 5;
    surface.heights[node(30, 40)] = 10.7;
    surface.heights[node(-50, -60)] = -11;
    const { figures, findings } = await runCheck(coverOfParting, { ...emptyMold, parting: surface });
    const of = (name: string) => figures.find((one) => one.name === name);
    expect(of('cover.parting-upper')?.places).toEqual([[30, 40, expect.closeTo(10.7, 5)]]);
    expect(of('cover.parting-lower')?.places).toEqual([[-50, -60, -11]]);
    expect(figures.every(({ estimated }) => !estimated)).toBe(true);
    expect(findings.map(({ values }) => [values.half, values.needed])).toEqual([
      ['lower', expect.closeTo(14, 5)],
      ['upper', expect.closeTo(13.7, 5)],
    ]);
    // Cells half as wide: the same nodes lie half as far from the corner.
    const finer = await runCheck(coverOfParting, { ...emptyMold, parting: { ...surface, cell: 2.5 } });
    expect(finer.figures[1].places?.[0].slice(0, 2)).toEqual([-60, -55]);
  });

  it('keeps quiet of a parting surface that leaves exactly what is wanted', async () => {
    const surface = { ...stepped(9), heights: stepped(9).heights };
    const mold = { ...emptyMold, disc: { ...emptyMold.disc, upper: 12 }, parting: surface };
    expect((await runCheck(coverOfParting, mold)).findings).toEqual([]);
  });

  it('where nothing is over a raised surface, the highest point is the place', async () => {
    // A ball of radius 5 under a surface raised by 6: nothing over it, 11 below it.
    const mold = { ...withMaster(emptyMold, 'bead', sphere, translation(60, 0, 0)), parting: stepped(6) };
    const { figures } = await runCheck(coverOfCavities, mold);
    const over = figures.find(({ name }) => name === 'height.above');
    expect(over?.value).toBe(0);
    expect(over?.places?.[0][2]).toBeCloseTo(5, 5);
    const under = figures.find(({ name }) => name === 'depth.below');
    expect(under?.places?.[0][2]).toBeCloseTo(-5, 5);
  });

  it('where nothing is under a lowered surface, the lowest point is the place, whichever vertex is first', async () => {
    const brick = single(box([-4, -3, -2], [4, 3, 2]));
    const placesOf = async (surface: number, matrix: Matrix4) => {
      const mold = { ...withMaster(emptyMold, 'brick', brick, matrix), parting: stepped(surface) };
      const { figures } = await runCheck(coverOfCavities, mold);
      return ['depth.below', 'height.above'].map((name) => {
        const found = figures.find((one) => one.name === name);
        return [found?.value, found?.places?.[0][2]];
      });
    };
    for (const turn of [rotation('x', 0), rotation('x', Math.PI)]) {
      const at = compose(translation(60, 0, 0), turn);
      expect(await placesOf(-6, at)).toEqual([
        [0, expect.closeTo(-2, 5)],
        [expect.closeTo(8, 5), expect.closeTo(2, 5)],
      ]);
      expect(await placesOf(6, at)).toEqual([
        [expect.closeTo(8, 5), expect.closeTo(-2, 5)],
        [0, expect.closeTo(2, 5)],
      ]);
    }
  });

  it('under a step the deepest point is not the lowest, nor the tallest the highest', async () => {
    // On the plane until x = 15, from x = 20 on 4 mm up. At x = 10 from -3 to 4; at x = 30 from -1 to 6, so 5 under and 2 over.
    const plank: TriangleMesh = {
      positions: Float32Array.from([10, -2, -3, 10, 2, -3, 10, 0, 4, 30, -2, -1, 30, 2, -1, 30, 0, 6]),
      triangles: Uint32Array.from([0, 2, 1, 3, 4, 5, 0, 1, 4, 0, 4, 3, 1, 2, 5, 1, 5, 4, 2, 0, 3, 2, 3, 5]),
    };
    const mold = { ...withMaster(emptyMold, 'plank', plank, translation(0, 0, 0)), parting: stepped(4) };
    const report = await runCheck(coverOfCavities, mold);
    const at = (name: string) => report.figures.find((one) => one.name === name);
    expect(at('depth.below')).toMatchObject({ value: 5, places: [[30, expect.any(Number), -1]] });
    expect(at('height.above')).toMatchObject({ value: 4, places: [[10, 0, 4]] });
    // The outer faces are flat: cover is left over by the highest and the lowest.
    expect(at('cover.lower')).toMatchObject({
      value: expect.closeTo(9.7, 5),
      places: [[10, expect.any(Number), -3]],
    });
    expect(at('cover.upper')).toMatchObject({ value: expect.closeTo(6.7, 5), places: [[30, 0, 6]] });
  });

  it('speaks of stock, which comes in steps, only where halves are cut from it', async () => {
    const low = withMaster(emptyMold, 'bead', sphere, translation(40, 0, -5.2));
    for (const process of ['rubber', 'rigid', 'poured'] as const) {
      const { findings } = await runCheck(coverOfCavities, { ...low, process });
      expect(findings[0].values.needed).toBeCloseTo(13.2, 5);
      expect(findings[0].values.stock).toBe(process === 'rubber' ? '5/8 in' : undefined);
    }
  });
});
