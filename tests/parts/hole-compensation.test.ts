import { expect, test } from 'vitest';
import { loadKernel, pointsOf, segmentsFor } from '../../src/kernel/index.ts';
import type { Boss } from '../../src/mold/index.ts';
import { pocketOf } from '../../src/parts/registration-jig.ts';
import { sprueForm } from '../../src/parts/sprue-form.ts';
import { exampleMold, exampleSprue, solidsOf, volumeOf } from './example-mold.ts';

const fixture = { material: 'resin', clearance: 0.2, chordError: 0.01, relieve: false };

test('a puller hole is as much wider as is given: a circumscribed cylinder, r2 n tan(pi / n) h', async () => {
  const tools = { kernel: await loadKernel() };
  const sprue = { ...exampleSprue, puller: { screw: 'M6', diameter: 5, depth: 12 } };
  const volume = (holeCompensation: number): number =>
    volumeOf(
      solidsOf(sprueForm, exampleMold({ sprue, fixture: { ...fixture, holeCompensation } }), tools)[0].mesh,
    );
  const hole = (diameter: number): number => {
    const n = segmentsFor(diameter / 2, fixture.chordError);
    return (diameter / 2) ** 2 * n * Math.tan(Math.PI / n) * 12;
  };
  expect((volume(0) - volume(0.4)) / (hole(5.4) - hole(5))).toBeCloseTo(1, 3);
});

test('an opening of the jig is as much wider between its flats, on top of its clearance', () => {
  const boss: Omit<Boss, 'at'> = {
    id: 'boss-1',
    kind: 'cap nut',
    x: 0,
    y: 0,
    turnRad: 0,
    size: 'M8',
    acrossFlats: 13,
    rootDepth: 6,
    headRadius: 6,
    headHeight: 8,
    clearance: 0,
  };
  const flats = (holeCompensation?: number): number => {
    const given = holeCompensation === undefined ? {} : { holeCompensation };
    const path = pocketOf(
      { radius: 75, bosses: [boss], notches: [], fixture: { ...fixture, ...given } },
      boss,
    );
    return Math.max(...pointsOf(path).map(([x, y]) => Math.hypot(x, y))) * Math.sqrt(3);
  };
  expect(flats()).toBeCloseTo(13.4, 9);
  expect(flats(0.2)).toBeCloseTo(13.6, 9);
});
