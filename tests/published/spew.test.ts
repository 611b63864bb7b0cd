import { describe, expect, it } from 'vitest';
import { pack, rubberLeftover, spew } from '../../src/checks/can/index.ts';
import { plugPressure, stressOfMooney, viscosityOfMooney, viscousPressure } from '../../src/physics/index.ts';
import { figureOf, runCheck } from '../checks/small-mold.ts';
import { cubes } from './cast-bricks.ts';

const grooves = { count: 8, width: 6, depth: 2, length: 15 };
const packed = (more: { pressurePa?: number; depth?: number; mooney?: number }) =>
  cubes({
    can: { diameter: 250, depth: 25.4, grooves: { ...grooves, depth: more.depth ?? 2 } },
    rubber: { expansionPerK: 6.6e-4, scorchS: 300, ...(more.mooney !== 0 && { mooney: 50 }) },
    cure: { temperatureC: 155, startC: 20 },
    closing: { ...(more.pressurePa && { pressurePa: more.pressurePa }) },
  });
const codes = async (more: Parameters<typeof packed>[0]) =>
  (await runCheck(spew, packed(more))).findings.map(({ code, severity }) => `${code} ${severity}`);

describe('rubber out of the grooves', () => {
  // A square duct passes 0.0351443 a^4 dp / (eta L) (White; Shah and London: f Re 56.91 / 4 = 14.227, 2 / 56.91).
  it('a square duct', () => {
    const pressure = viscousPressure(1e5, 1, { width: 2, depth: 2, length: 10 });
    expect(pressure / ((1e5 * 10) / (0.0351443 * 16))).toBeCloseTo(1, 5);
    // Wide plates: 12 eta L Q / (w h^3), and 0.63 h / w more.
    const wide = viscousPressure(1e5, 1, { width: 100, depth: 1, length: 10 });
    expect(wide / ((12 * 1e5 * 10) / 100 / (1 - 0.63 * 0.01))).toBeCloseTo(1, 4);
    // A plug: stress times perimeter times length on the section. 2 (6 + 2) 15 / 12 = 20 times the stress.
    expect(plugPressure(1e5, { width: 6, depth: 2, length: 15 })).toBeCloseTo(20e5, 3);
  });

  // Faces: pi omega R^4 / h = pi 0.20944 0.01905^4 / 0.002525 = 3.4318e-5; rim 4 pi omega L R^2 Ro^2 / (Ro^2 - R^2) =
  // 1.2016e-5; 0.083 / 4.6334e-5 = 1791 Pa s a unit. One stress: 4 pi R^3 / 3 + 2 pi R^2 L = 4.1591e-5; 1995.6 Pa.
  it('a Mooney unit', () => {
    expect(viscosityOfMooney(1)).toBeCloseTo(1791, -1);
    expect(stressOfMooney(1)).toBeCloseTo(1996, -1);
    // Torque, and so either of them, in proportion to the units.
    expect(viscosityOfMooney(50) / 89_567).toBeCloseTo(1, 3);
    expect(stressOfMooney(50) / 99_780).toBeCloseTo(1, 3);
    // Between them lies the rate of shear the test is said to have, 1.6 1/s at the rim; a mean of it is less.
    expect(stressOfMooney(1) / viscosityOfMooney(1)).toBeGreaterThan(1);
    expect(stressOfMooney(1) / viscosityOfMooney(1)).toBeLessThan(1.6);
  });

  it('what is too much, within the scorch time, through so many grooves', async () => {
    const mold = packed({ pressurePa: 5e6 });
    const excess = figureOf(await runCheck(pack, mold), 'pack.excess', 'can');
    const report = await runCheck(spew, mold);
    // h / w = 1/3: side walls leave 1 - 0.63 / 3 = 0.7900 of it, to a thousandth.
    const fluid = (12 * viscosityOfMooney(50) * 15 * (excess / 300 / 8)) / (6 * 8 * 0.79);
    const plug = 20 * stressOfMooney(50);
    expect(figureOf(report, 'spew.least', 'can') / Math.min(fluid, plug)).toBeCloseTo(1, 2);
    expect(figureOf(report, 'spew.most', 'can') / Math.max(fluid, plug)).toBeCloseTo(1, 2);
    const depth = figureOf(report, 'spew.depth', 'can');
    const deep = await runCheck(spew, packed({ pressurePa: 5e6, depth }));
    expect(figureOf(deep, 'spew.most', 'can') / 5e6).toBeCloseTo(1, 2);
  });

  it('is held against the closing pressure', async () => {
    const range = await runCheck(spew, packed({ pressurePa: 5e6 }));
    const [least, most] = ['spew.least', 'spew.most'].map((name) => figureOf(range, name, 'can'));
    expect(await codes({ pressurePa: 1.01 * most })).toEqual([]);
    expect(await codes({ pressurePa: (least + most) / 2 })).toEqual(['spew.grooves warn']);
    expect(await codes({ pressurePa: 0.99 * least })).toEqual(['spew.grooves stop']);
    expect(await codes({ pressurePa: 5e6, mooney: 0 })).toEqual(['spew.not-checked note']);
    expect(await codes({})).toEqual(['spew.not-checked note']);
  });

  // Two cubes of 1728 mm3 at 1.1 g/cm3.
  it('leaves what the masters displace', async () => {
    const report = await runCheck(rubberLeftover, cubes({ rubber: { densityKgM3: 1100 } }, 2));
    expect(figureOf(report, 'ledger.leftover', 'mold')).toBeCloseTo(3.8016, 9);
  });
});
