import { beforeAll, expect, test } from 'vitest';
import { compose, moveMesh, rotation, translation } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { findPartingSurface, heightAt, type Mold, type Tools } from '../../../src/mold/index.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { patternPlate } from '../../../src/parts/halves/pattern-plate.ts';
import { partingDefaults } from '../../../src/plan/index.ts';
import { straightChannel } from '../../straight-channel.ts';
import { ball, masterOf, place } from '../example-masters.ts';
import { exampleMold, polygonShare, shareAt, solidsOf, volumeOf } from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
let raised: Mold;

/** A ball lifted 3 mm and another sunk 2 mm on a 60 mm disc: the surface climbs to one equator, falls to the other. */
beforeAll(async () => {
  const kernel = await loadKernel();
  tools = { kernel };
  const master = masterOf('seed-head', ball(kernel, 5, 96));
  const placements = [
    place(master, 'lifted', { radius: 14, angleRad: 0.3, z: 3 }),
    place(master, 'sunk', { radius: 14, angleRad: 3.3, z: -2 }),
  ];
  const { surface } = findPartingSurface({
    discRadius: 30,
    masters: placements.map(({ id, matrix }) => ({ id, mesh: moveMesh(master.mesh, matrix) })),
    pins: [{ outside: 27 }],
    ...partingDefaults,
    limitUp: 8,
    limitDown: 8,
  });
  const { sprue: _, ...whole } = exampleMold({
    disc: { radius: 30, lower: 12, upper: 12, rimChamfer: 0.5, label: '' },
    masters: [master],
    placements,
    parting: surface,
  });
  raised = whole;
});

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const volumes = (mold: Mold): number[] => solidsOf(halves, mold, tools).map(({ mesh }) => volumeOf(mesh));

test('curved halves and their balls fill the disc to 0.01 mm3, both closed', () => {
  expect(raised.parting.flat).toBe(false);
  const built = solidsOf(halves, raised, tools);
  for (const { mesh } of built) expect(pairEdges(mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  const empty = sum(volumes({ ...raised, placements: [], masters: [] }));
  const balls = 2 * volumeOf(raised.masters[0].mesh);
  expect(Math.abs(empty - balls - sum(built.map(({ mesh }) => volumeOf(mesh))))).toBeLessThan(0.01);
});

test('a gate hangs from the sloping surface: it takes its section along the whole way', () => {
  const gate = straightChannel({
    id: 'gate-lifted',
    kind: 'gate' as const,
    placement: 'lifted',
    from: [0, 0] as const,
    to: [8.5 * Math.cos(0.3), 8.5 * Math.sin(0.3)] as const,
    width: 3,
    depth: 1.5,
    half: 'lower' as const,
  });
  const bareMold = { ...raised, placements: [], masters: [] };
  const [lower, upper] = volumes(bareMold);
  const [cutLower, cutUpper] = volumes({ ...bareMold, channels: [gate] });
  expect(heightAt(raised.parting, ...gate.run[1].at)).toBeGreaterThan(1);
  // Half an ellipse drawn with 8 chords is the 16-gon's share; depth is measured straight down, so Cavalieri holds.
  const area = ((Math.PI * 3 * 1.5) / 4) * polygonShare(16);
  expect(Math.abs((lower - cutLower) / (area * 8.5) - 1)).toBeLessThan(0.01);
  expect(cutUpper).toBeCloseTo(upper, 2);
});

test('relief leaves no undercut under the surface and touches nothing that had none', () => {
  const fixture = { ...raised.fixture, relieve: true };
  const tilted = {
    ...raised,
    placements: raised.placements.map((one) => ({
      ...one,
      matrix: compose(one.matrix, translation(0, 0, -1.5), rotation('x', 0.2)),
    })),
  };
  const plain = solidsOf(halves, tilted, tools);
  const relieved = solidsOf(halves, { ...tilted, fixture }, tools);
  for (const [i, { mesh }] of relieved.entries()) {
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    expect(volumeOf(mesh)).toBeLessThan(volumeOf(plain[i].mesh) + 1e-3);
  }
  // Sunk 1.5 mm under the surface that was made for it, each ball is overhung in the lower half alone.
  const lost = plain.map(({ mesh }, i) => volumeOf(mesh) - volumeOf(relieved[i].mesh));
  expect(lost[0]).toBeGreaterThan(1);
  expect(lost[1]).toBeLessThan(0.5);
});

test('what a bowl sunk under the plane would cut loose goes over to the upper half', () => {
  const master = tools.kernel.scope((scope) => {
    const outline = [
      [0, 0],
      [8, 0],
      [8, 6],
      [6, 6],
      [6, 2],
      [0, 2],
    ] as const;
    return masterOf('bowl', scope.toMesh(scope.revolve(outline, 96, 'bowl')));
  });
  const { sprue: _, ...whole } = exampleMold({
    masters: [master],
    placements: [place(master, 'bowl-1', { radius: 40, angleRad: 0, z: -6 })],
  });
  const built = solidsOf(halves, whole, tools);
  for (const { mesh } of built) expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
  const [, upper] = built.map(({ mesh }) => volumeOf(mesh));
  const [, empty] = volumes({ ...whole, masters: [], placements: [] });
  // The hollow: a cylinder of radius 6, 4 deep (96-gon).
  const hollow = 48 * Math.sin(Math.PI / 48) * 36 * 4;
  expect(upper - empty).toBeCloseTo(hollow, 1);
});

test('pattern plates of curved halves are closed and complete the cup', () => {
  const { disc } = raised;
  const poured = { ...raised, process: 'poured' as const, disc: { ...disc, rimChamfer: 0 } };
  const plates = solidsOf(patternPlate, poured, tools);
  const cast = solidsOf(halves, poured, tools);
  for (const [i, { mesh }] of plates.entries()) {
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    let highest = 0;
    for (const at of mesh.positions.filter((_, k) => k % 3 === 2)) highest = Math.max(highest, at);
    const cup = Math.PI * 34 ** 2 * highest * shareAt(34);
    const groove = cup - volumeOf(mesh) - volumeOf(cast[i].mesh);
    expect(groove).toBeGreaterThan(1);
    expect(groove).toBeLessThan(35);
  }
});
