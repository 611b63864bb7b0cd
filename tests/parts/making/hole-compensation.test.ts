import { expect, test } from 'vitest';
import { areaOf, pointsOf, segmentsFor, translation } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import type { Boss } from '../../../src/mold/index.ts';
import { knifeStencil } from '../../../src/parts/flat/knife-stencil.ts';
import { layoutPlate } from '../../../src/parts/flat/layout-plate.ts';
import { pocketOf } from '../../../src/parts/registration/registration-jig.ts';
import { sprueForm } from '../../../src/parts/sprue/sprue-form.ts';
import { box } from '../../export/shapes.ts';
import { straightChannel } from '../../straight-channel.ts';
import { masterOf } from '../example-masters.ts';
import { exampleBoss, exampleMold, exampleSprue, solidsOf, volumeOf } from '../example-mold.ts';

const fixture = { material: 'resin', clearance: 0.2, chordError: 0.01, relieve: false };

test('a puller hole is as much wider as is given: a circumscribed cylinder, r2 n tan(pi / n) h', async () => {
  const tools = { kernel: await loadKernel() };
  // Between the flats there is no room for a label, which would reach into the hole's rim.
  const sprue = { ...exampleSprue, flats: 16, puller: { screw: 'M6', diameter: 5, depth: 12 } };
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
  const boss: Boss = {
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
    const path = pocketOf({ fixture: { ...fixture, ...given } }, boss);
    return Math.max(...pointsOf(path).map(([x, y]) => Math.hypot(x, y))) * Math.sqrt(3);
  };
  expect(flats()).toBeCloseTo(13.4, 9);
  expect(flats(0.2)).toBeCloseTo(13.6, 9);
});

test('so are the openings of layout plate and knife stencil, their slots too: areas of circle and rectangle', async () => {
  const tools = { kernel: await loadKernel() };
  const block = masterOf('block', box([20, 10, 5], [-10, -5, -3]));
  const placed = { id: 'a', master: 'block', x: 0, y: 40, turnRad: 0, scale: 1, estimated: false };
  const openings = (holeCompensation: number) => {
    const mold = exampleMold({
      process: 'rubber',
      fixture: { ...fixture, ...(holeCompensation > 0 && { holeCompensation }) },
      masters: [block],
      placements: [{ ...placed, matrix: translation(0, 40, 0), lowest: -3, highest: 2, reach: 12 }],
      bosses: [exampleBoss({ id: 'boss-1', kind: 'dome', x: 60, rootDepth: 5, headHeight: 5 })],
      channels: [
        straightChannel({
          id: 'gate-1',
          kind: 'gate',
          placement: 'a',
          from: [0, 19],
          to: [0, 35],
          width: 3,
          depth: 1.5,
          half: 'lower',
        }),
      ],
    });
    return [layoutPlate, knifeStencil].map((part) => {
      const [{ marks }] = part.units(mold)[0].run(tools).drawings ?? [];
      return marks[0].outline.slice(1).map((path) => -areaOf([path]));
    });
  };
  const disc = (diameter: number): number => (Math.PI / 4) * diameter ** 2;
  for (const more of [0, 0.3]) {
    const [plate, stencil] = openings(more);
    // Shaft 12.5 with a fillet of 1.5, head 10 across, both with 0.2 all round; the master 20 x 10.
    const exact = [disc(28.4 + more), disc(10.4 + more), (20.4 + more) * (10.4 + more)];
    for (const [i, area] of plate.entries()) expect(area).toBeCloseTo(exact[i], 3);
    expect(stencil[0]).toBeCloseTo(disc(10.4 + more), 9);
    expect(stencil[1]).toBeCloseTo((3 + more) * 16, 9);
  }
});
