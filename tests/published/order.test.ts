import { describe, expect, it } from 'vitest';
import { cost, order, pours } from '../../src/checks/pouring/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { figureOf, runCheck } from '../checks/small-mold.ts';
import { cubes } from './cast-bricks.ts';

// Three cubes of 1.728 cm3 and 7 g/cm3: 12.096 g each, 36.288 g; a shot of 60 g.
const three = (bench: Partial<Mold['bench']>): Mold =>
  cubes({ spin: { speedRpm: 600, shotKg: 0.06 }, pouring: {}, ...bench }, 3);
const pouring = { halvesC: 30, fillS: 1, handlingS: 120, airC: 20, filmWM2K: 15 };

describe('an order', () => {
  // 100 good ones of 3 at a time, a tenth of them bad: 100 / 2.7 = 37.04, so 38 pours, 102.6 good.
  // 38 x 60 g = 2.28 kg; good 38 x 32.6592 g = 1.24105; lost 2 % of 2.28 = 0.0456; back 1 - 32.6592 / 60 = 45.57 %.
  it('pours, metal and what is melted again', async () => {
    const report = await runCheck(
      order,
      three({ order: { pieces: { cube: 100 }, misruns: 0.1, loss: 0.02 } }),
    );
    expect(figureOf(report, 'order.pours', 'order')).toBe(38);
    expect(figureOf(report, 'order.made', 'cube')).toBe(102);
    expect(figureOf(report, 'order.metal', 'order')).toBeCloseTo(2.28, 9);
    expect(figureOf(report, 'order.used', 'order')).toBeCloseTo(1.28665, 5);
    expect(figureOf(report, 'order.remelt', 'order')).toBeCloseTo(0.45568, 5);
    expect(report.findings).toEqual([]);
  });

  it('whole pours stay whole', async () => {
    const report = await runCheck(order, three({ order: { pieces: { cube: 99 } } }));
    expect(figureOf(report, 'order.pours', 'order')).toBe(33);
    expect(figureOf(report, 'order.made', 'cube')).toBe(99);
  });

  it('takes as long as its pours', async () => {
    const mold = three({ pouring, order: { pieces: { cube: 99 } } });
    const cycle = figureOf(await runCheck(pours, mold), 'pours.cycle', 'pouring');
    expect(figureOf(await runCheck(order, mold), 'order.time', 'order')).toBeCloseTo(33 * cycle, 6);
  });

  it('says what it lacks', async () => {
    const { pouring: _, ...bare } = three({ order: { pieces: { cube: 9 } }, spin: {} }).bench;
    const report = await runCheck(order, { ...three({}), bench: bare });
    expect(report.findings.map(({ code, values }) => [code, values.missing])).toEqual([
      ['order.not-checked', ['alloy.liquidDensity', 'spin.speed', 'spin.shot', 'pouring']],
    ]);
    const none = { ...three({ order: { pieces: { cube: 9, other: 5 } } }) };
    const unplaced = { ...none, masters: [...none.masters, { ...none.masters[0], id: 'other' }] };
    expect(
      (await runCheck(order, unplaced)).findings.map(({ code, subject }) => `${code} ${subject}`),
    ).toEqual(['order.unplaced other']);
  });
});

describe('the cost', () => {
  const prices = {
    in: 'crowns',
    metalPerKg: 30,
    rubberPerKg: 10,
    workPerHour: 36,
    other: 15,
    moldTimeS: 7200,
    run: 500,
  };

  // Metal: 12.096 g and 2 % of 60 g over 2.7 good ones, 0.4444 g: 12.5404 g at 30 per kg, 0.376213. Mold: 1.5 kg at 10,
  // 15, 2 h at 36: 102; over 500, 0.204.
  it('of a casting', async () => {
    const mold = three({
      pouring,
      order: { pieces: { cube: 100 }, misruns: 0.1, loss: 0.02 },
      prices,
      rubber: { conductivityWMK: 0.2, diffusivityM2S: 1e-7, laidInKg: 1.5 },
    });
    const cycle = figureOf(await runCheck(pours, mold), 'pours.cycle', 'pouring');
    const report = await runCheck(cost, mold);
    const of = (name: string) => figureOf(report, `cost.${name}`, 'prices');
    expect(of('metal')).toBeCloseTo(0.376213, 5);
    expect(of('work')).toBeCloseTo(cycle / 100 / 2.7, 9);
    expect(of('mold')).toBeCloseTo(102, 9);
    expect(of('moldShare')).toBeCloseTo(0.204, 9);
    expect(of('casting')).toBeCloseTo(0.376213 + cycle / 270 + 0.204, 5);
    expect(of('run')).toBeCloseTo(500 * of('casting'), 9);
    expect(report.figures.every(({ word }) => word === 'crowns')).toBe(true);
    expect(report.findings).toEqual([]);
    // By full discs where nothing says what is laid in: pi 12.5^2 2.54 cm3 at 1.2 g/cm3 = 1.49619 kg.
    const full = { ...mold.bench, rubber: { densityKgM3: 1200, conductivityWMK: 0.2, diffusivityM2S: 1e-7 } };
    expect(figureOf(await runCheck(cost, { ...mold, bench: full }), 'cost.mold', 'prices')).toBeCloseTo(
      101.9619,
      3,
    );
  });

  it('sums up only what is all known', async () => {
    const report = await runCheck(cost, three({ prices: { in: 'crowns', metalPerKg: 30 } }));
    expect(report.figures.map(({ name }) => name)).toEqual(['cost.metal']);
    expect(report.findings[0].values.missing).toEqual([
      'prices.work',
      'prices.rubber',
      'rubber.density',
      'prices.other',
      'prices.moldTime',
      'prices.run',
      'pouring',
    ]);
  });
});
