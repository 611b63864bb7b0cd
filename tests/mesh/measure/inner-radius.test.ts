import { describe, expect, test } from 'vitest';
import type { TriangleMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { innerRadii } from '../../../src/mesh/index.ts';
import { box } from '../../export/shapes.ts';
import { ball } from '../../parts/example-masters.ts';

// Hollows of known inner radius in the upper face of a block 24 mm square: closed forms.

const range = { least: 0.1, most: 6, finish: 0.02 };
const tightest = (mesh: TriangleMesh) => innerRadii(mesh, range, () => 'all').get('all');

/** A block down to z = -20 whose top has the height of a function, at the given steps along x and y. */
function block(height: (x: number, y: number) => number, xs: readonly number[], ys = xs): TriangleMesh {
  const [nx, ny] = [xs.length, ys.length];
  const under = nx * ny;
  const points = [height, () => -20].flatMap((z) => ys.flatMap((y) => xs.flatMap((x) => [x, y, z(x, y)])));
  const triangles: number[] = [];
  const quad = (a: number, b: number, c: number, d: number): number => triangles.push(a, b, c, a, c, d);
  for (let j = 0; j + 1 < ny; j++)
    for (let i = 0; i + 1 < nx; i++) {
      const at = j * nx + i;
      quad(at, at + 1, at + nx + 1, at + nx);
      quad(under + at, under + at + nx, under + at + nx + 1, under + at + 1);
    }
  const rim = [
    ...xs.map((_, i) => i),
    ...ys.slice(1).map((_, j) => (j + 2) * nx - 1),
    ...xs.slice(1).map((_, i) => under - 2 - i),
    ...ys.slice(1).map((_, j) => (ny - 2 - j) * nx),
  ];
  for (let k = 0; k + 1 < rim.length; k++) quad(rim[k], under + rim[k], under + rim[k + 1], rim[k + 1]);
  return { positions: Float32Array.from(points), triangles: Uint32Array.from(triangles) };
}

const even = Array.from({ length: 25 }, (_, i) => i - 12);

describe('the tightest inner edge', () => {
  test.each([0.8, 1.3, 2.2])('of a pit that is half a ball of %f mm has its radius', async (r) => {
    const kernel = await loadKernel();
    const mesh = kernel.scope((scope) => {
      const pit = scope.fromMesh(ball(kernel, r), 'pit');
      const stock = scope.fromMesh(box([24, 24, 20], [-12, -12, -20]), 'block');
      return scope.toMesh(scope.subtract(stock, [pit], 'block with a pit'));
    });
    const found = tightest(mesh);
    // The ball round 64 facets, and the finish over the floor, which lifts it against the upright walls.
    expect(found?.radius).toBeLessThan(r);
    expect(found?.radius).toBeGreaterThan(r * Math.cos(Math.PI / 64) ** 2 - range.finish);
    expect(Math.hypot(...(found?.place ?? [99]))).toBeCloseTo(r, 1);
  });

  test.each([0.5, 1, 2])(
    'of a fillet of %f mm between slopes of 45 degrees is it, and what the finish allows',
    (r) => {
      const reach = r * Math.SQRT1_2;
      const bottom = (x: number): number =>
        Math.abs(x) < reach ? r * Math.SQRT2 - Math.sqrt(r * r - x * x) : Math.abs(x);
      const xs = [
        ...[-12, -9],
        ...Array.from({ length: 41 }, (_, i) => r * Math.sin(((i - 20) / 20) * (Math.PI / 4))),
        ...[9, 12],
      ];
      const found = tightest(block((x) => Math.min(0, bottom(x) - 8), xs, [-12, -6, 0, 6, 12]));
      // A larger ball of radius R stops (R - r) (1 / sin 45 - 1) over the middle of the fillet.
      expect(found?.radius).toBeCloseTo(r + range.finish / (Math.SQRT2 - 1), 1);
    },
  );

  test('of a groove that runs in sharp is 0', () => {
    const found = tightest(block((x) => Math.min(0, Math.abs(x) - 4), [-12, -4, 0, 4, 12]));
    expect(found?.radius).toBe(0);
    expect(found?.place[0]).toBeCloseTo(0, 6);
    expect(found?.sharp).toBeCloseTo(24, 4);
  });

  test('of a groove of 160 degrees is what the finish allows: R (1 / sin 80 - 1)', () => {
    const slope = Math.tan((10 * Math.PI) / 180);
    const found = tightest(block((x) => Math.min(0, (Math.abs(x) - 8) * slope), [-12, -8, 0, 8, 12]));
    expect(found?.radius).toBeCloseTo(range.finish / (1 / Math.sin((80 * Math.PI) / 180) - 1), 2);
  });

  test('of a slot with upright walls and a level floor is left to a square end; so is no hollow at all', () => {
    const slot = (x: number): number => (Math.abs(x) < 3 ? -3 : 0);
    expect(tightest(block(slot, [-12, -3 - 1e-5, -3 + 1e-5, 3 - 1e-5, 3 + 1e-5, 12]))).toBeUndefined();
    expect(tightest(block((x, y) => -0.02 * (x * x + y * y), even))).toBeUndefined();
  });

  test('is told for each group apart', () => {
    const grooves = block(
      (x) => Math.min(0, 3 * Math.abs(x - 6) - 6, Math.abs(x + 6) - 2),
      [-12, -8, -6, -4, 4, 6, 8, 12],
    );
    const found = innerRadii(grooves, range, ([x]) => (x < 0 ? 'left' : 'right'));
    expect([...found].map(([group, { radius }]) => [group, radius])).toEqual([
      ['left', 0],
      ['right', 0],
    ]);
  });
});
