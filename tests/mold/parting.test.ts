import { describe, expect, test } from 'vitest';
import type { TriangleMesh } from '../../src/geometry/index.ts';
import { type Body, loadKernel, type Scope } from '../../src/kernel/index.ts';
import {
  findPartingSurface,
  heightAt,
  joinLooseComponents,
  type Pin,
  partingPrism,
  undercut,
} from '../../src/mold/index.ts';
import { partingDefaults } from '../../src/plan/index.ts';
import { pairEdges } from '../parts/pairing.ts';
import { measureFit } from './measure-fit.ts';
import { badge, bunny, ellipsoid, placed, rod, rotation, torus, translation } from './shaped-masters.ts';

const kernel = await loadKernel();
const discRadius = 22;
const slope = Math.tan(partingDefaults.slopeRad);

function surfaceFor(meshes: readonly TriangleMesh[], pins: readonly Pin[] = [], limit = 9) {
  return findPartingSurface({
    discRadius,
    masters: meshes.map((mesh, i) => ({ id: `m${i}`, mesh })),
    pins: [{ outside: discRadius - 1 }, ...pins],
    ...partingDefaults,
    cell: 0.1,
    limitUp: limit,
    limitDown: limit,
  });
}

const blank = (scope: Scope): Body => {
  const circle = Array.from({ length: 120 }, (_, i): [number, number] => [
    discRadius * Math.cos((i * Math.PI) / 60),
    discRadius * Math.sin((i * Math.PI) / 60),
  ]);
  return scope.extrude([circle], -12, 12, 'disc');
};

const bytes = ({ buffer }: Float32Array | Uint32Array): Buffer => Buffer.from(buffer);

const ball = (radius: number, x: number, y: number, z: number): TriangleMesh =>
  placed(ellipsoid(radius, radius, radius), translation(x, y, z));

/** Masters that leave room enough: every rule must hold without exception. */
const roomy: readonly (readonly [string, () => readonly TriangleMesh[]])[] = [
  ['a tilted ellipsoid', () => [placed(ellipsoid(8, 5, 3), translation(6, 0, 0), rotation('y', 0.4))]],
  ['a ball over the plane', () => [ball(5, 0, 6, 2)]],
  ['a ring lying half above', () => [placed(torus(5, 2), translation(0, 0, 0.8))]],
  ['a tilted ring', () => [placed(torus(6, 2), rotation('y', 0.3))]],
  [
    'a stalk that bends off the plane',
    () => [
      placed(
        rod((t) => [16 * t - 8, 5 * t * t], 1),
        rotation('z', 0.3),
      ),
    ],
  ],
  ['two neighbors whose slopes merge', () => [ball(4, -7, 0, 2), ball(4, 5, 0, 2)]],
  ['a raised and a sunk neighbor', () => [ball(3.5, -7, 0, 1.5), ball(3.5, 7, 0, -1.5)]],
];

