import { beforeAll, expect, test } from 'vitest';
import { boundsOf, moveMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { shaftRadius, type Tools, wellFloorRadius } from '../../../src/mold/index.ts';
import { discBlank } from '../../../src/parts/halves/disc-blank.ts';
import {
  cap,
  exampleBoss,
  exampleMold,
  exampleSprue,
  frustum,
  shareAt,
  solidsOf,
  volumeOf,
} from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

const plain = () => {
  const mold = exampleMold({ sprue: { ...exampleSprue, fillet: 0 } });
  return { ...mold, disc: { ...mold.disc, label: '' } };
};

/** The index mark's groove takes under 35 mm3 (a V 2 mm wide, 0.8 - 1.9 mm deep, 9 mm long). */
const groove = 35;

test('both blanks weigh what frusta, cylinder and cap say, less the index mark', () => {
  const { disc } = plain();
  const [lower, upper] = solidsOf(discBlank, plain(), tools).map(({ mesh }) => volumeOf(mesh));
  const share = shareAt(disc.radius);
  const disk = (thickness: number): number =>
    (Math.PI * disc.radius ** 2 * (thickness - 1) + frustum(disc.radius, disc.radius - 1, 1)) * share;
  const hole = frustum(exampleSprue.holeRadius, shaftRadius(exampleSprue, disc.upper), disc.upper);
  const { wellRadius, wellDepth, domeRadius, domeHeight } = exampleSprue;
  const well = frustum(wellRadius, wellFloorRadius(exampleSprue), wellDepth) - cap(domeRadius, domeHeight);
  // The openings' polygons are circumscribed: larger than the circle by at most the chord error all round.
  const excessUpper = disk(disc.upper) - hole - upper;
  const excessLower = disk(disc.lower) - well - lower;
  expect(excessUpper).toBeGreaterThan(0);
  expect(excessUpper).toBeLessThan(groove + 0.002 * hole);
  expect(excessLower).toBeGreaterThan(0);
  expect(excessLower).toBeLessThan(groove + 0.002 * well);
});

test('the hole is a ring in the upper blank and a pocket in the lower one', () => {
  const [lower, upper] = solidsOf(discBlank, plain(), tools);
  expect(pairEdges(lower.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect(pairEdges(upper.mesh)).toEqual({ unpaired: 0, flat: 0, euler: 0 });
});

test('a label is engraved into both outer faces, and both stay closed', () => {
  const engraved = solidsOf(discBlank, exampleMold({ sprue: { ...exampleSprue, fillet: 0 } }), tools);
  const bare = solidsOf(discBlank, plain(), tools);
  for (const [i, { mesh }] of engraved.entries()) {
    expect(volumeOf(bare[i].mesh) - volumeOf(mesh)).toBeGreaterThan(20);
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
  }
});

test('blanks rest on their outer faces and go back to the mold frame', () => {
  const { disc } = exampleMold();
  const [lower, upper] = solidsOf(discBlank, exampleMold(), tools);
  expect(boundsOf(lower.mesh.positions).min[2]).toBe(0);
  expect(boundsOf(upper.mesh.positions).min[2]).toBe(0);
  const placedLower = boundsOf(moveMesh(lower.mesh, lower.toMold).positions);
  const placedUpper = boundsOf(moveMesh(upper.mesh, upper.toMold).positions);
  expect(placedLower.max[2]).toBeCloseTo(0, 5);
  expect(placedLower.min[2]).toBeCloseTo(-disc.lower, 5);
  expect(placedUpper.min[2]).toBeCloseTo(0, 5);
  expect(placedUpper.max[2]).toBeCloseTo(disc.upper, 5);
});

test('the index mark is at angle 0 of both halves', () => {
  for (const solid of solidsOf(discBlank, plain(), tools)) {
    const { positions } = moveMesh(solid.mesh, solid.toMold);
    const groove: number[] = [];
    for (let i = 0; i < positions.length; i += 3) {
      const [x, y, z] = positions.subarray(i, i + 3);
      const r = Math.hypot(x, y);
      const deep = Math.abs(z) > 5 && Math.abs(z) < (z < 0 ? 19.05 : 12.7) - 1e-3;
      if (r > 60 && r < 73.9 && deep) groove.push(Math.atan2(y, x));
    }
    expect(groove.length).toBeGreaterThan(0);
    for (const angle of groove) expect(Math.abs(angle)).toBeLessThan(0.05);
  }
});

test('the lower label is drawn for a reader below: it stands at +y in the mold frame', () => {
  const mold = exampleMold();
  const solids = solidsOf(discBlank, { ...mold, disc: { ...mold.disc, label: 'iiiii' } }, tools);
  const [lower] = solids;
  // Seen from below, x right means y reversed in the mold frame: the lower text stands at +y there.
  const { positions } = moveMesh(lower.mesh, lower.toMold);
  let count = 0;
  for (let i = 0; i < positions.length; i += 3) {
    if (Math.abs(positions[i + 2] + 19.05 - 0.6) < 1e-3 && Math.hypot(positions[i], positions[i + 1]) < 60) {
      count++;
      expect(positions[i + 1]).toBeGreaterThan(0);
    }
  }
  expect(count).toBeGreaterThan(50);
});

test('without opening and label one is the other turned over: one solid, to be made twice', () => {
  const { disc, sprue: _, ...rest } = exampleMold();
  const plainDisc = { ...disc, lower: 12.7, label: '' };
  const made = solidsOf(discBlank, { ...rest, disc: plainDisc }, tools);
  expect(made.map(({ id, count }) => ({ id, count }))).toEqual([{ id: 'disc-blank', count: 2 }]);
  // The upper half of a mold whose lower half is thicker is made by itself: it lies on its outer face like this one.
  const [, upper] = solidsOf(discBlank, { ...rest, disc: { ...plainDisc, lower: 20 } }, tools);
  expect(volumeOf(made[0].mesh)).toBeCloseTo(volumeOf(upper.mesh), 3);
  expect(boundsOf(made[0].mesh.positions)).toEqual(boundsOf(upper.mesh.positions));
});

test('blanks are made unasked where rubber is cut, and not where halves are made without them', () => {
  const rubber = exampleMold({ process: 'rubber', tabs: [] });
  const bosses = [exampleBoss()];
  expect(discBlank.unasked?.({ ...rubber, bosses })).toBe(true);
  expect(discBlank.unasked?.(rubber)).toBe(false);
  for (const process of ['rigid', 'poured'] as const)
    expect(discBlank.unasked?.(exampleMold({ process, bosses }))).toBe(false);
});
