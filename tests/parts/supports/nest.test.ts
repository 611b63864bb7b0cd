import { describe, expect, test } from 'vitest';
import { exportSolid } from '../../../src/export/index.ts';
import {
  areaOf,
  boundsOf,
  moveMesh,
  type Outline,
  type Point2,
  pointsOf,
  type TriangleMesh,
} from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { findPartingSurface, type Mold, type Solid } from '../../../src/mold/index.ts';
import { splitToBed } from '../../../src/parts/index.ts';
import { buildUp } from '../../../src/parts/supports/build-up.ts';
import { nest } from '../../../src/parts/supports/nest.ts';
import { Cache } from '../../../src/pipeline/cache.ts';
import { memoizeIn } from '../../../src/pipeline/memoize-in.ts';
import { partingDefaults } from '../../../src/plan/index.ts';
import { ellipsoid, placed, translation } from '../../mold/shaped-masters.ts';
import { masterOf, place } from '../example-masters.ts';
import { exampleMold, volumeOf } from '../example-mold.ts';

const kernel = await loadKernel();
const radius = 32;
const clearance = 0.3;

/** Balls of 4 mm, their middles `high` over the plane, at places along +x turned by an angle, build-ups wished. */
function moldOf(...balls: readonly { high: number; at: number; angleRad?: number }[]): Mold {
  const meshes = balls.map(({ high }) => placed(ellipsoid(4, 4, 4), translation(0, 0, high)));
  const masters = meshes.map((mesh, i) => masterOf(`m${i}`, mesh));
  const placements = balls.map(({ at, angleRad = 0 }, i) =>
    place(masters[i], `p${i}`, { radius: at, angleRad }),
  );
  const { surface } = findPartingSurface({
    discRadius: radius,
    masters: placements.map(({ id, matrix }, i) => ({ id, mesh: moveMesh(meshes[i], matrix) })),
    pins: [{ outside: radius - 1 }],
    ...partingDefaults,
    limitUp: 10,
    limitDown: 10,
  });
  const flat = exampleMold();
  const { sprue: _, ...bare } = exampleMold({
    process: 'rubber',
    disc: { ...flat.disc, radius, label: 'HEDGE' },
    masters,
    placements,
    supports: placements.map(({ id }) => ({ placement: id, clearance: 0.2 })),
    fixture: { ...flat.fixture, clearance },
    parting: surface,
  });
  return bare;
}

const run = (mold: Mold, memoize = memoizeIn(new Cache())) => {
  const solidsOf = (part: typeof nest) => part.units(mold).map((unit) => unit.run({ kernel, memoize }));
  const buildUps = solidsOf(buildUp).flatMap(({ solids }) => solids);
  const [{ solids, drawings = [], findings }] = solidsOf(nest);
  return { buildUps, solids, drawings, findings };
};

/** Points of a build-up where it stands on the plane, mold frame. */
function footPoints({ mesh, toMold }: Solid): Point2[] {
  const { positions: p } = moveMesh(mesh, toMold);
  return Array.from({ length: p.length / 3 }, (_, i) => i * 3)
    .filter((i) => Math.abs(p[i + 2]) < 1e-6)
    .map((i): Point2 => [p[i], p[i + 1]]);
}

/** Distance of a point to a ring's sides, positive inside it (even-odd rule). */
function depthIn(ring: readonly Point2[], [x, y]: Point2): number {
  let inside = false;
  let least = Infinity;
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  }
  return inside ? least : -least;
}

const windowsOf = (outline: Outline): Point2[][] => outline.slice(1).map((path) => pointsOf(path));

