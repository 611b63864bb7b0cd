import { Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { areaOf, boundsOf, moveMesh, type TriangleMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { bvhOf } from '../../../src/mesh/measure/bvh.ts';
import { distanceTree, meshDistance } from '../../../src/mesh/measure/distance.ts';
import { findPartingSurface, heightAt, type Mold, type Solid } from '../../../src/mold/index.ts';
import { labelDepth } from '../../../src/parts/making/label.ts';
import { buildUp } from '../../../src/parts/supports/build-up.ts';
import { partingDefaults } from '../../../src/plan/index.ts';
import { badge, bunny, ellipsoid, placed, rod, rotation, translation } from '../../mold/shaped-masters.ts';
import { masterOf, place } from '../example-masters.ts';
import { exampleMold, solidsOf, volumeOf } from '../example-mold.ts';
import { pairEdges } from '../pairing.ts';

const kernel = await loadKernel();
const radius = 32;

interface Laid {
  readonly mesh: TriangleMesh;
  readonly at: number;
  readonly angleRad?: number;
}

/** A rubber mold of the meshes at their distances from the axis, each with a build-up wished. */
function moldOf(laid: readonly Laid[], clearance = 0.2): Mold {
  const masters = laid.map(({ mesh }, i) => masterOf(`m${i}`, mesh));
  const placements = laid.map(({ at, angleRad = 0 }, i) =>
    place(masters[i], `p${i}`, { radius: at, angleRad }),
  );
  const { surface } = findPartingSurface({
    discRadius: radius,
    masters: placements.map(({ id, matrix }, i) => ({ id, mesh: moveMesh(masters[i].mesh, matrix) })),
    pins: [{ outside: radius - 1 }],
    ...partingDefaults,
    limitUp: 10,
    limitDown: 10,
  });
  const flat = exampleMold();
  return exampleMold({
    process: 'rubber',
    disc: { ...flat.disc, radius },
    masters,
    placements,
    supports: placements.map(({ id }) => ({ placement: id, clearance })),
    parting: surface,
  });
}

/** True where no solid, in its place, is nearer than `limit` to any master. */
function keepsOff(solids: readonly Solid[], mold: Mold, limit: number): boolean {
  const masters = mold.placements.map(({ matrix }, i) => distanceTree(mold.masters[i].mesh, matrix));
  return solids
    .map(({ mesh, toMold }) => distanceTree(mesh, toMold))
    .every((tree) => masters.every((master) => 'beyond' in meshDistance(tree, master, limit)));
}

/** Distance of the nearest vertex of a solid to the one master of a mold. */
function nearestVertex({ mesh, toMold }: Solid, mold: Mold): number {
  const bvh = bvhOf(moveMesh(mold.masters[0].mesh, mold.placements[0].matrix));
  const { positions: p } = moveMesh(mesh, toMold);
  let least = 1;
  for (let v = 0; v < p.length; v += 3) {
    const hit = bvh.closestPointToPoint(new Vector3(p[v], p[v + 1], p[v + 2]), undefined, 0, least);
    if (hit) least = Math.min(least, hit.distance);
  }
  return least;
}

const stalk = (): TriangleMesh =>
  placed(
    rod((t) => [16 * t - 8, 5 * t * t], 1),
    rotation('z', 0.3),
  );
const raisedBall = (): TriangleMesh => placed(ellipsoid(4, 4, 4), translation(0, 0, 3));
const sunkBall = (): TriangleMesh => placed(ellipsoid(4, 4, 4), translation(0, 0, -3));

describe('build-ups', () => {
  test.each([
    ['a stalk that rises off the plane', () => [{ mesh: stalk(), at: 0 }], 1, 2],
    ['a raised ball', () => [{ mesh: raisedBall(), at: 10 }], 1, 0],
    ['a sunk ball, upside down', () => [{ mesh: sunkBall(), at: 10 }], -1, 0],
  ] as const)(
    '%s: closed, prints flat, fills up to the parting surface, keeps the clearance',
    (_, laid, side, euler) => {
      const mold = moldOf(laid());
      const solids = solidsOf(buildUp, mold, { kernel });
      expect(solids.map(({ id }) => id)).toEqual(['build-up-01']);
      const [{ mesh, toMold, role, subjects }] = solids;
      expect(role).toBe('build-up');
      expect(subjects).toEqual(['p0']);
      expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0, euler });
      expect(volumeOf(mesh)).toBeGreaterThan(10);
      expect(boundsOf(mesh.positions).min[2]).toBe(0);
      const there = moveMesh(mesh, toMold);
      const { min, max } = boundsOf(there.positions);
      if (side === 1) expect(min[2]).toBe(0);
      else expect(max[2]).toBe(0);
      // Never past the parting surface (network tolerances 0.01 and 0.005, bilinear between nodes).
      for (let v = 0; v < there.positions.length; v += 3) {
        const [x, y, z] = there.positions.subarray(v, v + 3);
        if (z !== 0) expect(side * z).toBeLessThan(side * heightAt(mold.parting, x, y) + 0.02);
      }
      expect(keepsOff(solids, mold, 0.2 - 0.01)).toBe(true);
      expect(nearestVertex(solids[0], mold)).toBeLessThan(0.2 + 0.06);
    },
  );

  test('round a raised ball: as much as the body of revolution between plane, slope and ball', () => {
    // Ball R = 4 with its middle h above the plane, kept c away, slope 45 degrees, where it is 0.3 thick: profile
    // min(h - max(0, r - 4), h - sqrt((R + c)^2 - r^2)); V = integral of 2 pi r times that, by Simpson's rule.
    const revolved = (h: number, c: number): number => {
      const profile = (r: number): number =>
        Math.min(h - Math.max(0, r - 4), r < 4 + c ? h - Math.sqrt((4 + c) ** 2 - r * r) : h);
      const steps = 20000;
      const to = 8;
      let sum = 0;
      for (let k = 0; k <= steps; k++) {
        const r = (to * k) / steps;
        const high = profile(r) >= 0.3 ? profile(r) : 0;
        sum += (k === 0 || k === steps ? 1 : k % 2 ? 4 : 2) * 2 * Math.PI * r * high;
      }
      return (sum * to) / steps / 3;
    };
    const [{ mesh }] = solidsOf(buildUp, moldOf([{ mesh: raisedBall(), at: 10 }]), { kernel });
    // At most 0.06 farther from the ball than asked; the surface passes up to 0.1 below the middle, where the ball is
    // still as good as widest.
    expect(volumeOf(mesh)).toBeLessThan(revolved(3, 0.2));
    expect(volumeOf(mesh)).toBeGreaterThan(revolved(2.9, 0.26));
  });

  test('one too small to handle is left out and said, with its volume', () => {
    const mold = moldOf([{ mesh: placed(ellipsoid(1.2, 1.2, 1.2), translation(0, 0, 0.9)), at: 10 }]);
    const [{ solids, findings }] = buildUp.units(mold).map((unit) => unit.run({ kernel }));
    expect(solids).toEqual([]);
    expect(findings).toMatchObject([
      {
        code: 'mold.small-build-ups',
        severity: 'note',
        subject: 'p0',
        values: { limit: 10 },
      },
    ]);
    expect(findings[0].values.measured).toBeGreaterThan(0.05);
    expect(findings[0].values.measured).toBeLessThan(10);
  });

  test('a number is engraved into the flat face, mirrored for a reader below, and costs only its strokes', () => {
    const mold = moldOf([{ mesh: placed(ellipsoid(14, 8, 5), translation(0, 0, 4)), at: 0 }]);
    const [{ mesh }] = solidsOf(buildUp, mold, { kernel });
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    const levels = new Set<number>();
    for (let v = 2; v < mesh.positions.length; v += 3) levels.add(Math.round(mesh.positions[v] * 1e4) / 1e4);
    expect(levels.has(labelDepth)).toBe(true);
  });

  test('its cutting outline holds the footprint, and contours that shrink with height', () => {
    const mold = moldOf([{ mesh: raisedBall(), at: 10 }]);
    const [{ solids, drawings }] = buildUp.units(mold).map((unit) => unit.run({ kernel }));
    const [drawing] = drawings ?? [];
    const areas = (layer: string) =>
      drawing.marks.filter((marks) => marks.layer === layer).map(({ outline }) => areaOf(outline));
    const [foot] = areas('cut');
    const [contours] = areas('score');
    expect(drawing.title).toContain('contours every 1 mm');
    // A raised ball R = 4, h = 3: the foot ends where the slope of 45 degrees is 0.3 high, r = 4 + h - 0.3 (side
    // walls of 83 degrees reach 0.04 farther); the hole in it is where the ball comes within 0.2 + 0.3 of the plane.
    expect(foot).toBeLessThan(Math.PI * 6.76 ** 2);
    expect(foot).toBeGreaterThan(Math.PI * (6.5 ** 2 - (4.2 ** 2 - 2.6 ** 2)));
    expect(contours).toBeLessThan(2 * foot);
    expect(contours).toBeGreaterThan(0);
    // As thick as the solid is high.
    expect(drawing.thickness).toBeCloseTo(boundsOf(solids[0].mesh.positions).max[2], 4);
    expect(drawing.marks.flatMap(({ texts }) => texts.map(({ words }) => words))).toContain('1');
  });

  test('neighbors: each its own, apart from each other and from both masters', () => {
    const mold = moldOf([
      { mesh: raisedBall(), at: 6 },
      { mesh: raisedBall(), at: 6, angleRad: Math.PI },
    ]);
    const solids = solidsOf(buildUp, mold, { kernel });
    expect(solids.map(({ id }) => id)).toEqual(['build-up-01', 'build-up-02']);
    for (const { mesh } of solids) expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    expect(keepsOff(solids, mold, 0.19)).toBe(true);
    const [a, b] = solids.map(({ mesh, toMold }) => distanceTree(mesh, toMold));
    expect(meshDistance(a, b, 0.19)).toEqual({ beyond: 0.19 });
    // Their walls stand along x = 0.
    for (const { bounds } of [a, b]) {
      expect(Math.min(Math.abs(bounds.min[0]), Math.abs(bounds.max[0]))).toBeLessThan(0.13);
    }
  });

  test('a sculpted master: every piece closed and clear', () => {
    const mold = moldOf([{ mesh: placed(bunny(12), rotation('x', Math.PI / 2)), at: 0 }], 0.3);
    const solids = solidsOf(buildUp, mold, { kernel });
    expect(solids.length).toBeGreaterThan(0);
    for (const { mesh } of solids) {
      expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
      expect(volumeOf(mesh)).toBeGreaterThan(2);
    }
    expect(keepsOff(solids, mold, 0.29)).toBe(true);
  });

  test('nothing for a flat-backed badge, nor in rigid halves', () => {
    expect(solidsOf(buildUp, moldOf([{ mesh: badge(6, 1.5, 1), at: 10 }]), { kernel })).toEqual([]);
    expect(
      solidsOf(buildUp, { ...moldOf([{ mesh: raisedBall(), at: 10 }]), process: 'rigid' }, { kernel }),
    ).toEqual([]);
  });
});
