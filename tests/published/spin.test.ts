import { describe, expect, it } from 'vitest';
import { speedBand } from '../../src/checks/turning/speed-band.ts';
import { spin } from '../../src/checks/turning/spin.ts';
import { translation } from '../../src/geometry/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { emptyMold, figureOf, runCheck, smallSprue, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';

const bench: Mold['bench'] = {
  alloy: { densityKgM3: 1000 },
  machine: { maxSpeedRpm: 1000 },
  spin: { speedRpm: 600 },
};
const aluminum: Mold = {
  ...emptyMold,
  process: 'rigid',
  fixture: { ...emptyMold.fixture, material: '6061-T6' },
  sprue: { ...smallSprue, wellRadius: 10 },
  disc: { ...emptyMold.disc, radius: 115 },
  bench,
};
const codes = async (mold: Mold) =>
  (await runCheck(spin, mold)).findings.map(({ code, severity }) => [code, severity]);

describe('spin of rigid halves', () => {
  // Timoshenko and Roark: 2700 kg/m3, nu 0.33, radii 10 and 115 mm, 600 rpm: 0.11753 MPa at the bore. 6061-T6: at least 42 ksi, 290 MPa.
  it('of aluminum, bore 10, radius 115 mm at 600 rpm', async () => {
    const report = await runCheck(spin, aluminum);
    expect(figureOf(report, 'spin.stress', 'spin') / 1e6).toBeCloseTo(0.11753, 5);
    const omega = 20 * Math.PI;
    const rim = (2700 * omega ** 2 * 1e-6 * (0.67 * 115 ** 2 + 3.33 * 10 ** 2)) / 4;
    expect(figureOf(report, 'spin.rimStress', 'spin')).toBeCloseTo(rim, 3);
    expect(figureOf(report, 'spin.factor', 'spin')).toBeCloseTo(290 / 0.11753, 0);
    expect(figureOf(report, 'spin.burst', 'spin') / (600 * Math.sqrt(290 / 0.11753))).toBeCloseTo(1, 4);
    expect(figureOf(report, 'spin.rimSpeed', 'spin')).toBeCloseTo(omega * 0.115, 9);
    expect(report.findings).toEqual([]);
  });

  // Metal in the cavities hangs on what they leave: density 2700 + 1000 v / (V - v).
  it('carries the metal in its cavities', async () => {
    const brick = single(box([-20, -20, -10], [20, 20, 10]));
    const loaded = withMaster(aluminum, 'brick', brick, translation(70, 0, 0), translation(-70, 0, 0));
    const whole = Math.PI * (115 ** 2 - 10 ** 2) * 25.4;
    const share = (1000 * 64_000) / (whole - 64_000) / 2700;
    expect(figureOf(await runCheck(spin, loaded), 'spin.stress', 'spin') / 1e6).toBeCloseTo(
      0.11753 * (1 + share),
      5,
    );
  });

  // A quarter of 290 MPa, stress growing with the square of the speed: 600 sqrt(290 / 4 / stress).
  it('are strained from half their burst speed on', async () => {
    const brick = single(box([-20, -20, -10], [20, 20, 10]));
    const loaded = withMaster(aluminum, 'brick', brick, translation(70, 0, 0), translation(-70, 0, 0));
    const whole = Math.PI * (115 ** 2 - 10 ** 2) * 25.4;
    const stress = 0.11753 * (1 + (1000 * 64_000) / (whole - 64_000) / 2700);
    const sprue = { ...smallSprue, holeRadius: 7, wellRadius: 10 };
    const strains = figureOf(await runCheck(speedBand, { ...loaded, sprue }), 'speed.strains', 'spin');
    expect(strains / (600 * Math.sqrt(290 / 4 / stress))).toBeCloseTo(1, 4);
  });

  it('stops where four times the stress is more than the strength', async () => {
    const burst = figureOf(await runCheck(spin, aluminum), 'spin.burst', 'spin');
    const turning = (speedRpm: number): Mold => ({
      ...aluminum,
      bench: { ...bench, machine: { maxSpeedRpm: 1e6 }, spin: { speedRpm } },
    });
    expect(await codes(turning(burst / 2 - 1))).toEqual([]);
    expect(await codes(turning(burst / 2 + 1))).toEqual([['spin.weak', 'stop']]);
  });

  it('stops where the strength is not known', async () => {
    for (const material of ['aluminum', 'ASA', 'oak']) {
      const mold = { ...aluminum, fixture: { ...aluminum.fixture, material } };
      expect(await codes(mold)).toEqual([['spin.strength-unknown', 'stop']]);
    }
  });
});

describe('spin of rubber halves', () => {
  const rubber: Mold = { ...emptyMold, bench };

  it('is held to the limit of the machine, and to no stress', async () => {
    const report = await runCheck(spin, rubber);
    expect(report.findings).toEqual([]);
    expect(report.figures.map(({ name }) => name)).toEqual(['spin.rimSpeed']);
    const fast = { ...rubber, bench: { ...bench, spin: { speedRpm: 1001 } } };
    expect(await codes(fast)).toEqual([['spin.over-limit', 'stop']]);
  });

  it('asks for speed and limit', async () => {
    const { findings } = await runCheck(spin, { ...rubber, bench: { spin: {} } });
    expect(findings.map(({ code }) => code)).toEqual(['spin.not-checked']);
    expect(findings[0].values).toEqual({ missing: ['spin.speed', 'machine.maxSpeed'] });
    expect(sayFinding(findings[0], 'metric').says).toBe(
      'The speed is in part not checked: the plan does not say spin.speed and machine.maxSpeed.',
    );
  });
});
