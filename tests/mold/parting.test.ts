import { describe, expect, test } from 'vitest';
import { loadKernel, type TriangleMesh } from '../../src/kernel/index.ts';
import { findPartingSurface, partingDefaults, partingPrism, undercut } from '../../src/mold/index.ts';
import { badge, ellipsoid, placed, rotation, translation } from './shaped-masters.ts';

const kernel = await loadKernel();
const discRadius = 25;

const surfaceFor = (meshes: readonly TriangleMesh[]) =>
  findPartingSurface({
    discRadius,
    masters: meshes.map((mesh, i) => ({ id: `m${i}`, mesh })),
    pins: [{ outside: discRadius - 1 }],
    ...partingDefaults,
    cell: 0.1,
    limitUp: 20,
    limitDown: 20,
  });

describe('the parting surface', () => {
  test('splits a disc round one tilted master into two halves that leave nothing over', () => {
    const master = placed(ellipsoid(8, 5, 3), translation(8, 0, 0), rotation('y', 0.4));
    const { surface } = surfaceFor([master]);
    const left = kernel.scope((scope) => {
      const circle = Array.from({ length: 120 }, (_, i): [number, number] => [
        discRadius * Math.cos((i * Math.PI) / 60),
        discRadius * Math.sin((i * Math.PI) / 60),
      ]);
      const disc = scope.extrude([circle], -10, 10, 'disc');
      const body = scope.fromMesh(master, 'master');
      const prism = scope.fromMesh(partingPrism(surface, -20), 'prism');
      const [lower, upper] = scope.split(scope.subtract(disc, [body], 'rest'), prism, 'halves');
      expect(scope.pieces(lower, 'lower')).toHaveLength(1);
      expect(scope.pieces(upper, 'upper')).toHaveLength(1);
      return disc.volume() - body.volume() - lower.volume() - upper.volume();
    });
    expect(Math.abs(left)).toBeLessThan(0.01);
    const { below, above, irreducible } = undercut(master, surface);
    expect(below + above - irreducible).toBeLessThan(0.1);
  });

  test('stays exactly on the plane under a flat-backed badge', () => {
    const { surface, findings } = surfaceFor([badge(8, 1.5, 1)]);
    expect(surface.flat).toBe(true);
    expect(findings).toEqual([]);
  });
});
