import { describe, expect, it } from 'vitest';
import { canWall } from '../../src/checks/can/can-wall.ts';
import type { Mold } from '../../src/mold/index.ts';
import { hoopStress } from '../../src/physics/index.ts';
import { emptyMold, figureOf, runCheck } from '../checks/small-mold.ts';

const can = (more: object, cureC = 155): Mold => ({
  ...emptyMold,
  bench: {
    can: { diameter: 200, ...more },
    closing: { pressurePa: 1e7 },
    cure: { temperatureC: cureC },
  },
});
const codes = async (mold: Mold) => (await runCheck(canWall, mold)).findings.map(({ code }) => code);

describe('wall of a can', () => {
  // Lame by hand: 10 MPa in radii 100 and 150 mm: 10 (22 500 + 10 000) / (22 500 - 10 000) = 26 MPa; 36 with the 10
  // across the wall.
  it('bore 200, wall 50 mm, 10 MPa: 26 MPa along the hoop', async () => {
    const report = await runCheck(canWall, can({ wall: 50, material: 'steel' }));
    expect(figureOf(report, 'closing.wallHoop', 'can') / 1e6).toBeCloseTo(26, 9);
    expect(figureOf(report, 'closing.wallStress', 'can') / 1e6).toBeCloseTo(36, 9);
    expect(report.findings).toEqual([]);
  });

  // A thin wall comes to pressure times mean radius over thickness: 100.5 for 1 mm.
  it('a thin wall is as the formula of boilers has it', () => {
    expect(hoopStress(1e6, { inner: 100, outer: 101 }) / ((1e6 * 201) / 2)).toBeCloseTo(1, 3);
  });

  // Half a can cut through its axis: the wall holds 2 p r_i, whatever the stress is like inside it (equilibrium).
  // Lame at any r: p r_i^2 / (r_o^2 - r_i^2) (1 + r_o^2 / r^2), summed over the wall.
  it('holds both halves of the can together', () => {
    const [inner, outer, steps] = [100, 150, 2000];
    const bore = hoopStress(1, { inner, outer });
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const r = inner + ((i + 0.5) / steps) * (outer - inner);
      sum += (bore * (1 + outer ** 2 / r ** 2) * (outer - inner)) / (1 + outer ** 2 / inner ** 2) / steps;
    }
    expect(sum).toBeCloseTo(inner, 3);
  });

  it('stops where it yields, or where nobody knows whether it does', async () => {
    // Steel of 170 MPa: 113.3 allowed; 2 p r_o^2 / (r_o^2 - r_i^2) with 20 mm: 65.5, with 8 mm: 140.2 MPa.
    expect(await codes(can({ wall: 20, material: 'steel' }))).toEqual([]);
    expect(await codes(can({ wall: 8, material: 'steel' }))).toEqual(['closing.wall-stress']);
    expect(await codes(can({ wall: 20, material: 'oak' }))).toEqual(['closing.wall-unknown']);
    expect(await codes(can({ wall: 20, material: 'steel' }, 250))).toEqual(['closing.wall-unknown']);
    const { findings } = await runCheck(canWall, can({}));
    expect(findings.map(({ values }) => values.missing)).toEqual([['can.wall', 'can.material']]);
  });
});
