import { describe, expect, it } from 'vitest';
import { pressure } from '../../src/checks/turning/pressure.ts';
import { translation } from '../../src/geometry/index.ts';
import type { Mold } from '../../src/mold/index.ts';
import { alloyNamed, liquidDensity, solidDensity } from '../../src/tables/index.ts';
import { emptyMold, figureOf, runCheck, smallSprue, withMaster } from '../checks/small-mold.ts';
import { box, single } from '../revolved-solids.ts';

describe('densities by composition', () => {
  // Crawley and Kiff, Metall. Trans. 3 (1972) 157: antimony 6.902 - 6.486e-4 t g/cm3; Wang, Xian and Shao, High Temp.
  // High Press. 35/36 (2003/2007) 659: zinc 7.15 - 15.9e-4 t + 5.69e-7 t^2; other measurements than the table rests on.
  it.each([
    ['Sb', 640, 6902 - 0.6486 * 640],
    ['Sb', 740, 6902 - 0.6486 * 740],
    ['Zn', 450, 7150 - 1.59 * 450 + 5.69e-4 * 450 ** 2],
    ['Zn', 600, 7150 - 1.59 * 600 + 5.69e-4 * 600 ** 2],
  ])('molten %s at %d C within 1.5 %%', (symbol, celsius, measured) => {
    expect(liquidDensity({ [symbol]: 1 }, celsius).value / measured).toBeCloseTo(1, 1.6);
  });
  // CRC Handbook, density of molten elements: k of silver, aluminum and gold stand there; of tin, 6.99 g/cm3 is known.
  it('molten tin is 4.5 % lighter than solid', () => {
    expect(liquidDensity({ Sn: 1 }, 231.93).value).toBe(6979);
    expect(1 - 6979 / solidDensity({ Sn: 1 }).value).toBeCloseTo(0.045, 3);
  });
  // Tables of solders, and UNS L13912.
  it.each([
    ['sn63pb37', 8400],
    ['pewter 91-7-2', 7300],
    ['bi58sn42', 8560],
    ['zamak 3', 6700],
  ])('solid %s as its own table has it, %d kg/m3, within 0.3 %%', (name, listed) => {
    const { composition = {} } = alloyNamed(name) ?? {};
    expect(Math.abs(solidDensity(composition).value / listed - 1)).toBeLessThan(0.003);
  });
});

describe('molten metal in the mold', () => {
  const brick = single(box([-5, -5, -5], [5, 5, 5]));
  const bench = (alloy: NonNullable<Mold['bench']['alloy']>): Mold['bench'] => ({
    alloy,
    spin: { speedRpm: 400, shotShare: 0.5 },
    machine: { closingForceN: 1000 },
  });
  const of = (alloy: NonNullable<Mold['bench']['alloy']>): Mold => ({
    ...withMaster({ ...emptyMold, sprue: smallSprue }, 'brick', brick, translation(80, 0, 0)),
    bench: bench(alloy),
  });
  const figures = async (alloy: NonNullable<Mold['bench']['alloy']>) => {
    const report = await runCheck(pressure, of(alloy));
    const value = (name: Parameters<typeof figureOf>[1], subject = 'spin') => figureOf(report, name, subject);
    return { report, value };
  };

  // p = rho omega^2 (r^2 - r_s^2) / 2 and m = rho V: in proportion to the density of the liquid; 1 cm3 of casting is solid.
  it('presses and is weighed as a liquid; castings are solid', async () => {
    const solid = await figures({ densityKgM3: 7300, liquidKgM3: 7300 });
    const liquid = await figures({ densityKgM3: 7300, liquidKgM3: 6900 });
    for (const name of ['shot.least', 'shot.most', 'shot.poured', 'pressure.opening'] as const)
      expect(liquid.value(name) / solid.value(name)).toBeCloseTo(6900 / 7300, 9);
    const outer = [liquid, solid].map(({ value }) => value('pressure.outer', 'brick-1'));
    expect(outer[0] / outer[1]).toBeCloseTo(6900 / 7300, 9);
    expect(liquid.value('shot.casting', 'brick-1')).toBeCloseTo(7.3, 9);
    expect(liquid.report.findings).toEqual([]);
  });
  // 0.91 / 6944.4 + 0.07 / 6674.3 + 0.02 / 8652 at 285 C.
  it('goes by the composition at the temperature of pouring', async () => {
    const byName = await figures({ name: 'pewter 91-7-2', pourC: 285 });
    const byHand = 1 / (0.91 / 6944.4 + 0.07 / 6674.3 + 0.02 / 8652);
    const given = await figures({ densityKgM3: 7300, liquidKgM3: byHand });
    expect(byName.value('shot.most') / given.value('shot.most')).toBeCloseTo(1, 4);
    expect(byName.report.findings).toEqual([]);
  });
  it('is told where nobody knows how dense it is; resin is no metal', async () => {
    const { report } = await figures({ name: 'house metal', densityKgM3: 7300, pourC: 285 });
    expect(report.findings).toMatchObject([
      { code: 'shot.not-checked', values: { missing: ['alloy.liquidDensity'] } },
    ]);
    const resin = await figures({ name: 'cold casting resin', densityKgM3: 1100, pourC: 25 });
    expect(resin.report.findings).toEqual([]);
  });
});
