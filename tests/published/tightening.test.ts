import { describe, expect, it } from 'vitest';
import { canClosing } from '../../src/checks/can/can-closing.ts';
import type { Mold } from '../../src/mold/index.ts';
import { tighteningTorque } from '../../src/physics/index.ts';
import { emptyMold, figureOf, runCheck } from '../checks/small-mold.ts';

type Closing = NonNullable<Mold['bench']['closing']>;

/** A can of 251.5 mm under 1.5 MPa: 1.5 pi 251.5^2 / 4 = 74 517 N. */
const closing: Closing = {
  pressurePa: 1.5e6,
  clamps: { count: 8, force: 12_000, circle: 290, screw: 'M12' },
  lid: { material: 'steel', thickness: 20 },
};
const check = (changed: Partial<Closing>) =>
  runCheck(canClosing, {
    ...emptyMold,
    bench: { can: { diameter: 251.5 }, closing: { ...closing, ...changed }, cure: { temperatureC: 155 } },
  });
const codesOf = ({ findings }: { findings: readonly { code: string }[] }) => findings.map(({ code }) => code);

describe('bolts left in under the clamps', () => {
  // 74 517 N on four M6 4.6 of 4520 N (ISO 898-1): 412 % of proof.
  const weak = { size: 'M6', grade: '4.6', count: 4, circle: 290 };
  it('may have to take it all: 18.63 kN each, 412 % of proof', async () => {
    const report = await check({ bolts: weak });
    expect(codesOf(report)).toEqual(['closing.bolts-past-proof']);
    expect(report.findings[0].severity).toBe('stop');
    expect(figureOf(report, 'closing.boltLoad', 'closing')).toBeCloseTo(18_629.3, 0);
    expect(Number(report.findings[0].values.share)).toBeCloseTo(4.12, 2);
    expect(figureOf(report, 'closing.boltPreload', 'closing')).toBe(0);
  });
  it('taken out, or under a press that holds the can, they bear none of it', async () => {
    expect(codesOf(await check({ bolts: { ...weak, cure: 'taken out' } }))).toEqual([]);
    const press = { force: 100_000, cure: 'in the press' as const };
    expect(codesOf(await check({ bolts: weak, press }))).toEqual([]);
  });
  // M10 8.8: 33 700 N. Four take 18 629 N each: 15 070 N are left for tightening.
  it.each([
    [15_070, []],
    [15_072, ['closing.bolts-past-proof']],
  ])('with what they are tightened to: %d N on top', async (tension, codes) => {
    const bolts = { size: 'M10', grade: '8.8', count: 4, circle: 290, tension };
    expect(codesOf(await check({ bolts }))).toEqual(codes);
  });
});

describe('how tight', () => {
  /**
   * Shigley, sec. 8-8: T / (F d) = (d_m / 2 d) (tan l + f sec a) / (1 - f tan l sec a) + 0.625 f_c, the collar's mean
   * diameter 1.25 d; l the lead angle, a 30 degrees. With f = f_c = 0.15 it gives K about 0.20 for all coarse threads.
   */
  const factor = (d: number, pitch: number, f: number): number => {
    const mean = d - 0.649519 * pitch;
    const lead = pitch / (Math.PI * mean);
    const sec = 1 / Math.cos(Math.PI / 6);
    return ((mean / 2 / d) * (lead + f * sec)) / (1 - f * lead * sec) + 0.625 * f;
  };
  it.each([
    [6, 1],
    [10, 1.5],
    [12, 1.75],
    [16, 2],
  ])('M%d x %d: K is 0.20 at a friction of 0.15, and the range spans 0.08 to 0.22', (d, pitch) => {
    expect(factor(d, pitch, 0.15)).toBeCloseTo(0.2, 1);
    expect(factor(d, pitch, 0.08)).toBeGreaterThan(0.11);
    expect(factor(d, pitch, 0.08)).toBeLessThan(0.14);
    expect(factor(d, pitch, 0.22)).toBeGreaterThan(0.27);
    expect(factor(d, pitch, 0.22)).toBeLessThan(0.31);
  });
  // By hand: K F d = 0.2 x 10 kN x 10 mm.
  it('T = K F d: 10 kN on M10 at 0.2 are 20 N m', () => {
    expect(tighteningTorque(0.2, 10_000, 10)).toBeCloseTo(20, 12);
  });

  // 1.25 x 74 517 / 8 = 11 643 N; x 12 mm x 0.12 = 16.77, x 0.30 = 41.92 N m.
  it('a clamp: 11.6 kN, 16.8 to 41.9 N m on M12', async () => {
    const report = await check({});
    expect(figureOf(report, 'closing.clampPreload', 'closing')).toBeCloseTo(11_643.3, 0);
    expect(figureOf(report, 'closing.clampTorqueLeast', 'closing')).toBeCloseTo(16.77, 2);
    expect(figureOf(report, 'closing.clampTorqueMost', 'closing')).toBeCloseTo(41.92, 2);
  });
  it('a clamp without a screw: the force, and that the screw is not said', async () => {
    const { findings, figures = [] } = await check({ clamps: { count: 8, force: 12_000, circle: 290 } });
    expect(findings.map(({ values }) => values.missing)).toEqual([['closing.clamps.screw']]);
    expect(figures.map(({ name }) => name)).toContain('closing.clampPreload');
    expect(figures.map(({ name }) => name)).not.toContain('closing.clampTorqueLeast');
  });

  // Six M10 8.8: 33 700 - 74 517 / 6 = 21 281 N are less than three quarters of proof, 25 275; alone, these.
  it('bolts: no more than three quarters of proof, nor what the cure leaves of it', async () => {
    const bolts = { size: 'M10', grade: '8.8', count: 6, circle: 290 };
    const left = await check({ bolts });
    expect(figureOf(left, 'closing.boltPreload', 'closing')).toBeCloseTo(21_280.5, 0);
    const out = await check({ bolts: { ...bolts, cure: 'taken out' } });
    expect(figureOf(out, 'closing.boltPreload', 'closing')).toBe(25_275);
    // 25 275 N x 10 mm x 0.12 and 0.30.
    expect(figureOf(out, 'closing.boltTorqueLeast', 'closing')).toBeCloseTo(30.33, 9);
    expect(figureOf(out, 'closing.boltTorqueMost', 'closing')).toBeCloseTo(75.825, 9);
  });
});