describe('the parting surface', () => {
  test.each(roomy)(
    '%s: two closed halves that fit, no undercut beyond what cannot be, slope kept',
    (_, make) => {
      const meshes = make();
      const { surface, findings } = surfaceFor(meshes);
      expect(findings).toEqual([]);
      expect(surface.error).toBeLessThanOrEqual(0.01);
      for (const mesh of meshes) {
        const { below, above, irreducible } = undercut(mesh, surface, 0.04);
        expect(below + above - irreducible).toBeLessThan(0.1);
      }
      expect(steepestOutside(surface, meshes)).toBeLessThan(1.15 * slope);
      kernel.scope((scope) => {
        const disc = blank(scope);
        const masters = meshes.map((mesh, i) => ({ id: `m${i}`, body: scope.fromMesh(mesh, 'master') }));
        const rest = scope.subtract(
          disc,
          masters.map(({ body }) => body),
          'rest',
        );
        const prism = scope.fromMesh(partingPrism(surface, -30), 'prism');
        const halves = joinLooseComponents(scope, ...scope.split(rest, prism, 'halves'));
        expect(halves.stuck).toEqual([]);
        for (const half of [halves.lower, halves.upper]) {
          expect(pairEdges(scope.toMesh(half)).unpaired).toBe(0);
          expect(scope.pieces(half, 'half')).toHaveLength(1);
        }
        for (const { overlap, gap } of measureFit(scope, { disc, ...halves, masters, others: [] })) {
          expect(overlap).toBeLessThan(0.001);
          expect(gap).toBeLessThan(0.01);
        }
      });
    },
  );

  test('runs along the silhouette of a tilted ellipsoid, which is known in closed form', () => {
    // x = (8, 5, 3) ellipsoid turned by a about y, cosine c, sine s. Its surface is u A u = 1; light from above grazes
    // it where (A u)_z = 0: on the plane z = -(A_xz / A_zz) x, over the ellipse x = k cos t, y = 5 sin t with
    // k^2 = 64 c^2 + 9 s^2 (the support of the turned ellipse along x).
    const angle = 0.4;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const mesh = placed(ellipsoid(8, 5, 3, 240), rotation('y', angle));
    const { surface } = surfaceFor([mesh]);
    const axz = (s * c) / 9 - (s * c) / 64;
    // Turning about y takes (x, z) to (c x + s z, c z - s x), so A_xz has the sign above turned over.
    const azz = (s * s) / 64 + (c * c) / 9;
    const k = Math.sqrt(64 * c * c + 9 * s * s);
    for (let step = 0; step < 72; step++) {
      const t = (step * Math.PI) / 36;
      const [x, y] = [k * Math.cos(t), 5 * Math.sin(t)];
      const off = Math.abs(heightAt(surface, x, y) + (axz / azz) * x);
      // A cell inside the outline the master is up to 1.1 mm thick, of which 8 % each way are free; and it may
      // climb or fall at 45 degrees over that cell.
      expect(off).toBeLessThan(0.09 + 0.1);
    }
  });

  test('stays exactly on the plane under a flat-backed badge, alone and beside a raised master', () => {
    const alone = surfaceFor([badge(8, 1.5, 1)]);
    expect(alone.surface.flat).toBe(true);
    expect(alone.findings).toEqual([]);
    const flatBack = placed(badge(5, 1.5, 1), translation(-8, 0, 0));
    const { surface } = surfaceFor([flatBack, ball(3, 10, 0, 2)]);
    expect(surface.flat).toBe(false);
    for (let t = 0; t < 24; t++) {
      for (const r of [0, 3, 4.9, 5, 5.1, 6]) {
        const [x, y] = [-8 + r * Math.cos((t * Math.PI) / 12), r * Math.sin((t * Math.PI) / 12)];
        expect(heightAt(surface, x, y)).toBe(0);
      }
    }
  });

  test('is flat for a ball sunk to its equator', () => {
    expect(surfaceFor([placed(ellipsoid(5, 5, 5), translation(4, 0, 0))]).surface.flat).toBe(true);
  });

  test('stays on the plane at rim and pins', () => {
    const { surface } = surfaceFor([ball(4, 8, 0, 2)], [{ x: -1, y: 0, radius: 4 }]);
    for (let t = 0; t < 24; t++) {
      const [c, s] = [Math.cos((t * Math.PI) / 12), Math.sin((t * Math.PI) / 12)];
      expect(heightAt(surface, -1 + 3.8 * c, 3.8 * s)).toBe(0);
      expect(heightAt(surface, 21.2 * c, 21.2 * s)).toBe(0);
    }
  });

  test('falls where the same master turned upside down rises', () => {
    const mesh = ball(4, 3, 1, 2);
    const up = surfaceFor([mesh]).surface;
    const down = surfaceFor([placed(ellipsoid(4, 4, 4), translation(3, 1, -2))]).surface;
    const sum = up.heights.reduce((most, height, k) => Math.max(most, Math.abs(height + down.heights[k])), 0);
    expect(sum).toBeLessThan(0.03);
  });

  test('gives the same bytes twice', () => {
    const make = () => surfaceFor([placed(torus(5, 2), rotation('y', 0.3))]).surface;
    const [one, two] = [make(), make()];
    expect(Buffer.compare(bytes(one.heights), bytes(two.heights))).toBe(0);
    expect(Buffer.compare(bytes(one.sheet.positions), bytes(two.sheet.positions))).toBe(0);
    expect(Buffer.compare(bytes(one.sheet.triangles), bytes(two.sheet.triangles))).toBe(0);
  });

  test('a sculpted master: better than the plane, closed halves, its own undercut told', () => {
    const mesh = bunny(14);
    const { surface, findings } = surfaceFor([mesh]);
    expect(findings.map(({ code }) => code)).toContain('mold.undercut-locked');
    const { below, above, irreducible } = undercut(mesh, surface);
    const flat = undercut(mesh, { ...surface, flat: true });
    expect(below + above).toBeLessThan(0.6 * (flat.below + flat.above));
    expect(below + above).toBeGreaterThanOrEqual(irreducible);
    kernel.scope((scope) => {
      const disc = blank(scope);
      const masters = [{ id: 'm0', body: scope.fromMesh(mesh, 'bunny') }];
      const rest = scope.subtract(disc, [masters[0].body], 'rest');
      const prism = scope.fromMesh(partingPrism(surface, -30), 'prism');
      const halves = joinLooseComponents(scope, ...scope.split(rest, prism, 'halves'));
      const [fit] = measureFit(scope, { disc, ...halves, masters, others: [] });
      expect(fit.overlap).toBeLessThan(0.001);
      expect(fit.gap).toBeLessThan(0.01);
    });
  });

  test('throws where it is asked for what no disc has', () => {
    const input = { discRadius, masters: [], pins: [], ...partingDefaults, limitUp: 1, limitDown: 1 };
    expect(() => findPartingSurface({ ...input, cell: 0 })).toThrow(RangeError);
    expect(() => findPartingSurface({ ...input, discRadius: -1 })).toThrow(RangeError);
    expect(() => findPartingSurface({ ...input, slopeRad: 2 })).toThrow(RangeError);
    expect(() => findPartingSurface({ ...input, discRadius: 1000, cell: 0.02 })).toThrow(/larger cells/);
    expect(findPartingSurface(input).surface.flat).toBe(true);
  });
});

