import { describe, expect, it } from 'vitest';
import { wallsBetweenCavities } from '../../../src/checks/walls/walls.ts';
import { wallsToBosses } from '../../../src/checks/walls/walls-bosses.ts';
import { wallsToRim } from '../../../src/checks/walls/walls-rim.ts';
import { wallsToWell } from '../../../src/checks/walls/walls-well.ts';
import { compose, rotation, translation } from '../../../src/geometry/index.ts';
import { ball, box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, nutAt, runCheck, smallSprue, withMaster } from '../small-mold.ts';

const sphere = single(ball(5, [0, 0, 0]));
const brick = single(box([-4, -3, -2], [4, 3, 2]));

describe('walls between cavities', () => {
  // Two balls: distance of the centres less both radii; along y both have a corner of their 96 sides.
  it('is the true distance, with a place on each', async () => {
    const mold = withMaster(emptyMold, 'bead', sphere, translation(50, 0, 0), translation(50, 14, 0));
    const report = await runCheck(wallsBetweenCavities, mold);
    expect(figureOf(report, 'walls.least', 'bead-1 bead-2')).toBeCloseTo(4, 5);
    const [a, b] = report.figures[0].places ?? [];
    expect(a.map((value) => Math.round(value * 1e3) / 1e3)).toEqual([50, 5, 0]);
    expect(b.map((value) => Math.round(value * 1e3) / 1e3)).toEqual([50, 9, 0]);
    expect(report.findings).toEqual([]);
  });

  it('warns under the limit, between the two', async () => {
    const mold = withMaster(emptyMold, 'brick', brick, translation(50, 0, 0), translation(50, 8, 0));
    const { findings } = await runCheck(wallsBetweenCavities, mold);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: 'walls.thin', severity: 'warn', subject: 'brick-1' });
    expect(findings[0].values.measured).toBeCloseTo(2, 6);
    expect(findings[0].place?.[1]).toBeCloseTo(4, 6);
    expect(findings[0].values.other).toBe('brick-2');
  });

  it('sees past overlapping boxes and circles: long pieces side by side', async () => {
    // Bricks 8 x 6, turned by 45 degrees and shifted square to their long sides by 6 + 4 mm.
    const turn = rotation('z', Math.PI / 4);
    const apart = 10 / Math.SQRT2;
    const mold = withMaster(
      emptyMold,
      'brick',
      brick,
      compose(translation(50, 0, 0), turn),
      compose(translation(50 - apart, apart, 0), turn),
    );
    expect(
      figureOf(await runCheck(wallsBetweenCavities, mold), 'walls.least', 'brick-1 brick-2'),
    ).toBeCloseTo(4, 5);
  });

  it('stops where two cavities run into each other, and where one is within the other', async () => {
    for (const [big, small] of [
      [translation(50, 0, 0), translation(53, 0, 0)],
      [translation(50, 0, 0), translation(50, 0, 0)],
    ]) {
      const mold = withMaster(
        withMaster(emptyMold, 'bead', single(ball(9, [0, 0, 0])), big),
        'brick',
        brick,
        small,
      );
      const { findings, figures } = await runCheck(wallsBetweenCavities, mold);
      expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['walls.broken', 'stop']]);
      expect(figures[0].value).toBe(0);
    }
  });

  // Balls of 5 along y, where both have a corner: the middles are 20, 30 and 50 apart.
  it('is measured to the nearest cavity however far it is, and between no others that far', async () => {
    const places = [0, 20, 50].map((y) => translation(50, y - 25, 0));
    const report = await runCheck(wallsBetweenCavities, withMaster(emptyMold, 'bead', sphere, ...places));
    expect(figureOf(report, 'walls.least', 'bead-1 bead-2')).toBeCloseTo(10, 5);
    expect(figureOf(report, 'walls.least', 'bead-2 bead-3')).toBeCloseTo(20, 5);
    expect(report.figures).toHaveLength(2);
    expect(report.findings).toEqual([]);
    expect(wallsBetweenCavities.units(withMaster(emptyMold, 'bead', sphere, places[0]))).toEqual([]);
  });

  it('does not change when the whole mold is turned, or the order of placements', async () => {
    const places = [translation(60, 0, 0), translation(60, 9, 1), translation(66, 4, 6.5)];
    const walls = async (matrices: typeof places): Promise<number[]> => {
      const { figures } = await runCheck(
        wallsBetweenCavities,
        withMaster(emptyMold, 'brick', brick, ...matrices),
      );
      return figures.map(({ value }) => value).sort((a, b) => a - b);
    };
    const plain = await walls(places);
    expect(plain).toHaveLength(3);
    const turned = await walls(places.map((one) => compose(rotation('z', 1.234), one)));
    const reordered = await walls([...places].reverse());
    for (const [i, value] of plain.entries()) {
      expect(turned[i]).toBeCloseTo(value, 5);
      expect(reordered[i]).toBeCloseTo(value, 9);
    }
  });

  it('gives each pair a key of its own two cavities alone', () => {
    const two = [translation(60, 0, 0), translation(60, 9, 0)];
    const [before] = wallsBetweenCavities.units(withMaster(emptyMold, 'brick', brick, ...two));
    const [after] = wallsBetweenCavities.units(
      withMaster(emptyMold, 'brick', brick, ...two, translation(-60, 0, 0)),
    );
    expect(after.input).toEqual(before.input);
  });
});

