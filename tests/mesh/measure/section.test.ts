import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moveMesh, type TriangleMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { sectionOf } from '../../../src/mesh/index.ts';
import { bunny, ellipsoid, placed, rotation, translation } from '../../mold/shaped-masters.ts';

const kernel = await loadKernel();

const areaOf = (rings: ReturnType<typeof sectionOf>): number =>
  rings.reduce(
    (sum, ring) =>
      sum +
      ring.reduce((part, [x, y], i) => {
        const [nx, ny] = ring[(i + 1) % ring.length];
        return part + (x * ny - nx * y) / 2;
      }, 0),
    0,
  );

/** The kernel's own section, of the same mesh. */
const kernelArea = (mesh: TriangleMesh): number =>
  kernel.scope((scope) => scope.slice(scope.fromExactMesh(mesh, 'body'), 0).area());

describe('the section at z = 0', () => {
  test('of a tetrahedron: a triangle, counter-clockwise', () => {
    // Base 6 x 6 / 2 at z = -1, tip at z = 2: a third of the way up the sides are two thirds as long.
    const positions = Float32Array.from([0, 0, -1, 6, 0, -1, 0, 6, -1, 0, 0, 2]);
    const triangles = Uint32Array.from([0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]);
    const rings = sectionOf({ positions, triangles });
    expect(rings.map((ring) => ring.length)).toEqual([3]);
    expect(areaOf(rings)).toBeCloseTo((4 * 4) / 2, 6);
  });

  test('with corners and faces in the plane', () => {
    const cube = (bottom: number, top: number): TriangleMesh =>
      kernel.scope((scope) =>
        scope.toMesh(
          scope.extrude(
            [
              [
                [0, 0],
                [3, 0],
                [3, 2],
                [0, 2],
              ],
            ],
            bottom,
            top,
            'cube',
          ),
        ),
      );
    expect(areaOf(sectionOf(cube(-1, 0)))).toBeCloseTo(6, 6);
    expect(areaOf(sectionOf(cube(-1, 1)))).toBeCloseTo(6, 6);
    expect(sectionOf(cube(0, 1))).toEqual([]);
    expect(sectionOf(cube(1, 2))).toEqual([]);
  });

  test('of a ball: the circle, to the chord of its faces', () => {
    const ball = placed(ellipsoid(5, 5, 5), translation(1, 2, 3));
    expect(areaOf(sectionOf(ball))).toBeLessThan(Math.PI * 16);
    expect(areaOf(sectionOf(ball))).toBeGreaterThan(Math.PI * 16 * 0.99);
  });

  test('of a sculpted mesh turned anyhow: what the kernel cuts', () => {
    const mesh = bunny(12);
    const angle = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(angle, angle, fc.double({ min: -4, max: 4, noNaN: true }), (about, tip, lift) => {
        const turned = moveMesh(
          placed(mesh, rotation('x', tip), rotation('z', about)),
          translation(0, 0, lift),
        );
        const expected = kernelArea(turned);
        expect(Math.abs(areaOf(sectionOf(turned)) - expected)).toBeLessThan(1e-4 + 1e-5 * expected);
      }),
      { seed: 3, numRuns: 8 },
    );
  });
});
