import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { beforeAll, describe, expect, test } from 'vitest';
import { exportSolid } from '../../../src/export/index.ts';
import { boundsOf, moveMesh, rotation, type TriangleMesh } from '../../../src/geometry/index.ts';
import { type Kernel, loadKernel } from '../../../src/kernel/index.ts';
import { flatPartingSurface, type Mold, type Solid } from '../../../src/mold/index.ts';
import { discBlank } from '../../../src/parts/halves/disc-blank.ts';
import { halves } from '../../../src/parts/halves/halves.ts';
import { splitToBed } from '../../../src/parts/index.ts';
import { chooseSeams, type Whole } from '../../../src/parts/printing/seams.ts';
import { registrationJig } from '../../../src/parts/registration/registration-jig.ts';
import { exampleBoss, exampleMold, solidsOf, volumeOf } from '../example-mold.ts';

const nine = 114.3;
const joint = 0.25;

function moldOn(x: number, y = x, z = 250, radius = nine): Mold {
  const mold = exampleMold({
    disc: { radius, lower: 19.05, upper: 12.7, rimChamfer: 1, label: '' },
    parting: flatPartingSurface(radius),
    bosses: [
      exampleBoss({ id: 'boss-1', kind: 'dome', x: 90, rootDepth: 5, headHeight: 5, clearance: 0.25 }),
    ],
  });
  return { ...mold, fixture: { ...mold.fixture, bed: { x, y, z, joint, margin: 3 } } };
}

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

const wholeOf = (mold: Mold): Solid[] => solidsOf(halves, mold, { kernel });

/** Distances by three-mesh-bvh, which has no part in the cut. */
function treeOf({ positions, triangles }: TriangleMesh): MeshBVH {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return new MeshBVH(geometry);
}

/** Pieces as they stand put together, in the mold frame. */
const together = (pieces: readonly Solid[]) => pieces.map(({ mesh, toMold }) => moveMesh(mesh, toMold));

describe('a 9 in disc on a 220 mm bed', () => {
  const mold = moldOn(220);
  let whole: Solid[];
  let pieces: Solid[];
  beforeAll(() => {
    whole = wholeOf(mold);
    pieces = [...splitToBed(whole, mold, kernel).solids];
  });

  test('comes in pieces that fit with the margin, closed, standing on the bed, said in a note', async () => {
    expect(pieces.map(({ id }) => id)).toEqual([
      'lower-half-piece-1',
      'lower-half-piece-2',
      'upper-half-piece-1',
      'upper-half-piece-2',
    ]);
    for (const piece of pieces) {
      const { min, max } = boundsOf(piece.mesh.positions);
      expect(max[0] - min[0]).toBeLessThanOrEqual(214);
      expect(max[1] - min[1]).toBeLessThanOrEqual(214);
      expect(min[2]).toBe(0);
      expect((await exportSolid(piece)).findings).toEqual([]);
    }
    const { findings } = splitToBed(whole, mold, kernel);
    expect(findings.map(({ code }) => code)).toEqual(['bed.split', 'bed.split']);
  });

  test('together they are the whole less the gaps of the joints, by volume and by place', () => {
    kernel.scope((scope) => {
      const lower = scope.fromExactMesh(moveMesh(whole[0].mesh, whole[0].toMold), 'whole');
      const parts = together(pieces.slice(0, 2)).map((mesh) => scope.fromExactMesh(mesh, 'piece'));
      const overlap = scope.intersect(parts, 'overlap').volume();
      expect(overlap).toBeLessThan(1e-3);
      const left = scope.subtract(lower, parts, 'gaps');
      // Two sockets round dovetails of 9.144 mm neck and 6.4008 mm depth, flared by a third: side, head, side.
      const depth = 0.7 * 0.08 * nine;
      const side = depth * Math.hypot(1, 1 / 3);
      const head = 0.08 * nine + (2 * depth) / 3;
      const gap = 2 * joint * (2 * side + head) * 19.05;
      expect(left.volume()).toBeGreaterThan(0.97 * gap);
      expect(left.volume()).toBeLessThan(1.1 * gap);
      // What is missing is nowhere thicker than the gap: no corner of it is farther from either piece than
      // the corner of a gap of even width is.
      // What is left between pieces by rounding to float32 comes in specks under a mm3.
      const slits = scope.pieces(left, 'gaps').filter((slit) => slit.volume() > 1);
      expect(slits).toHaveLength(2);
      const gaps = slits.flatMap((slit) => [...scope.toMesh(slit).positions]);
      const trees = together(pieces.slice(0, 2)).map(treeOf);
      let far = 0;
      for (let i = 0; i < gaps.length; i += 3) {
        // The outer face is engraved 0.6 mm deep, and the joint runs through the letters.
        if (gaps[i + 2] < -18) continue;
        const point = new Vector3(gaps[i], gaps[i + 1], gaps[i + 2]);
        for (const tree of trees) far = Math.max(far, tree.closestPointToPoint(point)?.distance ?? Infinity);
      }
      // The socket's corner beside the tongue's head, where side and end meet at 90 degrees less the flare.
      const corner = Math.PI / 2 - Math.atan(1 / 3);
      expect(far).toBeCloseTo(joint / Math.sin(corner / 2), 3);
      const before = lower.volume();
      expect(parts.reduce((sum, part) => sum + part.volume(), 0) + left.volume()).toBeCloseTo(before, 0);
      // And nothing is added: no piece leaves the whole.
      for (const part of parts) {
        const outside = part.subtract(lower);
        expect(outside.volume()).toBeLessThan(0.05);
        outside.delete();
      }
    });
  });

  test('they go together in one way: turned to the other seam a tongue runs into its neighbor', () => {
    kernel.scope((scope) => {
      const [first, second] = together(pieces.slice(0, 2)).map((mesh) => scope.fromExactMesh(mesh, 'piece'));
      const swapped = scope.move(first, rotation('z', Math.PI));
      const both = scope.intersect([swapped, scope.move(first, rotation('z', 0))], 'swapped');
      const meeting = scope.intersect([swapped, second], 'the same place');
      expect(both.volume() + meeting.volume()).toBeGreaterThan(100);
      // The second piece turned half a turn against the first one in its place.
      const turned = scope.intersect([first, scope.move(second, rotation('z', Math.PI))], 'turned');
      expect(turned.volume()).toBeGreaterThan(100);
    });
  });
});

