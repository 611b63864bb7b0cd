import { describe, expect, it } from 'vitest';
import { pack, packs } from '../../../src/checks/can/pack.ts';
import { rubberBlanks } from '../../../src/checks/can/rubber-blanks.ts';
import { rubberLeftover } from '../../../src/checks/can/rubber-leftover.ts';
import { translation } from '../../../src/geometry/index.ts';
import type { Mold } from '../../../src/mold/index.ts';
import { box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, runCheck, smallSprue, withMaster } from '../small-mold.ts';

/** 10 x 20 x 4 mm: 800 mm3. */
const tile = single(box([-5, -10, -2], [5, 10, 2]));
const two = withMaster(emptyMold, 'tile', tile, translation(60, 0, 0), translation(-60, 0, 0));
const of = (bench: Mold['bench'], other: Partial<Mold> = {}): Mold => ({ ...two, ...other, bench });

describe('rubber of each half', () => {
  // pi R^2 h: 125 mm across its radius; 1100 kg/m3.
  it('is a disc of its own thickness, weighed where the density is known', async () => {
    const disc = { ...emptyMold.disc, lower: 12, upper: 20 };
    const report = await runCheck(rubberBlanks, of({ rubber: { densityKgM3: 1100 } }, { disc }));
    for (const [half, thickness] of [
      ['lower half', 12],
      ['upper half', 20],
    ] as const) {
      const volume = Math.PI * 125 ** 2 * thickness;
      expect(figureOf(report, 'ledger.blank', half)).toBeCloseTo(volume, 6);
      expect(figureOf(report, 'ledger.blankMass', half)).toBeCloseTo((volume / 1e9) * 1100, 9);
    }
    expect(report.figures.map(({ estimated, source }) => [estimated, source.length > 20])).toEqual(
      Array.from({ length: 4 }, () => [false, true]),
    );
    const unknown = await runCheck(rubberBlanks, of({}));
    expect(unknown.figures.map(({ name }) => name)).toEqual(['ledger.blank', 'ledger.blank']);
    expect(rubberBlanks.units(emptyMold)).toEqual([]);
  });
});

describe('rubber left over', () => {
  it('is the volume of all masters, as large as they are placed, by the density', async () => {
    const [first, second] = two.placements;
    const mold = of({ rubber: { densityKgM3: 1100 } }, { placements: [first, { ...second, scale: 2 }] });
    const { figures } = await runCheck(rubberLeftover, mold);
    // 800 + 8 x 800 mm3 of 1.1 g/cm3.
    expect(figures.map(({ value, estimated }) => [value, estimated])).toEqual([
      [expect.closeTo(7.92, 6), false],
    ]);
    const guessed = { ...mold, placements: [first, { ...second, estimated: true }] };
    expect((await runCheck(rubberLeftover, guessed)).figures[0].estimated).toBe(true);
    expect(rubberLeftover.units(of({}))).toEqual([]);
    expect(rubberLeftover.units({ ...emptyMold, bench: { rubber: { densityKgM3: 1100 } } })).toEqual([]);
  });
});

describe('what is packed into the can', () => {
  const cure = { startC: 20, temperatureC: 120 };
  const can = { diameter: 250, depth: 25.4 } as const;
  const full = Math.PI * 125 ** 2 * 25.4;
  const said = async (mold: Mold) =>
    (await runCheck(pack, mold)).findings.map(({ code, values }) => [code, values.measured]);

  it('that just fills it hot is neither too much nor too little', async () => {
    // 1600 mm3 of masters; 5e-4 /K over 100 K: the rubber grows by 5 %.
    const share = 1 / 1.05;
    const filled = (laidInShare: number, spew: 'open' | 'none') =>
      said(
        of({ can: { ...can, spew }, cure, rubber: { expansionPerK: 5e-4, laidInShare, densityKgM3: 1100 } }),
      );
    const room = full - 1600;
    expect(await filled(share * (1 + 1e-6), 'none')).toEqual([
      ['pack.locked', expect.closeTo(room * 1e-6, 3)],
    ]);
    expect(await filled(share * (1 + 1e-6), 'open')).toEqual([
      ['pack.flows-out', expect.closeTo(room * 1e-6, 3)],
    ]);
    expect(await filled(share * (1 - 1e-6), 'open')).toEqual([
      ['pack.short', expect.closeTo(-room * 1e-6, 3)],
    ]);
  });

  it('by what is known of the rubber alone may be too much and too little at once, each by its own end', async () => {
    const rubber = { compound: 'filled organic rubber', laidInShare: 0.95, densityKgM3: 1100 };
    const report = await runCheck(pack, of({ can, cure, rubber }));
    const [over, short] = report.findings;
    expect([over?.code, short?.code]).toEqual(['pack.way-out', 'pack.short']);
    // 3 x 260e-6 /K at most (gum), half of 3 x 180e-6 at least (filled), over 100 K.
    const room = full - 1600;
    expect(over.values.measured).toBeCloseTo(room * (0.95 * 1.078 - 1), 2);
    expect(short.values.measured).toBeCloseTo(room * (0.95 * 1.027 - 1), 2);
    expect(short.values.empty).toBe(-Number(short.values.measured));
    expect(report.figures.every(({ estimated }) => estimated)).toBe(true);
  });

  it('with its spacer in, and with no estimate where the plan gives all', async () => {
    const rubber = { expansionPerK: 5e-4 };
    const report = await runCheck(pack, of({ can: { ...can, depth: 30, spacer: 4.6 }, cure, rubber }));
    expect(figureOf(report, 'pack.can', 'can')).toBeCloseTo(full, 3);
    const estimates = report.figures.filter(({ estimated }) => estimated).map(({ name }) => name);
    // Only what rests on the bulk modulus, of which no source knows better than a range.
    expect(estimates).toEqual(['pack.lock']);
    expect(report.figures.map(({ name }) => name)).not.toContain('pack.laidIn');
    const short = await runCheck(pack, of({ can: { ...can, depth: 40 }, cure, rubber }));
    expect(short.figures.map(({ name }) => name)).toEqual(['pack.can', 'pack.cold', 'pack.excess']);
  });

  it('is asked of a mold with masters that is heated and whose sprue form can be made', () => {
    expect(packs(of({}))).toBe(true);
    expect(packs(of({ cure }))).toBe(true);
    expect(packs(of({ cure: { startC: 20 } }))).toBe(true);
    expect(packs(of({ cure: { startC: 120, temperatureC: 120 } }))).toBe(false);
    expect(packs(of({}, { sprue: smallSprue }))).toBe(true);
    expect(packs(of({}, { sprue: { ...smallSprue, draftRad: 1.5 } }))).toBe(false);
    expect(packs(emptyMold)).toBe(false);
  });

  it('names what the plan leaves out', async () => {
    const missing = async (bench: Mold['bench']) =>
      (await runCheck(pack, of(bench))).findings.map(({ values }) => values.missing);
    expect(await missing({})).toEqual([
      ['can.diameter', 'can.depth', 'rubber.expansion', 'cure.temperature', 'cure.start'],
    ]);
    const rubber = { expansionPerK: 5e-4, laidInKg: 1 };
    expect(await missing({ can, cure, rubber })).toEqual([['rubber.density']]);
  });
});
