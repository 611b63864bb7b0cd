import { describe, expect, it } from 'vitest';
import { coverOfCavities } from '../../src/checks/cover.ts';
import { wallsToRim } from '../../src/checks/rim.ts';
import { wallsBetweenCavities } from '../../src/checks/walls.ts';
import { translation } from '../../src/kernel/index.ts';
import type { Mold, Process } from '../../src/mold/index.ts';
import { box, single } from '../turned-solids.ts';
import { emptyMold, runCheck, withMaster } from './small-mold.ts';

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
        measured: { value: expect.closeTo(0.6, 4), unit: 'mm' },
        limit: { value: 0.8, unit: 'mm' },
        place: [expect.any(Number), expect.closeTo(3.3, 4), expect.any(Number)],
      },
    ]);
    expect(findings[0].says).toContain('0.80 mm to come out whole (FDM)');
    expect((await runCheck(wallsBetweenCavities, twoBricks(printed(), 0.81))).findings).toEqual([]);
  });

  it('is one under the cover and to the rim, and protects people: metal can run out', async () => {
    const { upper, radius } = printed().disc;
    const high = withMaster(printed(), 'brick', brick, translation(60, 0, upper - 2 - 0.5));
    expect((await runCheck(coverOfCavities, high)).findings).toMatchObject([
      { code: 'cover.under-process', severity: 'stop', limit: { value: 0.8 } },
    ]);
    // The box's far corner is at (x + 4, 3).
    const far = Math.sqrt((radius - 0.5) ** 2 - 9) - 4;
    const outside = withMaster(printed(), 'brick', brick, translation(far, 0, 0));
    expect((await runCheck(wallsToRim, outside)).findings).toMatchObject([
      { code: 'cover.under-process', measured: { value: expect.closeTo(0.5, 4) } },
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
