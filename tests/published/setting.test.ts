import { describe, expect, it } from 'vitest';
import { setting } from '../../src/checks/pouring/index.ts';
import { thickestSpot } from '../../src/mesh/index.ts';
import { type Chill, type Freezing, frontConstant, settingTime } from '../../src/physics/index.ts';
import { emptyMold, figureOf, runCheck } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';
import { cubes, rubber, tin } from './cast-bricks.ts';

const codes = async (mold: ReturnType<typeof cubes>) =>
  (await runCheck(setting, mold)).findings.map(
    ({ code, severity, values }) => `${code} ${severity} ${values.which}`,
  );

describe('setting of the metal', () => {
  // H = 250 x 40 + 60 000 + 240 x 10 = 72 400 J/kg; x 7000 = 506.8 MJ/m3. V / A = 12 / 6 = 2 mm: 1.0136 MJ/m2.
  // e dT = 632.4555 x 200 = 126 491; ratio 8.01321; t = pi / 4 x 64.2115 = 50.432 s.
  it('a cube of 12 mm in rubber', async () => {
    const report = await runCheck(setting, cubes());
    expect(figureOf(report, 'setting.thickest', 'cube-1')).toBeCloseTo(12, 2);
    expect(figureOf(report, 'setting.chvorinov', 'cube-1')).toBeCloseTo(50.432, 2);
    // 40 g are 5714.29 mm3, less the cube's 1728: 3986.29 over floor and wall of the well, pi 225 + 2 pi 90 = 1272.35 mm2.
    const well = (Math.PI / 4) * ((506.8e6 * (3986.286 / 1272.345) * 1e-3) / 126_491.1) ** 2;
    expect(figureOf(report, 'setting.well', 'pouring')).toBeCloseTo(well, 2);
    const spot = figureOf(report, 'setting.time', 'cube-1');
    // 6 mm, the cube's middle from its faces, taken as a plate: nine times the 2 mm, and the metal's own resistance.
    expect(spot).toBeGreaterThan(9 * 50.432);
    expect(spot).toBeLessThan(9 * 50.432 * 1.1);
    expect(figureOf(report, 'setting.open', 'pouring')).toBe(Math.max(spot, well));
    expect(report.findings).toEqual([]);
  });

  // sqrt(pi) l e^(l^2) erf l = c dT / H; 1: 0.620063. At 0.1 the series l^2 (2 + 4/3 l^2) gives 0.21994 with its next term.
  it('the constant of Neumann', () => {
    expect(frontConstant(1, 0)).toBeCloseTo(0.620063, 5);
    expect(frontConstant(0.1, 0)).toBeCloseTo(0.22, 3);
    // Small Stefan number against a poor half: l = Ste / (sqrt(pi) r), Chvorinov's rule.
    expect(frontConstant(1e-4, 10) / (1e-4 / Math.sqrt(Math.PI) / 10)).toBeCloseTo(1, 4);
  });

  it.each([
    ['rubber', 0.2, 2e6],
    ['aluminum', 167, 2.4e6],
  ])('in %s as finite differences have it', (_, conductivity, capacity) => {
    const metal: Freezing = {
      densityKgM3: 7000,
      latentJKg: 60_000,
      moltenJKgK: 240,
      solidJKgK: 240,
      conductivityWMK: 40,
      solidusC: 230,
      liquidusC: 230,
      pourC: 230,
    };
    const chill: Chill = { effusivity: Math.sqrt(conductivity * capacity), temperatureC: 30 };
    const found = settingTime(metal, 2, chill);
    expect(byDifferences(metal, 2e-3, conductivity, capacity, found) / found).toBeCloseTo(1, 1.7);
  });

  it('contact that holds the heat up only adds', () => {
    const metal: Freezing = { ...freezing, solidusC: 230 };
    const perfect = settingTime(metal, 2, { effusivity: 600, temperatureC: 30 });
    const held = settingTime(metal, 2, { effusivity: 600, temperatureC: 30, contactWM2K: 1000 });
    // rho H M / (h dT) = 506.8e6 x 2e-3 / (1000 x 200) = 5.068 s.
    expect(held - perfect).toBeCloseTo(5.068, 6);
    expect(settingTime(metal, 2, { effusivity: 600, temperatureC: 230 })).toBe(Number.POSITIVE_INFINITY);
  });

  it('stops where the mold is opened before, and says what is not counted', async () => {
    expect(await codes(cubes({ pouring: { halvesC: 30, openAfterS: 60 } }))).toEqual([
      'setting.opened-early stop early',
    ]);
    expect(await codes(cubes({ pouring: { halvesC: 240, openAfterS: 60 } }))).toEqual([
      'setting.opened-early stop never',
    ]);
    expect(await codes(cubes({ pouring: { halvesC: 30, openAfterS: 3600 } }))).toEqual([]);
    expect(await codes(cubes({ spin: {} }))).toEqual(['setting.not-checked note well']);
    expect(await codes(cubes({ pouring: {} }))).toEqual(['setting.not-checked note time']);
    const { latentHeatJKg: _, ...blank } = tin;
    const { findings } = await runCheck(setting, cubes({ alloy: blank, rubber: {} }));
    expect(findings[0].values.missing).toEqual([
      'alloy.latentHeat',
      'rubber.conductivity',
      'rubber.diffusivity',
    ]);
    expect(await codes({ ...cubes(), bench: { rubber } })).toEqual([]);
  });

  it('rigid halves by their own sheet or as a metal, and their contact is asked for', async () => {
    const rigid = (material: string) => ({
      ...cubes(),
      process: 'rigid' as const,
      fixture: { ...emptyMold.fixture, material },
    });
    expect(await codes(rigid('6061-T6'))).toEqual(['setting.not-checked note contact']);
    expect(await codes(rigid('PLA'))).toEqual(['setting.not-checked note time']);
    const own = {
      name: 'PLA',
      kind: 'plaster' as const,
      heatLimitC: 300,
      strengthPa: 1e6,
      densityKgM3: 1000,
      conductivityWMK: 0.2,
      heatJKgK: 2000,
      source: 'sheet',
    };
    // The same as the rubber.
    const report = await runCheck(setting, { ...rigid('PLA'), materials: [own] });
    expect(figureOf(report, 'setting.chvorinov', 'cube-1')).toBeCloseTo(50.432, 2);
  });
});

