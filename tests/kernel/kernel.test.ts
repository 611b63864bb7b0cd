import createModule from 'manifold-3d';
import { expect, test } from 'vitest';
import type { Vec3 } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';

test('kernel volume of a revolved square', async () => {
  const kernel = await loadKernel();
  const volume = kernel.scope((scope) =>
    scope
      .revolve(
        [
          [0, 0],
          [2, 0],
          [2, 3],
          [0, 3],
        ],
        64,
        'cylinder',
      )
      .volume(),
  );
  expect(volume).toBeCloseTo(3 * 64 * 0.5 * 4 * Math.sin((2 * Math.PI) / 64), 4);
});

test('a box of balls: Steiner, V + A r + M r^2 + 4/3 pi r^3; and the same as the Minkowski sum', async () => {
  const kernel = await loadKernel();
  const [a, b, c, r] = [8, 5, 2, 0.5];
  const corners = [0, a].flatMap((x) => [0, b].flatMap((y) => [0, c].map((z): Vec3 => [x, y, z])));
  const made = (sides: number): number =>
    kernel.scope((scope) => scope.roundedHull(corners, r, sides, 'box').volume());
  const steiner =
    a * b * c + 2 * (a * b + b * c + c * a) * r + Math.PI * (a + b + c) * r ** 2 + (4 / 3) * Math.PI * r ** 3;
  // A ball of 64 sides is short of its radius by at most 1 - cos(pi / 64), 0.12 %.
  expect(made(64) / steiner).toBeGreaterThan(0.999);
  expect(made(64) / steiner).toBeLessThan(1);
  const reference = await createModule();
  reference.setup();
  const sum = reference.Manifold.cube([a, b, c]).minkowskiSum(reference.Manifold.sphere(r, 32));
  expect(made(32) / sum.volume()).toBeCloseTo(1, 7);
});
