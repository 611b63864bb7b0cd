import { describe, expect, it } from 'vitest';
import { coverOfCavities } from '../../../src/checks/cover/cover.ts';
import { coverOfFixtures } from '../../../src/checks/cover/cover-fixtures.ts';
import { wallsBetweenCavities } from '../../../src/checks/walls/walls.ts';
import { wallsToBosses } from '../../../src/checks/walls/walls-bosses.ts';
import { wallsToRim } from '../../../src/checks/walls/walls-rim.ts';
import { translation } from '../../../src/geometry/index.ts';
import type { Mold, Process } from '../../../src/mold/index.ts';
import { box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, nutAt, runCheck, withMaster } from '../small-mold.ts';

const brick = single(box([-4, -3, -2], [4, 3, 2]));

/** Limits far under what the process makes, so that the floor alone speaks. */
const printed = (process: Process = 'rigid'): Mold => ({
  ...emptyMold,
  process,
  limits: { ...emptyMold.limits, cover: 0.1, wall: 0.1, cavityToRim: 0.1 },
  fixture: { ...emptyMold.fixture, making: { process: 'FDM', leastFeature: 0.8 } },
});

describe('what the process makes whole of a rigid half', () => {
  const twoBricks = (mold: Mold, gap: number): Mold =>
    withMaster(mold, 'brick', brick, translation(60, 0, 0), translation(60, 6 + gap, 0));

  it('is a floor under the wall between two cavities: boxes a known gap apart', async () => {
    const { findings } = await runCheck(wallsBetweenCavities, twoBricks(printed(), 0.6));
    expect(findings).toMatchObject([
      {
        code: 'walls.under-process',
        severity: 'stop',
        values: { measured: expect.closeTo(0.6, 4), limit: 0.8, making: 'FDM' },
        place: [expect.any(Number), expect.closeTo(3.3, 4), expect.any(Number)],
      },
    ]);
    expect((await runCheck(wallsBetweenCavities, twoBricks(printed(), 0.81))).findings).toEqual([]);
  });

  it('is one under the cover and to the rim, and protects people: metal can run out', async () => {
    const { upper, radius } = printed().disc;
    const high = withMaster(printed(), 'brick', brick, translation(60, 0, upper - 2 - 0.5));
    expect((await runCheck(coverOfCavities, high)).findings).toMatchObject([
      { code: 'cover.under-process', severity: 'stop', values: { limit: 0.8 } },
    ]);
    // The box's far corner is at (x + 4, 3).
    const far = Math.sqrt((radius - 0.5) ** 2 - 9) - 4;
    const outside = withMaster(printed(), 'brick', brick, translation(far, 0, 0));
    expect((await runCheck(wallsToRim, outside)).findings).toMatchObject([
      { code: 'cover.under-process', values: { measured: expect.closeTo(0.5, 4) } },
    ]);
  });

  it('is none where rubber or silicone is pressed or poured, nor where no process is named', async () => {
    for (const process of ['rubber', 'poured'] as const)
      expect((await runCheck(wallsBetweenCavities, twoBricks(printed(process), 0.6))).findings).toEqual([]);
    const { making: _, ...fixture } = printed().fixture;
    const unnamed = { ...printed(), fixture };
    expect((await runCheck(wallsBetweenCavities, twoBricks(unnamed, 0.6))).findings).toEqual([]);
  });

  it('where nothing is left the older stops speak', async () => {
    const { findings } = await runCheck(wallsBetweenCavities, twoBricks(printed(), -1));
    expect(findings.map(({ code }) => code)).toEqual(['walls.broken']);
  });
});

describe('what is cut for a boss in rigid halves', () => {
  const dome = nutAt('dome', 60, 0, {
    kind: 'dome',
    acrossFlats: 0,
    headRadius: 5,
    headHeight: 5,
    clearance: 0.25,
  });
  const beside = (process: Process, boss: Mold['bosses'][number]): Mold =>
    withMaster({ ...emptyMold, process, bosses: [boss] }, 'brick', brick, translation(60 - 5 - 3 - 4, 0, 0));

  it('keeps the wall: socket with clearance and lead-in, where rubber has the head itself', async () => {
    const wall = async (mold: Mold) =>
      figureOf(await runCheck(wallsToBosses, mold), 'walls.boss', 'brick-1 dome');
    // Drawn by 48 sides round the circle: up to 0.2 % of 5 mm nearer.
    expect(Math.abs((await wall(beside('rubber', dome))) - 3)).toBeLessThan(0.02);
    // The mouth is 0.25 + 0.6 mm wider than the head at the parting plane, where the brick passes.
    expect(Math.abs((await wall(beside('rigid', dome))) - (3 - 0.85))).toBeLessThan(0.02);
  });

  it('and the cover: over the tip by the clearance, and none under a head that is one with the lower half', async () => {
    const report = await runCheck(coverOfFixtures, beside('rigid', dome));
    const { lower, upper } = emptyMold.disc;
    expect(figureOf(report, 'cover.upper', 'dome')).toBeCloseTo(upper - 5.25, 6);
    expect(figureOf(report, 'cover.lower', 'dome')).toBeCloseTo(lower, 6);
    const nut = await runCheck(
      coverOfFixtures,
      beside('rigid', { ...dome, kind: 'cap nut', acrossFlats: 13 }),
    );
    expect(figureOf(nut, 'cover.lower', 'dome')).toBeCloseTo(lower - 6.5, 6);
  });
});
