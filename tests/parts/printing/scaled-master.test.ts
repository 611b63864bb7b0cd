import { beforeAll, expect, test } from 'vitest';
import { boundsOf, compose, moveMesh, scaling } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import type { Mold, Tools } from '../../../src/mold/index.ts';
import { scaledMaster } from '../../../src/parts/printing/scaled-master.ts';
import { ball, masterOf, place } from '../example-masters.ts';
import { exampleMold, solidsOf, volumeOf } from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const scale = 1.032;
const mold = (changes: Partial<Mold> = {}): Mold => {
  const master = masterOf('snail', ball(tools.kernel, 6));
  const placements = [1, 2, 3].map((angleRad, i) => {
    const plain = place(master, `snail-${i}`, { radius: 40, angleRad, z: 1 });
    return i === 2 ? plain : { ...plain, scale, matrix: compose(plain.matrix, scaling(scale)) };
  });
  return exampleMold({ process: 'rubber', masters: [master], placements, ...changes });
};

test('one solid for a master and size, its volume grown by the cube of the scale', () => {
  const solids = solidsOf(scaledMaster, mold(), tools);
  expect(solids.map(({ id }) => id)).toEqual(['scaled-snail']);
  const [{ mesh, subjects }] = solids;
  expect(volumeOf(mesh) / volumeOf(mold().masters[0].mesh)).toBeCloseTo(scale ** 3, 5);
  expect(subjects).toEqual(['snail', 'snail-0', 'snail-1']);
  expect(pairEdges(mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect(boundsOf(mesh.positions).min[2]).toBe(0);
});

test('its matrix brings it to where the placement puts the master', () => {
  const [{ mesh, toMold }] = solidsOf(scaledMaster, mold(), tools);
  const { masters, placements } = mold();
  const there = boundsOf(moveMesh(mesh, toMold).positions);
  const expected = boundsOf(moveMesh(masters[0].mesh, placements[0].matrix).positions);
  for (const axis of [0, 1, 2]) {
    expect(there.min[axis]).toBeCloseTo(expected.min[axis], 4);
    expect(there.max[axis]).toBeCloseTo(expected.max[axis], 4);
  }
});

test('none where nothing is enlarged, nor for rigid halves', () => {
  expect(solidsOf(scaledMaster, mold({ process: 'rigid' }), tools)).toEqual([]);
  expect(solidsOf(scaledMaster, mold({ placements: mold().placements.slice(2) }), tools)).toEqual([]);
});

test('made to another size than its file, it is to be printed anew, shrinks or none', () => {
  const [{ ...other }] = mold().masters;
  const sized = { masters: [{ ...other, fileScale: 2 }], placements: mold().placements.slice(2) };
  const solids = solidsOf(scaledMaster, mold(sized), tools);
  // The mesh has that size already.
  expect(solids.map(({ title }) => title)).toEqual(['snail enlarged by 100.00 %']);
  expect(volumeOf(solids[0].mesh) / volumeOf(other.mesh)).toBeCloseTo(1, 5);
});
