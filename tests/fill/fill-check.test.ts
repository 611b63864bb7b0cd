import { describe, expect, it } from 'vitest';
import { filling } from '../../src/fill/index.ts';
import { conditionsOf } from '../../src/fill/of-mold.ts';
import { compose, rotation, translation } from '../../src/geometry/index.ts';
import type { Channel, Mold } from '../../src/mold/index.ts';
import { emptyMold, figureOf, runCheck, smallSprue, withMaster } from '../checks/small-mold.ts';
import { type Box, roomOf } from './shapes.ts';

const turns = [0, 90, 222];

/** Masters of boxes round the origin, three of them 70 mm from the axis, each with a gate from the well. */
function moldOf(boxes: readonly Box[], gate = { width: 4, depth: 2 }): Mold {
  const matrices = turns.map((turn) => compose(rotation('z', (turn * Math.PI) / 180), translation(70, 0, 0)));
  const made = withMaster({ ...emptyMold, sprue: smallSprue }, 'part', roomOf(boxes), ...matrices);
  // The matrices' own places, to the last digit.
  const placements = made.placements.map((one, k) => ({ ...one, x: matrices[k][12], y: matrices[k][13] }));
  const mold = { ...made, placements };
  const channels = mold.placements.map(({ id, x, y }): Channel => {
    const radius = Math.hypot(x, y);
    const at = (r: number) => [(x / radius) * r, (y / radius) * r] as const;
    const run = [at(14), at(62)].map((point) => ({ at: point, ...gate }));
    const cut = { laps: [2, 2], section: { kind: 'half-round' }, half: 'upper' } as const;
    return { id: `gate-${id}`, kind: 'gate', placement: id, run, ...cut };
  });
  return { ...mold, channels, bench: { alloy: { name: 'tin' }, spin: { speedRpm: 480 } } };
}

const block: Box = [
  [-10, -5, -2],
  [10, 5, 2],
];

describe('the check of filling', () => {
  it('finds nothing in a block gated wide at its inner end, and one forecast for like places', async () => {
    const mold = moldOf([block]);
    const { findings, figures } = await runCheck(filling, mold);
    expect(findings).toEqual([]);
    expect(figures.filter(({ name }) => name === 'fill.air').map(({ value }) => value)).toEqual([0, 0, 0]);
    const problems = filling
      .units(mold)
      .map(({ input }) => JSON.stringify((input as { cavity: { problem: object } }).cavity.problem));
    expect(new Set(problems).size).toBe(1);
  });

  it('tells the place of air in the mold frame, and what shuts it in', async () => {
    // A pocket toward the axis beside the gate's end, closed when metal fills the block to its foot.
    const report = await runCheck(
      filling,
      moldOf([
        block,
        [
          [-14, 2.5, -2],
          [-9, 5, 2],
        ],
      ]),
    );
    const stays = report.findings.filter(({ code }) => code === 'fill.air-stays');
    expect(stays.map(({ subject }) => subject)).toEqual(['part-1', 'part-2', 'part-3']);
    for (const [k, { place = [0, 0, 0], values }] of stays.entries()) {
      const turn = (turns[k] * Math.PI) / 180;
      const [x, y] = [
        place[0] * Math.cos(turn) + place[1] * Math.sin(turn),
        place[1] * Math.cos(turn) - place[0] * Math.sin(turn),
      ];
      expect(x).toBeCloseTo(56.2, 0);
      expect(y).toBeGreaterThan(2.5);
      expect(values.where).toBe('room');
    }
    // 4 x 2.5 x 4 mm from 56 to 60 mm, a little less for the bend of the face, pressed together by Boyle.
    expect(figureOf(report, 'fill.air', 'part-1')).toBeGreaterThan(25);
    expect(figureOf(report, 'fill.air', 'part-1')).toBeLessThan(40);
  });

  it('fill.air-may-stay: a leg that locks under some Bond numbers of the range alone', async () => {
    const report = await runCheck(
      filling,
      moldOf([
        block,
        [
          [9, -1.33, -1.33],
          [20, 1.33, 1.33],
        ],
      ]),
    );
    const codes = report.findings.map(({ code }) => code);
    expect(codes).toEqual(['fill.air-may-stay', 'fill.air-may-stay', 'fill.air-may-stay']);
    expect(report.findings[0].values).toMatchObject({ where: 'leg', sealed: 'neck', least: 0 });
  });

  it('fill.open-gate-first, with the width at which the gate stays open to air', async () => {
    const narrow = await runCheck(filling, moldOf([block], { width: 2, depth: 1 }));
    const [{ code, values }] = narrow.findings;
    expect(code).toBe('fill.open-gate-first');
    const width = values.width as number;
    const wide = await runCheck(filling, moldOf([block], { width: 1.05 * width, depth: 0.55 * width }));
    expect(wide.findings).toEqual([]);
  });

  it('the metal is as heavy as it is poured: tin just molten by Assael et al. (2010), 4.5 % lighter than set', () => {
    const densityAt = (alloy: object): number | undefined =>
      conditionsOf({
        ...moldOf([block]),
        bench: { alloy: { name: 'tin', ...alloy }, spin: { speedRpm: 480 } },
      })?.metal.densityKgM3;
    // 6979 - 0.652 (T - 505.08 K): at the liquidus, and 68 K over it.
    expect(densityAt({})).toBeCloseTo(6979, 0);
    expect(densityAt({ pourC: 300 })).toBeCloseTo(6979 - 0.652 * 68.07, 0);
    expect(densityAt({ liquidKgM3: 6500 })).toBe(6500);
  });

  it('fill.not-checked and fill.coarse say what is missing and what is too thin', async () => {
    const mold = moldOf([block]);
    const unknown = await runCheck(filling, { ...mold, bench: {} });
    expect(unknown.findings.map(({ code, values }) => [code, values.missing])).toEqual([
      ['fill.not-checked', ['spin.speed', 'alloy.name']],
    ]);
    const thin = await runCheck(
      filling,
      moldOf([
        [
          [-10, -5, -0.05],
          [10, 5, 0.15],
        ],
      ]),
    );
    expect(thin.findings.map(({ code }) => code)).toEqual(['fill.coarse', 'fill.coarse', 'fill.coarse']);
  });

  it('fill.large-cells tells the cells of a cavity that the usual ones would be too many for', async () => {
    const mold = moldOf([
      [
        [-12, -16, -10],
        [12, 16, 10],
      ],
    ]);
    const report = await runCheck(filling, { ...mold, placements: mold.placements.slice(0, 1) });
    // 24 x 32 x 20 mm in 150 000 cells.
    const edge = Math.cbrt(15_360 / 150_000);
    const told = report.findings.find(({ code }) => code === 'fill.large-cells');
    expect(told?.values).toMatchObject({ limit: 0.4, count: 150_000 });
    expect(told?.values.measured).toBeCloseTo(edge, 6);
    expect(figureOf(report, 'fill.cell', 'part-1')).toBeCloseTo(edge, 6);
  });
});
