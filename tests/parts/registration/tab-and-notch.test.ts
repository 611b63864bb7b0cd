import { Vector3 } from 'three';
import { beforeAll, expect, test } from 'vitest';
import { boundsOf, moveMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { bvhOf } from '../../../src/mesh/measure/bvh.ts';
import { type Tools, tabRounding } from '../../../src/mold/index.ts';
import { labelCutter } from '../../../src/parts/making/label.ts';
import { bosses } from '../../../src/parts/registration/bosses.ts';
import { notch } from '../../../src/parts/registration/notch.ts';
import { tab } from '../../../src/parts/registration/tab.ts';
import { exampleBoss, exampleMold, shareAt, solidsOf, volumeOf } from '../example-mold.ts';
import { notchArea } from '../notch-area.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

test('a cone on its root: pi r^2 (d + h / 3), to 1e-6 of the polygonal solid', () => {
  const [solid] = solidsOf(bosses, exampleMold({ process: 'rubber', bosses: [exampleBoss({})] }), tools);
  expect(volumeOf(solid.mesh) / (Math.PI * 25 * (4 + 2) * shareAt(5))).toBeCloseTo(1, 6);
  expect(pairEdges(solid.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
});

test('bosses of one shape are one solid, others their own; rigid domes and cones are none', () => {
  const all = [
    exampleBoss({}),
    exampleBoss({ id: 'b', x: 0, y: 60 }),
    exampleBoss({ id: 'c', kind: 'dome', headHeight: 4 }),
  ];
  const loose = solidsOf(bosses, exampleMold({ process: 'rubber', bosses: all }), tools);
  expect(loose.map(({ id, subjects }) => [id, subjects])).toEqual([
    ['boss-cone-10', ['a', 'b']],
    ['boss-dome-10', ['c']],
  ]);
  expect(solidsOf(bosses, exampleMold({ process: 'rigid', bosses: all }), tools)).toEqual([]);
});

test('the tab is its wedge less roundings and slot, and stays inside the rim by its inset', () => {
  const one = { id: 'tab-1', angleRad: 2, width: 14, length: 10, height: 4, inset: 1.5 };
  const [solid] = solidsOf(tab, exampleMold({ process: 'rubber', tabs: [one] }), tools);
  expect(pairEdges(solid.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect(boundsOf(solid.mesh.positions).min[2]).toBeCloseTo(0, 6);
  const { positions } = moveMesh(solid.mesh, solid.toMold);
  const far = Array.from({ length: positions.length / 3 }, (_, v) =>
    Math.hypot(positions[v * 3], positions[v * 3 + 1]),
  );
  expect(Math.max(...far)).toBeLessThan(75 - 1.5 + 1e-4);
  expect(Math.max(...far)).toBeGreaterThan(75 - 1.5 - 0.5);
  expect(boundsOf(positions).max[2]).toBeLessThan(2);
  expect(boundsOf(positions).min[2]).toBeCloseTo(-boundsOf(positions).max[2], 5);
});

test('a tab is a core grown by its rounding: Steiner, less the slot with its rounded mouth', () => {
  const one = { id: 'tab-1', angleRad: 0, width: 14, length: 10, height: 4, inset: 1.5 };
  const [solid] = solidsOf(tab, exampleMold({ process: 'rubber', tabs: [one] }), tools);
  // Core: the trapezoid prism whose sides lie r inside those of the wedge, r = h / 8.
  const r = 0.5;
  const lean = 0.15;
  const flank = (x: number) => 0.5 + lean * x - r * Math.hypot(1, lean);
  const [near, far] = [flank(r), flank(10 - r)];
  const [long, wide] = [10 - 2 * r, 14 - 2 * r];
  const slope = Math.hypot(long, far - near);
  const area = (near + far) * long;
  const around = 2 * (near + far + slope);
  // Steiner: V + A r + M r^2 + 4/3 pi r^3, M half the sum of edge lengths times turning angles.
  const angles = 4 * (wide / 2) * (Math.PI / 2) + around * (Math.PI / 2);
  const grown = area * wide + (2 * area + around * wide) * r + angles * r * r + ((4 * Math.PI) / 3) * r ** 3;
  // The slot is 1 high, 2 deep, 8.4 wide; its mouth adds at most a quarter-round corner all along.
  const sharp = 1 * 2 * 8.4;
  const mouth = (1 - Math.PI / 4) * r * r * 2 * (8.4 + 1 + 4 * r);
  const cut = grown - volumeOf(solid.mesh);
  expect(cut).toBeGreaterThan(sharp - 0.01 * grown);
  expect(cut).toBeLessThan(sharp + mouth + 0.01 * grown);
});

test('no edge of a tab is sharper than its stated radius: a ball of it fits under every face', () => {
  const one = { id: 'tab-1', angleRad: 0, width: 18, length: 8, height: 3, inset: 1 };
  const [{ mesh }] = solidsOf(tab, exampleMold({ process: 'rubber', tabs: [one] }), tools);
  const r = tabRounding(one);
  expect(r).toBe(0.375);
  const bvh = bvhOf(mesh);
  const { positions: p, triangles } = mesh;
  let least = r;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => new Vector3().fromArray(p, triangles[i + k] * 3));
    const normal = new Vector3().crossVectors(b.clone().sub(a), c.clone().sub(a)).normalize();
    const middle = a.clone().add(b).add(c).divideScalar(3).addScaledVector(normal, -r);
    const hit = bvh.closestPointToPoint(middle, undefined, 0, r);
    if (hit) least = Math.min(least, hit.distance);
  }
  // A ball drawn with 32 sides: a face of it leans up to 6.6 deg off, which moves the middle by 0.11 r.
  expect(least).toBeGreaterThan(0.88 * r);
});

test('the notch strip is a V prism with a round root through both halves, inside the rim', () => {
  const one = { id: 'notch-1', angleRad: 1, width: 4, depth: 3 };
  const mold = exampleMold({ process: 'rubber', notches: [one] });
  const [solid] = solidsOf(notch, mold, tools);
  // The root, a half circle of 0.75 mm at most, is drawn by chords up to 0.01 mm inside it.
  const short = notchArea(one, 75) - volumeOf(solid.mesh) / (19.05 + 12.7);
  expect(short).toBeGreaterThan(0);
  expect(short).toBeLessThan(Math.PI * 0.75 * 0.01);
  expect(pairEdges(solid.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  const placed = moveMesh(solid.mesh, solid.toMold);
  const bounds = boundsOf(placed.positions);
  expect(bounds.min[2]).toBeCloseTo(-19.05, 4);
  expect(bounds.max[2]).toBeCloseTo(12.7, 4);
  for (let i = 0; i < placed.positions.length; i += 3) {
    expect(Math.hypot(placed.positions[i], placed.positions[i + 1])).toBeLessThan(75 + 1e-4);
  }
});

test('a strip with room has its name in the face at the wall, 0.6 mm deep, and nothing stands out', () => {
  const one = { id: 'a-2', angleRad: 1, width: 8, depth: 4 };
  const [solid] = solidsOf(notch, exampleMold({ process: 'rubber', notches: [one] }), tools);
  const plain = notchArea(one, 75) * (19.05 + 12.7);
  const label = tools.kernel.scope((scope) => {
    const cutter = labelCutter(scope, ['a-2', 'r1'], { x: 0, y: 0, width: 27.75, height: 7.6 });
    return cutter ? scope.slice(cutter, -0.3).area() * 0.6 : 0;
  });
  expect(label).toBeGreaterThan(5);
  expect(Math.abs(volumeOf(solid.mesh) + label - plain)).toBeLessThan(Math.PI * 0.01 * (19.05 + 12.7));
  const { min, max } = boundsOf(solid.mesh.positions);
  expect(min[2]).toBe(0);
  expect(max[2]).toBeCloseTo(Math.sqrt(75 ** 2 - 16) - 71, 4);
  expect(pairEdges(solid.mesh)).toMatchObject({ unpaired: 0, flat: 0 });
});

test("the process's own shrink makes bosses and notch strips larger, and their matrix takes it back", () => {
  const things = {
    process: 'rubber',
    bosses: [exampleBoss({})],
    notches: [{ id: 'notch-1', angleRad: 1, width: 4, depth: 3 }],
  } as const;
  const { fixture } = exampleMold();
  const plain = exampleMold(things);
  const shrunk = exampleMold({ ...things, fixture: { ...fixture, compensation: 0.01 } });
  for (const part of [bosses, notch]) {
    const [[before], [after]] = [plain, shrunk].map((mold) => solidsOf(part, mold, tools));
    expect(volumeOf(after.mesh) / volumeOf(before.mesh)).toBeCloseTo(0.99 ** -3, 5);
    expect(volumeOf(moveMesh(after.mesh, after.toMold)) / volumeOf(before.mesh)).toBeCloseTo(1, 4);
  }
});
