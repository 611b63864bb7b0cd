import { beforeAll, expect, test } from 'vitest';
import { boundsOf, loadKernel, moveMesh } from '../../src/kernel/index.ts';
import type { Boss, Tools } from '../../src/mold/index.ts';
import { bosses } from '../../src/parts/bosses.ts';
import { notch } from '../../src/parts/notch.ts';
import { tab } from '../../src/parts/tab.ts';
import { exampleMold, shareAt, solidsOf, volumeOf } from './example-mold.ts';
import { pairEdges } from './pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const boss = (changes: Partial<Boss>): Boss => ({
  id: 'a',
  kind: 'cone',
  x: 60,
  y: 0,
  turnRad: 0,
  size: '10',
  acrossFlats: 0,
  rootDepth: 4,
  headRadius: 5,
  headHeight: 6,
  clearance: 0,
  ...changes,
});

test('a cone on its root: pi r^2 (d + h / 3), to 1e-6 of the polygonal solid', () => {
  const [solid] = solidsOf(bosses, exampleMold({ process: 'rubber', bosses: [boss({})] }), tools);
  expect(volumeOf(solid.mesh) / (Math.PI * 25 * (4 + 2) * shareAt(5))).toBeCloseTo(1, 6);
  expect(pairEdges(solid.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
});

test('bosses of one shape are one solid, others their own; rigid domes and cones are none', () => {
  const all = [boss({}), boss({ id: 'b', x: 0, y: 60 }), boss({ id: 'c', kind: 'dome', headHeight: 4 })];
  const loose = solidsOf(bosses, exampleMold({ process: 'rubber', bosses: all }), tools);
  expect(loose.map(({ id, subjects }) => [id, subjects])).toEqual([
    ['boss-cone-10', ['a', 'b']],
    ['boss-dome-10', ['c']],
  ]);
  expect(solidsOf(bosses, exampleMold({ process: 'rigid', bosses: all }), tools)).toEqual([]);
});

test('the tab is its wedge and stays inside the rim by its inset', () => {
  const one = { id: 'tab-1', angleRad: 2, width: 14, length: 10, height: 4, inset: 1.5 };
  const [solid] = solidsOf(tab, exampleMold({ process: 'rubber', tabs: [one] }), tools);
  expect(volumeOf(solid.mesh) / (14 * 10 * (4 + 1) * 0.5)).toBeCloseTo(1, 6);
  expect(pairEdges(solid.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect(boundsOf(solid.mesh.positions).min[2]).toBe(0);
  const { positions } = moveMesh(solid.mesh, solid.toMold);
  const far = Array.from({ length: positions.length / 3 }, (_, v) =>
    Math.hypot(positions[v * 3], positions[v * 3 + 1]),
  );
  expect(Math.max(...far)).toBeCloseTo(75 - 1.5, 4);
  expect(boundsOf(positions).max[2]).toBeCloseTo(2, 5);
  expect(boundsOf(positions).min[2]).toBeCloseTo(-2, 5);
});

test('the notch strip is a V prism through both halves, inside the rim', () => {
  const one = { id: 'notch-1', angleRad: 1, width: 4, depth: 3 };
  const mold = exampleMold({ process: 'rubber', notches: [one] });
  const [solid] = solidsOf(notch, mold, tools);
  const height = Math.sqrt(75 ** 2 - 4) - 72;
  expect(volumeOf(solid.mesh) / (0.5 * 4 * height * (19.05 + 12.7))).toBeCloseTo(1, 5);
  expect(pairEdges(solid.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  const placed = moveMesh(solid.mesh, solid.toMold);
  const bounds = boundsOf(placed.positions);
  expect(bounds.min[2]).toBeCloseTo(-19.05, 4);
  expect(bounds.max[2]).toBeCloseTo(12.7, 4);
  for (let i = 0; i < placed.positions.length; i += 3) {
    expect(Math.hypot(placed.positions[i], placed.positions[i + 1])).toBeLessThan(75 + 1e-4);
  }
});
