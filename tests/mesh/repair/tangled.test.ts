import { expect, test } from 'vitest';
import type { TriangleMesh } from '../../../src/geometry/index.ts';
import { isTangled } from '../../../src/mesh/repair/tangled.ts';
import { figurine, randomOf } from '../figurines.ts';

/** A closed ring of n by n quads whose points lie anywhere. */
function thrown(n: number): TriangleMesh {
  const draw = randomOf(3);
  const triangles: number[] = [];
  const point = (i: number, j: number): number => (i % n) * n + (j % n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [a, b, c, d] = [point(i, j), point(i + 1, j), point(i + 1, j + 1), point(i, j + 1)];
      triangles.push(a, b, c, a, c, d);
    }
  }
  const positions = Float32Array.from({ length: n * n * 3 }, () => draw() * 100);
  return { positions, triangles: Uint32Array.from(triangles) };
}

test('faces thrown together are not given to the kernel', () => {
  expect(isTangled(thrown(28))).toBe(true);
});

test('shells placed into one another are', () => {
  for (const kind of ['shells', 'coincident', 'scan'] as const) {
    const { points, faces } = figurine(kind, 1);
    const positions = Float32Array.from(points.flat());
    expect(isTangled({ positions, triangles: Uint32Array.from(faces.flat()) })).toBe(false);
  }
});
