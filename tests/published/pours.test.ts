import { describe, expect, it } from 'vitest';
import { pours } from '../../src/checks/pouring/index.ts';
import { beforePours, type Poured, whenEven } from '../../src/physics/index.ts';
import { figureOf, runCheck } from '../checks/small-mold.ts';
import { cubes } from './cast-bricks.ts';

const thin: Poured = {
  thickness: 0.002,
  conductivityWMK: 100,
  diffusivityM2S: 5e-5,
  filmWM2K: 20,
  airC: 20,
  startC: 20,
  pulseJM2: 40_000,
};

const full = { halvesC: 30, fillS: 1, handlingS: 120, airC: 20, filmWM2K: 15 };

describe('one pour after another', () => {
  // rho c L = 2e6 x 0.002 = 4000 J/m2K, so a pour warms by 10 K; a = 20 x 60 / 4000 = 0.3: e^-a / (1 - e^-a) = 2.858262.
  it('halves of one temperature', () => {
    expect(whenEven(thin, 60)).toBeCloseTo(20 + 10 * 2.858262, 1);
    const found = beforePours(thin, 60, 3);
    expect(found[0]).toBeCloseTo(20, 6);
    expect(found[1]).toBeCloseTo(20 + 10 * 0.740818, 1);
    expect(found[2]).toBeCloseTo(20 + 10 * (0.740818 + 0.548812), 1);
  });

  it('pour by pour as finite differences have it', () => {
    const rubber = { ...thin, thickness: 0.019, conductivityWMK: 0.2, diffusivityM2S: 1e-7, startC: 60 };
    const found = beforePours(rubber, 180, 20);
    for (const [k, value] of byDifferences(rubber, 180, 20).entries())
      expect(Math.abs(found[k] - value)).toBeLessThan(0.5);
  });

  it('the cycle agrees with what it makes of the halves', async () => {
    const report = await runCheck(pours, cubes({ pouring: full }));
    const [cycle, warm] = [
      figureOf(report, 'pours.cycle', 'pouring'),
      figureOf(report, 'pours.halves', 'pouring'),
    ];
    // The same halves by hand: 12.7 mm, 40 g of 72 400 + 240 (230 - 20) J/kg over both faces of 250 mm.
    const area = 2 * Math.PI * 0.125 ** 2;
    const halves = { ...thin, thickness: 0.0127, conductivityWMK: 0.2, diffusivityM2S: 1e-7, filmWM2K: 15 };
    const pulseJM2 = (0.04 * (72_400 + 240 * 210)) / area;
    const run = byDifferences({ ...halves, pulseJM2 }, cycle, 60);
    expect(Math.abs(warm - run[59])).toBeLessThan(0.5);
    // A plate of 6 mm from both faces: nine times the cube's 50.432 s in halves at 30 C, and the metal's own resistance.
    const plate = 9 * 50.432 * (200 / (230 - warm)) ** 2;
    expect(cycle).toBeGreaterThan(120 + plate);
    expect(cycle).toBeLessThan(120 + 1.1 * plate);
    expect(figureOf(report, 'pours.perHour', 'pouring')).toBe(Math.floor(3600 / cycle));
    expect(report.series[0].y.values).toHaveLength(41);
    expect(report.findings.map(({ code }) => code)).toEqual([]);
  });

  it('waits until the halves are as cool as the plan wants them', async () => {
    const free = await runCheck(pours, cubes({ pouring: full }));
    const warmestC = figureOf(free, 'pours.halves', 'pouring') - 2;
    const report = await runCheck(pours, cubes({ pouring: { ...full, warmestC } }));
    expect(figureOf(report, 'pours.halves', 'pouring')).toBeCloseTo(warmestC, 1);
    expect(figureOf(report, 'pours.cycle', 'pouring')).toBeGreaterThan(
      figureOf(free, 'pours.cycle', 'pouring'),
    );
    expect(report.findings.map(({ code }) => code)).toEqual(['pours.wait']);
    expect((await runCheck(pours, cubes({ pouring: { halvesC: 30 } }))).findings[0].values.missing).toEqual([
      'pouring.fill',
      'pouring.handling',
      'pouring.air',
      'pouring.film',
    ]);
  });

  // The cube has 2 mm. In 1 s a half takes 2 e dT sqrt(1 / pi) = 713.65 dT J/m2. Superheat: 7000 x 250 x 40 x 2 mm =
  // 140 kJ/m2: dT 196.17, 240 - 196.17 = 43.83 C. All until set: 1.0136 MJ/m2, more than any half takes.
  it('preheat takes what the metal has to give', async () => {
    const report = await runCheck(pours, cubes({ pouring: full }));
    expect(figureOf(report, 'pours.preheatSure', 'pouring')).toBeCloseTo(43.83, 1);
    expect(report.figures.map(({ name }) => name)).not.toContain('pours.preheatLeast');
    const slow = await runCheck(pours, cubes({ pouring: { ...full, fillS: 60 } }));
    expect(figureOf(slow, 'pours.preheatLeast', 'pouring')).toBeCloseTo(
      230 - 1_013_600 / 713.65 / Math.sqrt(60),
      0,
    );
    expect(slow.findings.map(({ code, values }) => `${code} ${values.which}`)).toEqual(['pours.cold sets']);
    const shop = await runCheck(pours, cubes({ pouring: { ...full, coolestC: 50 } }));
    expect(shop.findings.map(({ code, values }) => `${code} ${values.which}`)).toEqual(['pours.cold shop']);
  });
});

/** Half a stack in explicit finite volumes: heat put into the first, given off by the last; what the first has before each pour. */
function byDifferences(poured: Poured, cycle: number, count: number): number[] {
  const cells = 60;
  const { thickness, conductivityWMK: k, diffusivityM2S: a, filmWM2K, airC, startC, pulseJM2 } = poured;
  const dx = thickness / cells;
  const steps = Math.ceil(cycle / ((0.4 * dx * dx) / a));
  const dt = cycle / steps;
  const t = new Float64Array(cells).fill(startC);
  const capacity = (k / a) * dx;
  return Array.from({ length: count }, () => {
    const before = t[0];
    t[0] += pulseJM2 / capacity;
    for (let s = 0; s < steps; s++) {
      let flowIn = 0;
      for (let i = 0; i < cells; i++) {
        const out =
          i === cells - 1 ? (t[i] - airC) / (1 / filmWM2K + dx / 2 / k) : (k * (t[i] - t[i + 1])) / dx;
        t[i] += ((flowIn - out) * dt) / capacity;
        flowIn = out;
      }
    }
    return before;
  });
}