describe('a nest', () => {
  const mold = moldOf(
    { high: 3, at: 15 },
    { high: 2.5, at: 15, angleRad: 2 },
    { high: -3, at: 14, angleRad: 4 },
  );
  const { buildUps, solids, drawings, findings } = run(mold);

  test('is one plate for each half that has build-ups, numbered; words that find no room are said', () => {
    expect(solids.map(({ id, role }) => [id, role])).toEqual([
      ['lower-nest', 'nest'],
      ['upper-nest', 'nest'],
    ]);
    expect(solids.map(({ subjects }) => subjects)).toEqual([['p0', 'p1'], ['p2']]);
    // Two numbers, and on 64 mm no room for words beside them; one number and a title.
    expect(solids.map(({ lettered = [] }) => lettered.length)).toEqual([2, 2]);
    expect(findings[0]).toMatchObject({ code: 'solid.label-left-off', subject: 'lower-nest' });
    expect(findings[0].values.words).toContain('lower half');
  });

  test('takes every build-up with at least the clearance all round, by distance from its solid', () => {
    expect(buildUps).toHaveLength(3);
    for (const one of buildUps) {
      const upper = one.subjects[0] === 'p2';
      const windows = windowsOf(drawings[upper ? 1 : 0].marks[0].outline);
      const points = footPoints(one).map(([x, y]): Point2 => [x, upper ? -y : y]);
      expect(points.length).toBeGreaterThan(20);
      const depths = windows.map((ring) => Math.min(...points.map((point) => depthIn(ring, point))));
      const deepest = Math.max(...depths);
      // The foot is cut 0.01 mm over the plane and its outline drawn to 0.01; walls are drafted by 1 in 8.
      expect(deepest).toBeGreaterThan(clearance - 0.015);
      expect(deepest).toBeLessThan(clearance + 0.06);
    }
  });

  test('is closed, and as large as disc less windows times its thickness, less the engraving', async () => {
    for (const [i, solid] of solids.entries()) {
      expect((await exportSolid(solid)).findings).toEqual([]);
      const plain = 3 * areaOf(drawings[i].marks[0].outline);
      expect(volumeOf(solid.mesh)).toBeLessThan(plain);
      expect(volumeOf(solid.mesh)).toBeGreaterThan(0.94 * plain);
      const { min, max } = boundsOf(moveMesh(solid.mesh, solid.toMold).positions);
      // Each lies on the parting face of its own half, on the other side of the plane.
      const z = [min[2], max[2]].map((value) => Number(value.toFixed(6)) + 0);
      expect(z).toEqual(i === 0 ? [0, 3] : [-3, 0]);
    }
  });

  test('comes in pieces that fit a small bed', () => {
    const bed = { x: 50, y: 50, z: 50, joint: 0.2, margin: 2 };
    const { solids: pieces } = splitToBed(
      [solids[0]],
      { ...mold, fixture: { ...mold.fixture, bed } },
      kernel,
    );
    expect(pieces.length).toBeGreaterThan(1);
    for (const { mesh } of pieces) {
      const { min, max } = boundsOf(mesh.positions);
      expect(Math.max(max[0] - min[0], max[1] - min[1])).toBeLessThanOrEqual(46);
    }
  });
});

test('windows that run into each other are said, and one is left for both', () => {
  const { drawings, findings } = run(moldOf({ high: 3, at: 5 }, { high: 3, at: 5, angleRad: Math.PI }));
  expect(findings.filter(({ code }) => code === 'nest.meets').map(({ severity }) => severity)).toEqual([
    'note',
  ]);
  expect(drawings[0].marks[0].outline).toHaveLength(2);
});

test('a window that runs out through the rim is a stop about the nest', () => {
  const { findings } = run(moldOf({ high: 3, at: 24.5 }));
  expect(findings.map(({ code, subject, severity }) => [code, subject, severity])).toEqual([
    ['nest.broken', 'lower-nest', 'stop'],
  ]);
});

test('feet are found once for build-ups and nest, and the same without the build-ups', () => {
  const mold = moldOf({ high: 3, at: 15 });
  const cache = new Cache();
  const { drawings } = run(mold, memoizeIn(cache));
  expect(cache.hits).toBe(1);
  const [alone] = nest.units(mold).map((unit) => unit.run({ kernel }));
  expect(alone.drawings).toEqual(drawings);
});

test('none where nothing is built up', () => {
  const mesh: TriangleMesh = ellipsoid(4, 4, 4);
  const flat = exampleMold({ process: 'rubber', masters: [masterOf('m', mesh)] });
  expect(nest.units(flat)).toEqual([]);
});