test('a smaller bed gives more sectors', () => {
  const mold = moldOn(150);
  const blanks = solidsOf(discBlank, mold, { kernel });
  const { solids } = splitToBed(blanks.slice(0, 1), mold, kernel);
  expect(solids.length).toBeGreaterThan(2);
  const volume = solids.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0);
  expect(volume / volumeOf(blanks[0].mesh)).toBeGreaterThan(0.995);
  expect(volume).toBeLessThan(volumeOf(blanks[0].mesh));
});

test('a seam keeps off the boss, and says so where it cannot', () => {
  const mold = moldOn(220);
  const ringed = {
    ...mold,
    bosses: [...Array(40).keys()].map((i) => {
      const angle = (2 * Math.PI * i) / 40;
      return { ...mold.bosses[0], id: `boss-${i}`, x: 80 * Math.cos(angle), y: 80 * Math.sin(angle) };
    }),
  };
  const blanks = solidsOf(discBlank, mold, { kernel }).slice(0, 1);
  expect(splitToBed(blanks, mold, kernel).findings.map(({ code }) => code)).toEqual(['bed.split']);
  const { findings } = splitToBed(blanks, ringed, kernel);
  expect(findings.map(({ code }) => code)).toEqual(['bed.split', 'bed.cuts-outline']);
});

test('a bed too small for any joint, or too low, is a finding and the solid stays whole', () => {
  const blanks = solidsOf(discBlank, moldOn(220), { kernel }).slice(0, 1);
  const tiny = splitToBed(blanks, moldOn(40), kernel);
  expect(tiny.solids).toEqual(blanks);
  expect(tiny.findings.map(({ code }) => code)).toEqual(['bed.too-small']);
  expect(splitToBed(blanks, moldOn(300, 300, 10), kernel).findings).toMatchObject([
    { code: 'bed.too-high', values: { measured: expect.closeTo(19.05, 4), limit: 10 } },
  ]);
});

test('what fits, or has no bed to fit, is left as it is', () => {
  const mold = moldOn(300);
  const whole = solidsOf(discBlank, mold, { kernel });
  expect(splitToBed(whole, mold, kernel).solids).toEqual(whole);
  expect(splitToBed(whole, exampleMold(), kernel)).toEqual({ solids: whole, findings: [] });
});

test('a narrow ring has joints too, alike in place but not in width', async () => {
  const mold = moldOn(190);
  const [ring] = solidsOf(registrationJig, { ...mold, process: 'rubber' }, { kernel });
  const { solids, findings } = splitToBed([ring], mold, kernel);
  expect(findings.map(({ code }) => code)).toContain('bed.split');
  expect(solids.length).toBeGreaterThanOrEqual(3);
  for (const piece of solids) expect((await exportSolid(piece)).findings).toEqual([]);
  // Each piece less the sector between its seams leaves its tongue: no two of one volume at one distance.
  const missing = volumeOf(ring.mesh) - solids.reduce((sum, { mesh }) => sum + volumeOf(mesh), 0);
  expect(missing).toBeGreaterThan(0);
  expect(missing / volumeOf(ring.mesh)).toBeLessThan(0.005);
  const seams = chooseSeams(ringOf(mold.disc.radius, 25), { x: 184, y: 184 });
  if (!seams) throw new Error('no seams');
  for (const [i, a] of seams.entries()) {
    for (const b of seams.slice(i + 1)) {
      const apart = Math.abs(a.joint.radius - b.joint.radius) / Math.max(a.joint.neck, b.joint.neck);
      expect(apart >= 0.75 || Math.abs(a.joint.neck - b.joint.neck) >= 2.5).toBe(true);
    }
  }
});

/** A ring of a width, as the seams see it: material where a tongue's corners all lie on it. */
const ringOf = (radius: number, width: number): Whole => ({
  radius,
  obstacles: [],
  solidLevels: (outline) =>
    outline.every(([x, y]) => Math.hypot(x, y) < radius && Math.hypot(x, y) > radius - width) ? 3 : 0,
});