describe('walls to fixtures and rim', () => {
  it('to a cap nut counts to the corners of its hexagon below the plane, to its collar above', async () => {
    const bosses = [nutAt('east', 80, 0)];
    // A brick wholly above the plane, at collar height: to the collar, radius 6.25. 80 - 6.25 - 70 = 3.75.
    const above = withMaster({ ...emptyMold, bosses }, 'brick', brick, translation(66, 0, 2.001));
    const upper = await runCheck(wallsToBosses, above);
    expect(figureOf(upper, 'walls.boss', 'brick-1 east')).toBeLessThan(3.75);
    // The hexagon's corner circle comes nearer than the collar: 7.5056 out, 0.001 below the brick's underside.
    const corner = 13 / Math.sqrt(3);
    expect(figureOf(upper, 'walls.boss', 'brick-1 east')).toBeCloseTo(10 - corner, 1);
    const high = withMaster(
      { ...emptyMold, bosses },
      'brick',
      single(box([-4, -3, 0], [4, 3, 2])),
      translation(66, 0, 1),
    );
    const collar = figureOf(await runCheck(wallsToBosses, high), 'walls.boss', 'brick-1 east');
    expect(Math.abs(collar - Math.min(3.75, Math.hypot(10 - corner, 1)))).toBeLessThan(0.03);
    expect(upper.findings.map(({ code }) => code)).toEqual(['walls.boss']);
  });

  it('to a dome is the distance of balls, a hair less for its polygon: D - r - R', async () => {
    // A half ball of radius 6 on the plane at 80; a ball of 5 above it at 45 degrees, 14 from its centre.
    const dome = nutAt('dome', 80, 0, {
      kind: 'dome',
      acrossFlats: 0,
      rootDepth: 3,
      headRadius: 6,
      headHeight: 6,
    });
    const s = 14 / Math.SQRT2;
    const mold = withMaster({ ...emptyMold, bosses: [dome] }, 'bead', sphere, translation(80 - s, 0, s));
    const { figures } = await runCheck(wallsToBosses, mold);
    expect(figures[0].value).toBeLessThan(
      3 + 5 * (1 - Math.cos(Math.PI / 96)) + 5 * (1 - Math.cos(Math.PI / 48)) + 0.03,
    );
    expect(figures[0].value).toBeGreaterThan(3 - 6 * (1 / Math.cos(Math.PI / 48) - 1) - 1e-4);
  });

  it('to the well is square to its slanting wall at the plane', async () => {
    // Well radius 15 at the plane; a brick from x = 20 on, in the lower half: 5 mm at z = 0.
    const mold = withMaster({ ...emptyMold, sprue: smallSprue }, 'brick', brick, translation(24, 0, -1));
    const { figures, findings } = await runCheck(wallsToWell, mold);
    expect(figures[0].value).toBeLessThanOrEqual(5);
    expect(figures[0].value).toBeGreaterThan(5 - 15 * (1 / Math.cos(Math.PI / 48) - 1) - 1e-4);
    expect(findings.map(({ code }) => code)).toEqual(['walls.well']);
    const inIt = withMaster({ ...emptyMold, sprue: smallSprue }, 'brick', brick, translation(17, 0, -1));
    expect((await runCheck(wallsToWell, inIt)).findings.map(({ code }) => code)).toEqual(['walls.broken']);
    expect(wallsToWell.units(withMaster(emptyMold, 'brick', brick, translation(24, 0, 0)))).toEqual([]);
  });

  it('to the rim is exact: the corner of a brick, the corners of a nut', async () => {
    const mold = {
      ...withMaster(emptyMold, 'brick', brick, translation(100, 0, 0)),
      bosses: [nutAt('east', 110, 0)],
    };
    const report = await runCheck(wallsToRim, mold);
    expect(figureOf(report, 'walls.rim', 'brick-1')).toBeCloseTo(125 - Math.hypot(104, 3), 9);
    expect(figureOf(report, 'walls.rim', 'east')).toBeCloseTo(15 - 13 / Math.sqrt(3), 9);
    expect(report.findings).toEqual([]);
    const near = withMaster(emptyMold, 'brick', brick, translation(114, 0, 0));
    expect((await runCheck(wallsToRim, near)).findings.map(({ code }) => code)).toEqual(['walls.rim']);
    const out = withMaster(emptyMold, 'brick', brick, translation(122, 0, 0));
    expect((await runCheck(wallsToRim, out)).findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['walls.rim-open', 'stop'],
    ]);
  });
});

