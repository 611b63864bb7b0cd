import { describe, expect, it } from 'vitest';
import { boltCircle } from '../../../src/checks/from-mold/bolt-circle.ts';
import { isUnder } from '../../../src/checks/from-mold/process-floor.ts';
import { fittings, metalAlone, metalInCavity } from '../../../src/checks/from-mold/turning-masses.ts';
import { compose, scaling, translation } from '../../../src/geometry/index.ts';
import type { Mold } from '../../../src/mold/index.ts';
import { box, single } from '../../revolved-solids.ts';
import { straightChannel } from '../../straight-channel.ts';
import { emptyMold, withMaster } from '../small-mold.ts';

const densities = { half: 1100, alloy: 7310, fixture: 1200 };
const turning = (some: Partial<Mold>, poured = false) =>
  fittings({ ...emptyMold, ...some }, densities, poured);

describe('what turns with the disc, by the volume of each shape', () => {
  it('a hole for a vent pin is rubber that is gone: a cylinder, in the middle of its depth', () => {
    const pin = {
      id: 'pin',
      placement: 'a',
      x: 30,
      y: -40,
      diameter: 2,
      depth: 5,
      reach: 5,
      half: 'upper',
    } as const;
    const [hole, ...more] = turning({ ventPins: [pin] });
    expect(more).toEqual([]);
    expect(hole.massG).toBeCloseTo(-Math.PI * 1 ** 2 * 5 * 1100e-6, 12);
    expect(hole).toMatchObject({ x: 30, y: -40, z: expect.closeTo(12.7 - 2.5, 9) });
    const [below] = turning({ ventPins: [{ ...pin, half: 'lower' }] });
    expect(below.z).toBeCloseTo(-(12.7 - 2.5), 9);
  });

  it('tabs and notches are rubber that is gone, whether metal is poured or not', () => {
    // The wedge is a quarter as high at its inner edge: 20 x 12 x (3 + 0.75) / 2.
    const tab = { id: 'tab', angleRad: 0, width: 20, length: 12, height: 3, inset: 1 };
    const notch = { id: 'notch', angleRad: Math.PI, width: 6, depth: 4 };
    for (const poured of [false, true]) {
      const cut = turning({ tabs: [tab] }, poured).reduce((sum, { massG }) => sum + massG, 0);
      expect(cut / (450 * -1100e-6)).toBeCloseTo(1, 2);
      // A V 6 wide and 4 deep at most, through both halves: under 12 mm2 by its round root and the arc of the rim.
      const [gone, ...more] = turning({ notches: [notch] }, poured);
      expect(more).toEqual([]);
      expect(gone.massG).toBeLessThan(0.8 * 12 * 25.4 * -1100e-6);
      expect(gone.massG).toBeGreaterThan(1.2 * 12 * 25.4 * -1100e-6);
      expect(gone.x).toBeLessThan(-120);
    }
  });

  // A half circle of radius 1.5 over 30 mm between the ends that lie in well and cavity; drawn by chords within 3 %.
  it('a gate is full of metal or, before, empty; a vent empty always', () => {
    const straight = {
      id: 'gate',
      placement: 'a',
      from: [18.5, 0],
      to: [51.5, 0],
      width: 3,
      depth: 1.5,
      half: 'upper',
    } as const;
    const gate = straightChannel({ ...straight, kind: 'gate' });
    const volume = (Math.PI / 2) * 1.5 ** 2 * 30;
    const massOf = (channel: typeof gate, poured: boolean) =>
      turning({ channels: [channel] }, poured)[0].massG;
    expect(massOf(gate, true) / (volume * (7310 - 1100) * 1e-6)).toBeCloseTo(1, 1);
    expect(massOf(gate, false) / (volume * -1100e-6)).toBeCloseTo(1, 1);
    const vent = straightChannel({ ...straight, kind: 'vent' });
    expect(massOf(vent, true)).toBe(massOf(vent, false));
    expect(massOf(vent, true)).toBeLessThan(0);
    // Full it weighs more than the rubber it takes the place of, by the ratio of both densities.
    expect(massOf(gate, true) / massOf(gate, false)).toBeCloseTo((7310 - 1100) / -1100, 9);
  });

  it('a casting is as large as its master stands in the disc: twice as long, eight times the metal', () => {
    const brick = single(box([-4, -3, -2], [4, 3, 2]));
    const mold = withMaster(
      emptyMold,
      'brick',
      brick,
      translation(60, 0, 0),
      compose(translation(0, 60, 0), scaling(2)),
    );
    const [one, large] = mold.placements.map((placement) => metalAlone(mold, placement, densities));
    // 8 x 6 x 4 mm of tin, 7310 kg/m3 (CRC Handbook).
    expect(one.massG).toBeCloseTo(192 * 7310e-6, 6);
    expect(large.massG).toBeCloseTo(8 * 192 * 7310e-6, 5);
    expect([large.x, large.y]).toEqual([expect.closeTo(0, 6), expect.closeTo(60, 6)]);
    const [less] = mold.placements.map((placement) => metalInCavity(mold, placement, densities));
    expect(less.massG).toBeCloseTo(192 * (7310 - 1100) * 1e-6, 6);
    // Weighed, the metal is what it weighs; the rubber in its place is gone all the same.
    const weighed = { ...mold, masters: mold.masters.map((master) => ({ ...master, massG: 5 })) };
    expect(metalAlone(weighed, mold.placements[0], densities).massG).toBe(5);
    expect(metalInCavity(weighed, mold.placements[0], densities).massG).toBeCloseTo(5 - 192 * 1100e-6, 6);
  });
});

it('a wall is under what a process makes between nothing and its least: neither end counts', () => {
  const floor = { process: 'FDM', least: 0.8 };
  expect([-0.1, 0, 1e-9, 0.79, 0.8, 0.81].map((thickness) => isUnder(thickness, floor))).toEqual([
    false,
    false,
    true,
    true,
    false,
    false,
  ]);
  expect(isUnder(0.1, undefined)).toBe(false);
});

it('of bolts it is said what the plan leaves out, and nothing where it has none', () => {
  expect(boltCircle({})).toEqual({ missing: [] });
  expect(boltCircle({ closing: {} })).toEqual({ missing: [] });
  const missing = (bolts: NonNullable<NonNullable<Mold['bench']['closing']>['bolts']>) =>
    boltCircle({ closing: { bolts } }).missing;
  expect(missing({ size: 'M10', count: 4, circle: 200 })).toEqual([]);
  expect(missing({ size: 'M10', count: 4 })).toEqual(['closing.bolts.circle']);
  expect(missing({ size: 'moon dust', count: 4, circle: 200 })).toEqual(['closing.bolts.size']);
  // Across M10 is 10 mm, on a circle of 200 mm.
  expect(boltCircle({ closing: { bolts: { size: 'M10', count: 4, circle: 200 } } }).bolts).toMatchObject({
    count: 4,
    radius: 5,
    circle: 100,
  });
});
