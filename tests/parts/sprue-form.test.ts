import { beforeAll, expect, test } from 'vitest';
import { KernelFault, loadKernel, segmentsFor } from '../../src/kernel/index.ts';
import { shaftRadius, type Tools, wellFloorRadius } from '../../src/mold/index.ts';
import { plug } from '../../src/parts/plug.ts';
import { sprueForm } from '../../src/parts/sprue-form.ts';
import { cap, exampleMold, exampleSprue, frustum, polygonShare, solidsOf, volumeOf } from './example-mold.ts';
import { pairEdges } from './pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const upper = exampleMold().disc.upper;

/** Frusta of shaft and well and the grip's cylinder, less the dish's cap (solid geometry, any handbook). */
function roundVolume(sprue: typeof exampleSprue): number {
  const top = shaftRadius(sprue, upper);
  return (
    frustum(sprue.holeRadius, top, upper) +
    Math.PI * top ** 2 * sprue.grip +
    frustum(sprue.wellRadius, wellFloorRadius(sprue), sprue.wellDepth) -
    cap(sprue.domeRadius, sprue.domeHeight)
  );
}

test('a sprue form without fillet and dome is two frusta and a cylinder, to 1e-6 of the polygonal solid', () => {
  const sprue = { ...exampleSprue, fillet: 0, domeHeight: 0 };
  const [form] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const share = polygonShare(segmentsFor(sprue.wellRadius, 0.01));
  expect(volumeOf(form.mesh) / (roundVolume({ ...sprue, domeRadius: 0 }) * share)).toBeCloseTo(1, 6);
});

test('with its dish it keeps to the round volume within the chord bound', () => {
  const sprue = { ...exampleSprue, fillet: 0 };
  const [form] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const round = roundVolume(sprue);
  // A chord stays within 0.01 mm of its circle: at most that times the surface, here under 0.2 %.
  expect(Math.abs(volumeOf(form.mesh) - round)).toBeLessThan(0.002 * round);
});

test.each([0, 1.5])('a sprue form with fillet %s is one closed ball standing on the bed', (fillet) => {
  const [form] = solidsOf(sprueForm, exampleMold({ sprue: { ...exampleSprue, fillet } }), tools);
  expect(pairEdges(form.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect(Math.min(...form.mesh.positions.filter((_, i) => i % 3 === 2))).toBe(0);
  expect(form.toMold[14]).toBe(-exampleSprue.wellDepth);
});

test('fillets at mouth and floor: one adds what the closed form of a corner says, the other takes it away', () => {
  const sprue = { ...exampleSprue, draftRad: 0, domeHeight: 0 };
  const [sharp] = solidsOf(sprueForm, exampleMold({ sprue: { ...sprue, fillet: 0 } }), tools);
  const [round] = solidsOf(sprueForm, exampleMold({ sprue }), tools);
  const r = sprue.fillet;
  // Pappus: area of the corner outside a quarter circle (1 - pi/4) r^2, its centroid 0.2234 r from the edges
  // ((10 - 3 pi) / (12 - 3 pi)); at the mouth it is added outside the shaft, at the floor taken inside the wall.
  const area = (1 - Math.PI / 4) * r * r;
  const inset = ((10 - 3 * Math.PI) / (12 - 3 * Math.PI)) * r;
  const expected =
    2 * Math.PI * area * (sprue.holeRadius + inset) - 2 * Math.PI * area * (sprue.wellRadius - inset);
  expect(volumeOf(round.mesh) - volumeOf(sharp.mesh)).toBeCloseTo(expected, 0);
  expect(Math.abs(volumeOf(round.mesh) - volumeOf(sharp.mesh) - expected)).toBeLessThan(
    0.05 * Math.abs(expected),
  );
});

test('the plug is the shaft less its clearance', () => {
  const [body] = solidsOf(plug, exampleMold(), tools);
  const c = 0.2;
  const top = shaftRadius(exampleSprue, upper) - c;
  const round = frustum(exampleSprue.holeRadius - c, top, upper) + Math.PI * top ** 2 * exampleSprue.grip;
  const share = polygonShare(segmentsFor(exampleSprue.holeRadius, 0.01));
  expect(volumeOf(body.mesh) / (round * share)).toBeCloseTo(1, 6);
  expect(pairEdges(body.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
});

test.each([
  ['a shaft that runs out', { draftRad: 1.2 }],
  ['a fillet without room', { fillet: 9 }],
  ['a dome above the parting plane', { domeHeight: 9, domeRadius: 9 }],
  ['a well narrower than the hole', { wellRadius: 10 }],
])('%s is a fault with the solid named', (_, change) => {
  const mold = exampleMold({ sprue: { ...exampleSprue, ...change } });
  expect(() => solidsOf(sprueForm, mold, tools)).toThrow(KernelFault);
  expect(() => solidsOf(sprueForm, mold, tools)).toThrow(/sprue form/);
});

test('no sprue in the plan, no form and no plug', () => {
  const { sprue: _, ...mold } = exampleMold();
  expect(solidsOf(sprueForm, mold, tools)).toEqual([]);
  expect(solidsOf(plug, mold, tools)).toEqual([]);
});
