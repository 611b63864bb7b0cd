import { describe, expect, it } from 'vitest';
import { balance } from '../../../src/checks/turning/balance.ts';
import { compose, rotation, translation } from '../../../src/geometry/index.ts';
import type { Mold } from '../../../src/mold/index.ts';
import { sayFinding } from '../../../src/wording/index.ts';
import { notchMoment } from '../../parts/notch-area.ts';
import { box, single } from '../../revolved-solids.ts';
import { emptyMold, figureOf, nutAt, runCheck, withMaster } from '../small-mold.ts';

const cube = (half: number) => single(box([-half, -half, -half], [half, half, half]));
const bench: Mold['bench'] = {
  alloy: { name: 'tin' },
  rubber: { densityKgM3: 1100 },
  machine: { plateMassKg: 6, plateUnbalanceGmm: 0, centering: 0, maxUnbalanceGmm: 1e6 },
  spin: { speedRpm: 400, grade: 'G6.3' },
};
const bare: Mold = { ...emptyMold, bench };
const heavySide = withMaster(bare, 'button', cube(5), translation(90, 0, 0));
const outcome = async (mold: Mold) =>
  (await runCheck(balance, mold)).findings.map(({ code, severity }) => [code, severity]);

describe('balance', () => {
  it('warns of a heavy side little, and of more than the machine stands with a stop', async () => {
    // 1 cm3 of tin for rubber, 6.21 g at 90 mm: 559 g.mm; G6.3, 7.38 kg at 400 rpm: 1110 allowed.
    expect(await outcome(heavySide)).toEqual([]);
    const faster = { ...heavySide, bench: { ...bench, spin: { speedRpm: 900, grade: 'G6.3' } } };
    expect(await outcome(faster)).toEqual([['balance.over', 'warn']]);
    const weak = { ...bench, machine: { ...bench.machine, maxUnbalanceGmm: 500 } };
    expect(await outcome({ ...heavySide, bench: weak })).toEqual([['balance.machine', 'stop']]);
  });

  // 1 cm3 of 7.31 g/cm3 for rubber of 1.1: 6.21 g at 90 mm, 558.9 g.mm, 4.4712 g at the rim of 125 mm.
  it('says what would balance it, and where', async () => {
    const spin = { speedRpm: 900, grade: 'G6.3' };
    const up = withMaster({ ...bare, bench: { ...bench, spin } }, 'button', cube(5), translation(0, 90, 0));
    const { findings } = await runCheck(balance, up);
    expect(findings[0].values).toMatchObject({
      heavy: expect.closeTo(90, 6),
      opposite: expect.closeTo(270, 6),
      weight: expect.closeTo(4.4712, 4),
      dummy: expect.closeTo(6.21, 4),
      dummyRadius: expect.closeTo(90, 6),
    });
    expect(findings[0].values).not.toHaveProperty('swap');
  });

  it('warns where one misrun is more than the machine stands', async () => {
    const pair = withMaster(
      { ...bare, bench: { ...bench, machine: { ...bench.machine, maxUnbalanceGmm: 500 } } },
      'button',
      cube(5),
      translation(90, 0, 0),
      translation(-90, 0, 0),
    );
    expect(await outcome(pair)).toEqual([['balance.misrun', 'warn']]);
  });

  it('turns with the mold', async () => {
    const nut = nutAt('east', 0, 100);
    const turned = withMaster(
      { ...bare, bosses: [nutAt('east', 100 * Math.cos(2.1), 100 * Math.sin(2.1))] },
      'button',
      cube(5),
      compose(rotation('z', 2.1 - Math.PI / 2), translation(90, 0, 0)),
    );
    const straight = await runCheck(balance, { ...heavySide, bosses: [nut] });
    const round = await runCheck(balance, turned);
    for (const name of ['balance.static', 'balance.lower', 'balance.upper', 'balance.permissible'])
      expect(figureOf(round, name, 'mold')).toBeCloseTo(figureOf(straight, name, 'mold'), 6);
    const turn = figureOf(round, 'balance.angle', 'mold') - figureOf(straight, 'balance.angle', 'mold') + 360;
    expect(turn % 360).toBeCloseTo(((2.1 - Math.PI / 2) * 180) / Math.PI, 6);
  });

  it('grows with the fourth power of the size of all', async () => {
    const twice = withMaster(bare, 'button', cube(10), translation(180, 0, 0));
    const one = figureOf(await runCheck(balance, heavySide), 'balance.static', 'mold');
    const two = figureOf(await runCheck(balance, twice), 'balance.static', 'mold');
    expect(two / one).toBeCloseTo(16, 6);
  });

  it('names the swap that mends it', async () => {
    // Large ones at 0 and 90 degrees, small ones opposite: a swap across leaves large against large.
    const large = withMaster(bare, 'large', cube(8), translation(90, 0, 0), translation(0, 90, 0));
    const mold = withMaster(large, 'small', cube(4), translation(-90, 0, 0), translation(0, -90, 0));
    const { findings } = await runCheck(balance, mold);
    expect(findings.map(({ code }) => code)).toEqual(['balance.over']);
    expect(findings[0].values).toMatchObject({ which: 'whole', swapLeaves: expect.closeTo(0, 6) });
    expect(sayFinding(findings[0], 'metric').remedy).toMatch(
      /^Swap large-\d with small-\d, which leaves 0 g.mm .*, or fix .* to the rim at .*, or cut a dummy cavity/,
    );
  });

  it('says which face is over its share where the whole is in balance', async () => {
    const strict: Mold = { ...bare, bench: { ...bench, spin: { speedRpm: 400, grade: 'G1' } } };
    // Opposite each other, one in the upper half and one in the lower: a couple alone.
    const couple = withMaster(strict, 'button', cube(5), translation(90, 0, 5), translation(-90, 0, -5));
    const report = await runCheck(balance, couple);
    expect(report.findings.map(({ code, severity }) => [code, severity])).toEqual([['balance.over', 'warn']]);
    const { values } = report.findings[0];
    expect(values).toMatchObject({
      which: 'face',
      half: expect.stringMatching(/^(lower|upper)$/),
      grade: 'G1',
    });
    expect(values.measured).toBe(figureOf(report, `balance.${values.half}`, 'mold'));
    expect(values.limit).toBeCloseTo(figureOf(report, 'balance.permissible', 'mold') / 2, 6);
  });

  it('asks for what the plan leaves out, and invents no figure', async () => {
    const { findings, figures } = await runCheck(balance, { ...heavySide, bench: {} });
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['balance.not-checked', 'note']]);
    const limit = ['spin.speed', 'spin.grade', 'machine.plateMass', ...part];
    expect(findings[0].values).toEqual({
      which: 'nothing',
      missing: ['alloy.density', 'rubber.density'],
      material: [],
      held: limit,
    });
    expect(figures).toEqual([]);
    expect(sayFinding(findings[0], 'metric').says).toBe(
      'No unbalance is found at all: the plan does not say alloy.density and rubber.density. To hold it to its limits it would have to say spin.speed, spin.grade, machine.plateMass, machine.plateUnbalance, machine.centering and machine.maxUnbalance too.',
    );
  });

  it('does not say that the plan leaves out what it names and no table knows', async () => {
    const bench = { ...heavySide.bench, alloy: { name: 'house metal' }, rubber: { compound: 'house blend' } };
    const { findings, figures } = await runCheck(balance, { ...heavySide, bench });
    expect(figures).toEqual([]);
    expect(findings[0].values).toMatchObject({
      which: 'nothing',
      missing: [],
      material: ['house metal', 'house blend'],
    });
    expect(sayFinding(findings[0], 'metric').says).toMatch(
      /^No unbalance is found at all: no density of house metal and house blend is at hand\./,
    );
  });

  const part = ['machine.plateUnbalance', 'machine.centering', 'machine.maxUnbalance'];

  it('says that what is found is held to no grade where the plates are left out', async () => {
    const { findings, figures } = await runCheck(balance, {
      ...heavySide,
      bench: { ...heavySide.bench, machine: {} },
    });
    expect(figures.length).toBeGreaterThan(3);
    expect(findings.filter(({ code }) => code === 'balance.not-checked')).toMatchObject([
      { values: { which: 'grade', missing: ['machine.plateMass', ...part] } },
    ]);
  });

  it('has no job without placements, nor for plates to pour rubber on', () => {
    expect(balance.units(bare)).toEqual([]);
    expect(balance.units({ ...heavySide, process: 'poured' })).toEqual([]);
  });

  it('takes a notch and a tab as missing rubber', async () => {
    const mold = {
      ...heavySide,
      notches: [{ id: 'notch-1', angleRad: 0, width: 5, depth: 3 }],
      tabs: [{ id: 'tab-1', angleRad: 0, width: 18, length: 8, height: 3, inset: 1 }],
    };
    const before = figureOf(await runCheck(balance, heavySide), 'balance.static', 'mold');
    const after = figureOf(await runCheck(balance, mold), 'balance.static', 'mold');
    // V with a round root, summed over strips, and sliver 2/3 x 5 x 0.025 through 25.4 mm; wedge 270 mm3 at 120.47 mm.
    const notch = (notchMoment(5, 3, 125) + 0.0833 * 124.99) * 25.4;
    const outer = Math.sqrt(124 ** 2 - 81);
    const wedge = 270 * (outer - 3.2);
    expect(before - after).toBeCloseTo((notch + wedge) * 1.1e-3, 1);
  });
});