describe('walls to the rim, off the axes', () => {
  // The far corner of a brick 8 x 6, turned by 90 degrees: (x + 3, y + 4); of one in the third quarter (x - 4, y - 3).
  it.each([
    [rotation('z', Math.PI / 2), [60, 70], [63, 74]],
    [rotation('z', 0), [-70, -50], [-74, -53]],
    [rotation('z', 0), [30, -90], [34, -93]],
  ] as const)('is measured at the farthest corner, wherever that is', async (turn, [x, y], corner) => {
    const mold = withMaster(emptyMold, 'brick', brick, compose(translation(x, y, 1), turn));
    const report = await runCheck(wallsToRim, mold);
    const away = Math.hypot(...corner);
    expect(figureOf(report, 'walls.rim', 'brick-1')).toBeCloseTo(125 - away, 4);
    const [at, rim] = report.figures[0].places ?? [];
    expect([at[0], at[1]]).toEqual(corner.map((one) => expect.closeTo(one, 4)));
    expect(Math.abs(at[2] - 1)).toBeCloseTo(2, 5);
    // Straight out from it, at its height.
    expect(rim).toEqual([...corner.map((one) => expect.closeTo((one * 125) / away, 3)), at[2]]);
    expect(report.figures[0].estimated).toBe(false);
  });

  it('at the rim nothing is left; beyond it, how far is said', async () => {
    const post = single(box([-1, 0, -1], [1, 1, 1]));
    const found = async (reach: number) => {
      const mold = withMaster(emptyMold, 'post', post, translation(0, reach - 1, 0));
      // Its two far corners are (1, reach) and (-1, reach).
      const radius = Math.hypot(1, 100);
      return (await runCheck(wallsToRim, { ...mold, disc: { ...mold.disc, radius } })).findings;
    };
    expect((await found(100))[0]).toMatchObject({ code: 'walls.rim-open', severity: 'stop' });
    const [beyond] = await found(103);
    const out = Math.hypot(1, 103) - Math.hypot(1, 100);
    expect(beyond.values).toMatchObject({
      measured: expect.closeTo(-out, 4),
      beyond: expect.closeTo(out, 4),
      limit: 10,
    });
    expect((await found(95))[0]).toMatchObject({ code: 'walls.rim', values: { limit: 10 } });
  });

  it('of a boss in rigid halves, what the process makes whole is a floor too', async () => {
    const mold = {
      ...emptyMold,
      process: 'rigid' as const,
      bosses: [nutAt('west', -100, 0, { kind: 'dome', acrossFlats: 0 })],
      limits: { ...emptyMold.limits, bossToRim: 1 },
    };
    const wall = figureOf(await runCheck(wallsToRim, mold), 'walls.rim', 'west');
    const made = (leastFeature: number) =>
      runCheck(wallsToRim, {
        ...mold,
        fixture: { ...mold.fixture, making: { process: 'FDM', leastFeature } },
      });
    expect((await made(wall)).findings).toEqual([]);
    expect((await made(wall + 1e-6)).findings).toMatchObject([
      { code: 'cover.under-process', values: { which: 'rim', making: 'FDM' } },
    ]);
    const { figures } = await made(1);
    expect(figures[0].places?.[1]).toEqual([expect.closeTo(-125, 9), expect.closeTo(0, 9), 0]);
  });
});
