import { describe, expect, it } from 'vitest';
import { halfDensity } from '../../../src/checks/from-mold/half-density.ts';
import { halfMaterialOf, heatOf } from '../../../src/checks/from-mold/materials.ts';
import { fittings } from '../../../src/checks/from-mold/turning-masses.ts';
import type { Mold, OwnMaterial } from '../../../src/mold/index.ts';
import { alloyDensity, alloyTension, liquidAlloyDensity } from '../../../src/mold/metal.ts';
import { emptyMold, nutAt } from '../small-mold.ts';

const of = (alloy: Mold['bench']['alloy']): Mold => ({ ...emptyMold, bench: { ...(alloy && { alloy }) } });

describe('density of the metal', () => {
  // Tin: 7310 kg/m3 solid (CRC Handbook); molten 6979 at 231.93 C, 0.652 less for each K (Assael et al., 2010).
  it('is the table\u2019s for an alloy it knows, unless the plan has its own', () => {
    expect(alloyDensity(of({ name: 'tin' }))).toEqual({ value: 7310, estimated: false });
    expect(alloyDensity(of({ name: 'tin', densityKgM3: 7290 }))).toEqual({ value: 7290, estimated: false });
    for (const nothing of [undefined, {}, { name: 'moon dust' }]) {
      expect(alloyDensity(of(nothing))).toBeUndefined();
      expect(liquidAlloyDensity(of(nothing))).toBeUndefined();
      expect(alloyTension(of(nothing))).toBeUndefined();
    }
  });

  it('is less while it is poured, by how hot it is, else where the plan or the table has it just molten', () => {
    const molten = (more: NonNullable<Mold['bench']['alloy']>) =>
      liquidAlloyDensity(of({ name: 'tin', ...more }))?.value;
    expect(molten({ pourC: 331.93 })).toBeCloseTo(6979 - 65.2, 6);
    expect(molten({ pourC: 331.93, liquidusC: 231.93 })).toBeCloseTo(6979 - 65.2, 6);
    expect(molten({ liquidusC: 241.93 })).toBeCloseTo(6979 - 6.52, 6);
    expect(molten({})).toBeCloseTo(6979, 6);
    expect(molten({ liquidKgM3: 6900, pourC: 331.93 })).toBe(6900);
    // Melts where nothing says: no density while molten is known.
    expect(liquidAlloyDensity(of({ name: 'pewter type 1' }))).toBeUndefined();
  });

  it('of what is poured under 45 C, resin, is that of the plan; from 45 C on it is metal', () => {
    const resin = (pourC: number) => liquidAlloyDensity(of({ densityKgM3: 1100, pourC }))?.value;
    expect(resin(44.9)).toBe(1100);
    expect(resin(45)).toBeUndefined();
  });
});

describe('density of the halves', () => {
  it('is the rubber\u2019s where they are rubber and the fixtures\u2019 material where they are rigid', () => {
    const bench: Mold['bench'] = { rubber: { densityKgM3: 1150 } };
    const fixture = { ...emptyMold.fixture, material: '6061-T6' };
    expect(halfDensity({ ...emptyMold, bench, fixture })?.value).toBe(1150);
    // 6061 weighs 2700 kg/m3 (ASM Handbook 2).
    expect(halfDensity({ ...emptyMold, process: 'rigid', bench, fixture })?.value).toBe(2700);
    expect(halfDensity({ ...emptyMold, fixture })).toBeUndefined();
    expect(
      halfDensity({ ...emptyMold, process: 'rigid', fixture: { ...fixture, material: 'moon dust' } }),
    ).toBeUndefined();
  });
});

describe('a material of the plan', () => {
  const sheet: OwnMaterial = {
    name: 'Hedge Stone',
    kind: 'plaster',
    heatLimitC: 700,
    strengthPa: 8e6,
    densityKgM3: 1600,
    expansionPerK: 1e-5,
    source: 'bag, 2026',
  };
  const mold = (own: OwnMaterial) => ({ materials: [{ ...sheet, name: 'other' }, own] });

  it('stands the heat its sheet says, plaster as porous, resin as a plastic under its load', () => {
    expect(heatOf(mold(sheet), 'hedge stone')).toEqual({
      name: 'Hedge Stone',
      words: [],
      kind: 'porous',
      limitC: 700,
      source: expect.objectContaining({ text: expect.stringMatching(/^bag, 2026\b.*plan/) }),
    });
    const resin = heatOf(mold({ ...sheet, kind: 'resin', loadPa: 1.8e6 }), 'Hedge Stone');
    expect(resin).toMatchObject({ kind: 'plastic', loadPa: 1.8e6 });
    expect(heatOf(mold(sheet), 'moon dust')).toBeUndefined();
  });

  it('has strength and density of its sheet, and the greatest Poisson\u2019s ratio where that has none', () => {
    const found = halfMaterialOf(mold(sheet), 'hedge stone');
    expect(found?.also).toEqual([]);
    expect(found?.densityKgM3?.value).toBe(1600);
    expect(found?.strengthPa?.value).toBe(8e6);
    expect(found?.strengthPa?.source.text).toContain('bag, 2026');
    expect(found?.poisson?.value).toBe(0.5);
    expect(halfMaterialOf(mold({ ...sheet, poisson: 0.2 }), 'hedge stone')?.poisson?.value).toBe(0.2);
  });
});

describe('what turns with a boss', () => {
  const densities = { half: 1100, alloy: 7310, fixture: 1200 };
  const massOf = (mold: Mold) => fittings(mold, densities, false).reduce((sum, { massG }) => sum + massG, 0);
  const dome = (id: string, x: number) => nutAt(id, x, 0, { kind: 'dome', acrossFlats: 0 });

  // The same shape of steel (7850, EN 1993-1-1) and of the fixtures' material, each less the rubber in its place.
  it('is steel where it is bought, the fixtures\u2019 material where it is made', () => {
    const per = (boss: Mold['bosses'][number], own: number) =>
      massOf({ ...emptyMold, bosses: [boss] }) / (own - 1100);
    const bought = nutAt('a', 60, 0);
    expect(per(bought, 7850)).toBeGreaterThan(0);
    expect(per(dome('a', 60), 1200)).toBeGreaterThan(0);
    const lighter =
      massOf({ ...emptyMold, bosses: [bought] }) /
      massOf({ ...emptyMold, bosses: [bought, nutAt('b', -60, 0)] });
    expect(lighter).toBeCloseTo(0.5, 9);
  });

  it('is nothing beside the disc or in another boss', () => {
    const one = massOf({ ...emptyMold, bosses: [nutAt('a', 60, 0)] });
    for (const boss of [nutAt('b', 125, 0), nutAt('b', 130, 0), nutAt('b', 61, 0)])
      expect(massOf({ ...emptyMold, bosses: [nutAt('a', 60, 0), boss] })).toBeCloseTo(one, 9);
    expect(massOf({ ...emptyMold, bosses: [nutAt('a', 60, 0), nutAt('b', 124, 0)] })).toBeCloseTo(2 * one, 9);
  });
});
