import { describe, expect, it } from 'vitest';
import { squeeze } from '../../src/checks/turning/index.ts';
import { heldModulus, modulusOfHardness, shapeFactor } from '../../src/physics/index.ts';
import { figureOf, runCheck } from '../checks/small-mold.ts';
import { cubes, rubber } from './cast-bricks.ts';

const pressed = (more: object, force?: number) =>
  cubes({ rubber: { ...rubber, ...more }, ...(force && { machine: { closingForceN: force } }) });

describe('squeeze of rubber halves', () => {
  // 2 kN on pi (125^2 - 15^2) - 144 = 48 236.5 mm2: 41 462 Pa on 2 MPa. S = 125 / 50.8 = 2.46063, 1 + 2 S^2 = 13.1094;
  // 26.2188 MPa and 2 GPa of bulk in series: 25.8795 MPa. A cube of 12 mm leaves 6.7 mm of cover.
  it('a disc of 250 mm, free and held', async () => {
    const report = await runCheck(squeeze, pressed({ modulusPa: 2e6 }, 2000));
    const of = (name: string) => figureOf(report, `squeeze.${name}`, 'machine');
    expect(of('most')).toBeCloseTo(0.020731, 5);
    expect(of('least')).toBeCloseTo(0.0016021, 6);
    expect(of('mold')).toBeCloseTo(0.52657, 4);
    expect(of('cover')).toBeCloseTo(6.7 * (1 - 0.020731), 4);
    expect(of('part')).toBeCloseTo(12 * 0.020731, 4);
    expect(report.findings).toEqual([]);
  });

  // Gent and Lindley: E_a = E (1 + 2 S^2), S of a disc D / 4 t; with the bulk modulus in series it never exceeds that.
  it('apparent modulus of a bonded block', () => {
    expect(shapeFactor(50, 25)).toBe(1);
    expect(heldModulus(1e6, 1, Number.POSITIVE_INFINITY)).toBeCloseTo(3e6, 6);
    expect(heldModulus(1e6, 1000, 2e9)).toBeCloseTo(1.998002e9, -4);
  });

  // Gent's own formula by hand: 0.0981 (56 + 7.62336 S) / (0.137505 (254 - 2.54 S)) MPa.
  it.each([
    [30, 0.0981 * 284.7008, 0.137505 * 177.8],
    [50, 0.0981 * 437.168, 0.137505 * 127],
    [70, 0.0981 * 589.6352, 0.137505 * 76.2],
  ])('modulus of %d Shore A', (shore, over, under) => {
    expect(modulusOfHardness(shore) / 1e6).toBeCloseTo(over / under, 9);
  });

  it('tells when it takes the cover, and what it lacks', async () => {
    const codes = async (more: object, force?: number) =>
      (await runCheck(squeeze, pressed(more, force))).findings.map(({ code }) => code);
    // 60 %: 41 kPa on 68 kPa.
    expect(await codes({ modulusPa: 68e3 }, 2000)).toEqual(['squeeze.cover']);
    expect(await codes({ hardness: 50 }, 2000)).toEqual([]);
    expect(await codes({ hardness: 50 })).toEqual(['squeeze.not-checked']);
    expect(await codes({}, 2000)).toEqual([]);
  });
});