describe('what cannot be done well', () => {
  test('two masters that leave no room between their heights', () => {
    // Balls R = 4 at z = 4 and -4, 1 mm apart: 8 mm to climb, at 45 degrees 7 mm of room are missing.
    const { findings } = surfaceFor([ball(4, -4.5, 0, 4), ball(4, 4.5, 0, -4)]);
    const conflicts = findings.filter(({ code }) => code === 'mold.parting-conflict');
    expect(conflicts.map(({ subject }) => subject)).toEqual(['m0', 'm1']);
    expect(conflicts[0].severity).toBe('warn');
    const room = Number(conflicts[0].values.room);
    expect(Math.abs(room - 7)).toBeLessThan(0.7);
    const [x, y] = conflicts[0].place ?? [99, 99];
    expect(Math.hypot(x, y)).toBeLessThan(3);
  });

  test('neighbors that only a steeper slope serves', () => {
    // 4 mm to climb over 2.6 mm: 57 degrees.
    const { findings } = surfaceFor([ball(3, -4.3, 0, 2), ball(3, 4.3, 0, -2)]);
    expect(findings.map(({ code }) => code)).toEqual(['mold.parting-steep']);
    expect(findings[0].values.measured).toBeLessThan(62);
    expect(findings[0].values.measured).toBeGreaterThan(50);
  });

  test('a master beyond the limits', () => {
    const { findings } = surfaceFor([ball(3, 0, 0, 6)], [], 2);
    const [found] = findings.filter(({ code }) => code === 'mold.parting-limit');
    // Widest contour at 6, limit 2.
    expect(found.values.measured).toBeGreaterThan(5);
    expect(found.values.measured).toBeLessThan(6.05);
  });

  test('a standing ring, which no straight pull frees', () => {
    const { findings } = surfaceFor([placed(torus(4, 1), rotation('x', Math.PI / 2))]);
    const [found] = findings;
    expect(found.code).toBe('mold.undercut-locked');
    // Between lower and upper arc, see the undercut test: 2 pi R^2 r - pi^2 R r^2 + 4 pi r^3 / 3.
    const inside = 2 * Math.PI * 16 - Math.PI ** 2 * 4 + (4 * Math.PI) / 3;
    expect(Math.abs(Number(found.values.measured) / inside - 1)).toBeLessThan(0.02);
    expect(Math.hypot(found.place?.[0] ?? 9, found.place?.[1] ?? 9)).toBeLessThan(1.5);
  });

  test('an edge like a blade', () => {
    // A lens of 8 mm radius 0.16 mm thick is under 0.1 mm thick outside r = 8 sqrt(1 - (0.1 / 0.16)^2) = 6.24.
    const { findings } = surfaceFor([placed(ellipsoid(8, 8, 0.08), translation(4, 0, 0))]);
    expect(findings.map(({ code }) => code)).toEqual(['mold.knife-edge']);
    const area = Number(findings[0].values.area);
    // Without the silhouette's three cells of 0.1 mm, to within a cell at the rim.
    expect(Math.abs(area - Math.PI * (7.7 ** 2 - 6.245 ** 2))).toBeLessThan(2 * Math.PI * 7.7 * 0.1);
  });

  test('a thread too thin for the grid', () => {
    const thread = placed(
      rod((t) => [8 * t + 2, 0], 0.04),
      translation(0, 3.03, 0),
    );
    const { findings } = surfaceFor([ball(3, 0, 0, 0), thread]);
    expect(findings.map(({ code, subject }) => [code, subject])).toEqual([['mold.thin-features', 'm1']]);
  });

  test('a master that crosses itself', () => {
    const [a, b] = [ball(3, 0, 0, 0), ball(3, 2, 0, 0)];
    const both: TriangleMesh = {
      positions: Float32Array.from([...a.positions, ...b.positions]),
      triangles: Uint32Array.from([...a.triangles, ...b.triangles.map((v) => v + a.positions.length / 3)]),
    };
    expect(surfaceFor([both]).findings.map(({ code }) => code)).toEqual(['mold.crossed-shells']);
  });
});

