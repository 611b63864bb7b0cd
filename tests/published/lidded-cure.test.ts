import { describe, expect, it } from 'vitest';
import { cureReached } from '../../src/checks/heat/cure.ts';
import type { Mold } from '../../src/mold/index.ts';
import { emptyMold, figureOf, runCheck } from '../checks/small-mold.ts';
import { type Layer, middleOfLayers } from './layered-slab.ts';

/** Arrhenius with 90 kJ/mol over a history sampled every second, minutes at 160 C (R = 8.314 J/molK), trapezoids. */
function gatheredMin(history: readonly number[]): number {
  const rate = (c: number) => Math.exp((-90_000 / 8.314462618) * (1 / (c + 273.15) - 1 / 433.15));
  return history.slice(1).reduce((sum, c, i) => sum + (rate(c) + rate(history[i])) / 2, 0) / 60;
}

const steel = (thickness: number): Layer => ({
  thickness,
  conductivity: 48,
  capacity: 7850 * 490,
  cells: 8,
});
const rubber: Layer = { thickness: 0.01905, conductivity: 0.22, capacity: 0.22 / 1.1e-7, cells: 50 };
const heating = { start: 20, around: () => 155, step: 1, steps: 4500 };

// Cengel, Table 4-2, and the exact series of the slab: middle of a slab with Bi 1 and with faces held, at Fo 0.5.
it.each([
  [0.22 / 0.01905, 1.1191 * Math.exp(-(0.8603 ** 2) * 0.5)],
  [1e9, 0.370777],
])('the layered solver, contact %d, agrees with the closed form of one layer', (contact, left) => {
  const steps = Math.round((0.5 * 0.01905 ** 2) / 1.1e-7);
  const end = middleOfLayers([rubber], contact, { ...heating, steps }).at(-1) ?? 0;
  expect(Math.abs((155 - end) / 135 - left)).toBeLessThan(1e-3);
});

type Cure = NonNullable<Mold['bench']['cure']>;
const checked = (thickness: number, cure: Partial<Cure>) =>
  runCheck(cureReached, {
    ...emptyMold,
    disc: { ...emptyMold.disc, lower: 19.05, upper: 19.05 },
    bench: {
      closing: { lid: { material: 'steel', thickness } },
      cure: { temperatureC: 155, timeS: 4500, heating: 'platens', startC: 20, ...cure },
      rubber: {
        diffusivityM2S: 1.1e-7,
        conductivityWMK: 0.22,
        t90S: 720,
        referenceTemperatureC: 160,
        activationEnergyJMol: 90_000,
      },
    },
  });

describe('under lids, with contact to the platens', () => {
  // The same with a lid that conducts without resistance, worked beforehand: 11.3, 10.0, 6.6 min.
  it.each([
    [1000, 11.3],
    [500, 10],
    [200, 6.6],
  ])(
    '20 mm of steel, %d W/m2K: less than the layers gather, by no more than 4 %%',
    async (contactWM2K, ideal) => {
      const ours = figureOf(await checked(20, { contactWM2K }), 'cure.gatheredHot', 'cure') / 60;
      const layered = gatheredMin(middleOfLayers([steel(0.02), rubber], contactWM2K, heating));
      expect(ours).toBeLessThan(layered);
      expect(ours / layered).toBeGreaterThan(0.96);
      const unresisting = { ...steel(0.02), conductivity: 1e6 };
      expect(gatheredMin(middleOfLayers([unresisting, rubber], contactWM2K, heating))).toBeCloseTo(ideal, 1);
    },
  );

  it('between perfect platens, 12.6 min', async () => {
    const report = await checked(0, { contactWM2K: Number.POSITIVE_INFINITY });
    expect(figureOf(report, 'cure.gatheredHot', 'cure') / 60).toBeCloseTo(12.6, 1);
  });

  it('without a contact nothing is told of the cure but that it is not checked', async () => {
    const { findings, figures = [] } = await checked(20, {});
    expect(findings.map(({ code, values }) => [code, values.missing])).toEqual([
      ['cure.not-checked', ['cure.contact']],
    ]);
    expect(figures).toEqual([]);
  });
});

// After heating, the surroundings fall with a time constant of an hour: the layered solver stepped on with it.
it('how much of the cure is owed to cooling', async () => {
  const report = await checked(20, { contactWM2K: 500, cooling: 'in the can', coolingConstantS: 3600 });
  const hot = figureOf(report, 'cure.gatheredHot', 'cure');
  const all = figureOf(report, 'cure.gathered', 'cure');
  const share = figureOf(report, 'cure.fromCooling', 'cure');
  expect(share).toBeCloseTo((all - hot) / all, 12);
  const around = (seconds: number) => (seconds <= 4500 ? 155 : 20 + 135 * Math.exp((4500 - seconds) / 3600));
  const history = middleOfLayers([steel(0.02), rubber], 500, { ...heating, around, steps: 4500 + 4 * 3600 });
  const layered = gatheredMin(history);
  expect(Math.abs(all / 60 / layered - 1)).toBeLessThan(0.02);
  expect(share).toBeCloseTo(1 - gatheredMin(history.slice(0, 4501)) / layered, 2);
  const none = await checked(20, { contactWM2K: 500, cooling: 'out' });
  expect(figureOf(none, 'cure.fromCooling', 'cure')).toBe(0);
});