const freezing: Freezing = {
  densityKgM3: 7000,
  latentJKg: 60_000,
  moltenJKgK: 250,
  solidJKgK: 240,
  conductivityWMK: 40,
  solidusC: 230,
  liquidusC: 240,
  pourC: 280,
};

it.each([
  [box([0, 0, 0], [40, 30, 4]), 2],
  [box([0, 0, 0], [9, 9, 50]), 4.5],
])('thickest spot of a block', (sides, radius) => {
  expect(thickestSpot(single(sides)).radius).toBeCloseTo(radius, 2);
});

/**
 * Metal from its middle (x = 0) to the half, then the half, in explicit finite volumes of the enthalpy; gives the time at which
 * the middle has given up all its latent heat.
 */
function byDifferences(metal: Freezing, half: number, k: number, capacity: number, about: number): number {
  const cells = 24;
  const dx = half / cells;
  const reach = 4 * Math.sqrt((k / capacity) * about);
  const deep = 90;
  const dy = reach / deep;
  const own = metal.densityKgM3 * metal.solidJKgK;
  const latent = metal.densityKgM3 * metal.latentJKg;
  const dt = 0.4 * Math.min((dx * dx * own) / metal.conductivityWMK, (dy * dy * capacity) / k);
  const heat = new Float64Array(cells).fill(latent);
  const rubberC = new Float64Array(deep).fill(30);
  const temperature = (h: number): number => (h >= 0 ? 230 : 230 + h / own);
  let time = 0;
  while (heat[0] > 0 && time < 3 * about) {
    const between = 1 / (dx / 2 / metal.conductivityWMK + dy / 2 / k);
    const out = between * (temperature(heat[cells - 1]) - rubberC[0]);
    let before = 0;
    for (let i = 0; i < cells; i++) {
      const flow =
        i === cells - 1
          ? out
          : (metal.conductivityWMK * (temperature(heat[i]) - temperature(heat[i + 1]))) / dx;
      heat[i] += ((before - flow) * dt) / dx;
      before = flow;
    }
    for (let i = 0; i < deep; i++) {
      const flow = i === deep - 1 ? 0 : (k * (rubberC[i] - rubberC[i + 1])) / dy;
      rubberC[i] += ((before - flow) * dt) / (dy * capacity);
      before = flow;
    }
    time += dt;
  }
  return time;
}
