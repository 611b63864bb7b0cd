import { describe, expect, it } from 'vitest';
import { flash, pressure } from '../../src/checks/turning/index.ts';
import { figureOf, runCheck } from '../checks/small-mold.ts';
import { cubes } from './cast-bricks.ts';

const spun = (machine: object) => cubes({ spin: { speedRpm: 600, shotKg: 0.04 }, machine });
const codes = async (machine: object) =>
  (await runCheck(flash, spun(machine))).findings.map(({ code, severity }) => `${code} ${severity}`);

describe('metal between the halves', () => {
  // rho omega^2 (r^2 - r_s^2) / 2 summed over rings, out to the rim at 125 mm; 600 rpm is 20 pi rad/s.
  it('pushes on all of the parting plane out to the rim', async () => {
    const surface = figureOf(await runCheck(pressure, spun({})), 'pressure.surface', 'spin') / 1000;
    const [rings, rim] = [20_000, 0.125];
    let force = 0;
    for (let i = 0; i < rings; i++) {
      const r = surface + ((i + 0.5) / rings) * (rim - surface);
      force +=
        ((7000 * (20 * Math.PI) ** 2 * (r ** 2 - surface ** 2)) / 2) *
        2 *
        Math.PI *
        r *
        ((rim - surface) / rings);
    }
    expect(figureOf(await runCheck(flash, spun({})), 'flash.force', 'spin') / force).toBeCloseTo(1, 6);
    // Some 5 kN; what is beyond 4 kN opens a frame of 2 kN/mm.
    const report = await runCheck(flash, spun({ closingForceN: 4000, stiffnessNMm: 2000 }));
    expect(figureOf(report, 'flash.gap', 'spin')).toBeCloseTo((force - 4000) / 2000, 4);
    expect(force).toBeGreaterThan(4500);
  });

  it('is told where the machine no longer holds it, unless the mold opens anyway', async () => {
    expect(await codes({ closingForceN: 4000 })).toEqual(['shot.flash-spreads note']);
    expect(await codes({ closingForceN: 9000, stiffnessNMm: 2000 })).toEqual([]);
    expect(await codes({ closingForceN: 1 })).toEqual([]);
    expect(await codes({})).toEqual([]);
  });
});
