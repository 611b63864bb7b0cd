import { describe, expect, it } from 'vitest';
import { canClosing } from '../../src/checks/can/can-closing.ts';
import type { Mold } from '../../src/mold/index.ts';
import { plateBow, plateStress } from '../../src/physics/index.ts';
import { emptyMold, figureOf, runCheck, smallSprue } from '../checks/small-mold.ts';
import { plateByDifferences } from './plate-by-differences.ts';

const steel = { thickness: 20, poisson: 0.3, modulusPa: 200e9 };
const lidOf = (hole: number, pressed: number, radius: number) => {
  const ours = { ...steel, hole, pressed, radius };
  const byDifferences = (plug: boolean) =>
    plateByDifferences({ ...steel, hole, pressed, radius, pressure: 1.5, modulus: 200e3, plug });
  return { stress: plateStress(1.5e6, ours) / 1e6, bow: plateBow(1.5e6, ours), byDifferences };
};

// Closed forms of Roark, table 11.2, against the equation of the plate solved by differences.
describe('a lid with a hole, held outside what is pressed on', () => {
  it.each([
    [0, 125.75, 125.75],
    [0, 125.75, 145],
    [1, 125.75, 125.75],
    [15, 125.75, 125.75],
    [15, 125.75, 145],
    [40, 80, 145],
    [100, 125.75, 145],
  ])(
    'hole %d, pressed to %d, held on %d mm: greatest stress and bow by differences',
    (hole, pressed, radius) => {
      const { stress, bow, byDifferences } = lidOf(hole, pressed, radius);
      const found = byDifferences(true);
      expect(Math.abs(stress / found.stress - 1)).toBeLessThan(2e-3);
      expect(Math.abs(bow / found.bow - 1)).toBeLessThan(1e-3);
    },
  );

  // Worked beforehand by differences, the pressure on the hole left out: 73, 94, 139, 179 MPa.
  it.each([
    [0, 125.75, 73],
    [0, 145, 94],
    [15, 125.75, 139],
    [15, 145, 179],
  ])(
    'hole %d, held on %d mm: %d MPa on the ring alone, and more with what presses on the hole',
    (hole, radius, ring) => {
      const { stress, byDifferences } = lidOf(hole, 125.75, radius);
      expect(Math.round(byDifferences(false).stress)).toBe(ring);
      expect(stress / ring).toBeGreaterThan(hole > 0 ? 1.04 : 0.99);
      expect(stress / ring).toBeLessThan(1.07);
    },
  );

  // Timoshenko and Woinowsky-Krieger: a very small hole in the middle doubles the stress there.
  it('a hole that goes to nothing doubles the stress, and changes nothing of the bow', () => {
    const [tiny, none] = [lidOf(1e-3, 125.75, 145), lidOf(0, 125.75, 145)];
    expect(tiny.stress / none.stress).toBeCloseTo(2, 6);
    expect(tiny.bow / none.bow).toBeCloseTo(1, 6);
  });
});

type Closing = NonNullable<Mold['bench']['closing']>;

/** A can of 251.5 mm under 1.5 MPa, lids of 20 mm steel, bolts on 290 mm, a shaft that leaves the half 30 mm wide. */
const closing: Closing = {
  pressurePa: 1.5e6,
  clamps: { count: 8, force: 12_000, circle: 290, screw: 'M12' },
  lid: { material: 'steel', thickness: 20 },
};
const sprue = { ...smallSprue, holeRadius: 15, draftRad: 0, grip: 15 };
const check = (changed: Partial<Closing>, other: Partial<Mold> = {}) =>
  runCheck(canClosing, {
    ...emptyMold,
    bench: {
      can: { diameter: 251.5, depth: 38.1 },
      closing: { ...closing, ...changed },
      cure: { temperatureC: 155 },
    },
    ...other,
  });
const codesOf = ({ findings }: { findings: readonly { code: string }[] }) => findings.map(({ code }) => code);

describe('lids, in the check', () => {
  it('with the hole for the sprue form 20 mm are too thin, and it says how thick they have to be', async () => {
    const bored = await check({}, { sprue });
    expect(codesOf(bored)).toEqual(['closing.lid-stress']);
    expect(figureOf(bored, 'closing.lidStress', 'closing') / 1e6).toBeCloseTo(
      lidOf(15, 125.75, 145).stress,
      6,
    );
    expect(figureOf(bored, 'closing.lidHeldOn', 'closing')).toBe(290);
    const { needed, hole } = bored.findings[0].values;
    expect(hole).toBe(30);
    const lid = { material: 'steel', thickness: Number(needed) };
    expect(codesOf(await check({ lid: { ...lid, thickness: lid.thickness + 0.01 } }, { sprue }))).toEqual([]);
    expect(codesOf(await check({ lid: { ...lid, thickness: lid.thickness - 0.01 } }, { sprue }))).toEqual([
      'closing.lid-stress',
    ]);
  });
  // 1.5 MPa on pi 15^2 mm2: 1060.3 N.
  it('the rubber drives the sprue form out with 1.06 kN', async () => {
    expect(figureOf(await check({}, { sprue }), 'closing.sprueForce', 'closing')).toBeCloseTo(1060.29, 2);
  });
  it('a floor without a hole may be the weaker one', async () => {
    const report = await check(
      { lid: { material: 'steel', thickness: 30 } },
      {
        sprue,
        bench: {
          can: { diameter: 251.5, floor: 15 },
          closing: { ...closing, lid: { material: 'steel', thickness: 30 } },
          cure: { temperatureC: 155 },
        },
      },
    );
    expect(codesOf(report)).toEqual(['closing.lid-stress']);
    expect(report.findings[0].values).toMatchObject({ thickness: 15 });
    expect(report.findings[0].values.hole).toBeUndefined();
  });
  it('without a circle of clamps or bolts it says so', async () => {
    const clamps = { count: 8, force: 12_000, screw: 'M12' };
    const { findings } = await check({ clamps });
    expect(findings.map(({ code, values }) => [code, values.missing])).toEqual([
      ['closing.not-checked', ['closing.clamps.circle']],
    ]);
  });
  it('a hole as wide as the can leaves no lid', async () => {
    const lid = { material: 'steel', thickness: 20, hole: 260 };
    expect(codesOf(await check({ lid }))).toEqual(['closing.lid-unknown']);
  });
  it('carried at the circle of the clamps a plain lid is bent to 94 MPa, not to 73', async () => {
    const plain = await check({});
    expect(codesOf(plain)).toEqual([]);
    expect(figureOf(plain, 'closing.lidStress', 'closing') / 1e6).toBeCloseTo(93.71, 2);
  });
});