/** Steepest central difference over two cells outside the masters' outlines (a cell of rim left out). */
function steepestOutside(
  { heights, nx, ny, x0, y0, cell }: ReturnType<typeof surfaceFor>['surface'],
  meshes: readonly TriangleMesh[],
): number {
  const covered = new Uint8Array(nx * ny);
  // Vertices are dense enough to mark what is near the masters: spread over two cells around.
  for (const { positions: p, triangles } of meshes) {
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t] * 3, triangles[t + 1] * 3, triangles[t + 2] * 3];
      const xs = [p[a], p[b], p[c]];
      const ys = [p[a + 1], p[b + 1], p[c + 1]];
      const [i0, i1] = [Math.min(...xs), Math.max(...xs)].map((x) => Math.round((x - x0) / cell));
      const [j0, j1] = [Math.min(...ys), Math.max(...ys)].map((y) => Math.round((y - y0) / cell));
      for (let j = j0 - 1; j <= j1 + 1; j++) covered.fill(1, j * nx + i0 - 1, j * nx + i1 + 2);
    }
  }
  let steepest = 0;
  for (let k = nx; k < nx * (ny - 1); k++) {
    if (covered[k] || covered[k - 1] || covered[k + 1] || covered[k - nx] || covered[k + nx]) continue;
    const here = Math.hypot(heights[k + 1] - heights[k - 1], heights[k + nx] - heights[k - nx]) / (2 * cell);
    steepest = Math.max(steepest, here);
  }
  return steepest;
}
