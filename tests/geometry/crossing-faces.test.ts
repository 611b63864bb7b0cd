import { describe, expect, test } from 'vitest';
import { crossingFaces, crossingsOf, joinMeshes, type TriangleMesh } from '../../src/geometry/index.ts';
import { randomOf } from '../mesh/figurines.ts';
import { asMesh, ball, box, mapped, torus } from '../mesh/rough-shapes.ts';

const two = (a: TriangleMesh, b: TriangleMesh) => crossingFaces(joinMeshes([a, b]));

describe('faces cross where an edge meets a face', () => {
  test.each([
    ['a box', box([10, 20, 30])],
    ['a ball', ball(10, 40)],
    ['a ring', torus(20, 5, 40, 20)],
  ])('%s does not', (_, shape) => expect(crossingFaces(asMesh(shape))).toEqual([]));

  test('boxes side by side do not; boxes through each other do, by half their side', () => {
    const cube = asMesh(box([10, 10, 10]));
    expect(two(cube, asMesh(box([10, 10, 10], [10, 0, 0])))).toEqual([]);
    const through = two(cube, asMesh(box([10, 10, 10], [5, 5, 5])));
    expect(through.length).toBeGreaterThan(0);
    expect(Math.max(...through.map(({ depth }) => depth))).toBeCloseTo(5, 6);
  });

  test('a corner that ends in a face crosses it; one a float32 step before it does not', () => {
    const floor = asMesh(box([10, 10, 1], [0, 0, -1]));
    const tip = (z: number): TriangleMesh => ({
      positions: Float32Array.from([3, 2, z, 4, 2, 3, 3, 3, 3]),
      triangles: Uint32Array.from([0, 1, 2]),
    });
    expect(two(floor, tip(0))).toHaveLength(1);
    expect(two(floor, tip(2 ** -30))).toHaveLength(0);
  });
});

test('finds the pairs that trying all of them in whole numbers finds', () => {
  const random = randomOf(11);
  const positions = Float32Array.from({ length: 9 * 60 }, () => Math.round(random() * 12));
  const soup = { positions, triangles: Uint32Array.from({ length: 180 }, (_, i) => i) };
  const found = crossingFaces(soup).map(({ through, by }) => [through, by].sort((a, b) => a - b).join());
  const all: string[] = [];
  for (let f = 0; f < 60; f++)
    for (let g = f + 1; g < 60; g++) if (meet(positions, f, g)) all.push(`${f},${g}`);
  expect(found.sort()).toEqual(all.sort());
  expect(all.length).toBeGreaterThan(100);
});

/** Small whole coordinates: every determinant is exact in float64. */
function meet(p: Float32Array, f: number, g: number): boolean {
  const corner = (face: number, k: number) => [
    ...p.subarray(face * 9 + (k % 3) * 3, face * 9 + (k % 3) * 3 + 3),
  ];
  const volume = (a: number[], b: number[], c: number[], d: number[]): number => {
    const [u, v, w] = [a, b, c].map((q) => q.map((value, i) => value - d[i]));
    return (
      u[0] * (v[1] * w[2] - v[2] * w[1]) -
      u[1] * (v[0] * w[2] - v[2] * w[0]) +
      u[2] * (v[0] * w[1] - v[1] * w[0])
    );
  };
  const edgeThrough = (face: number, a: number[], b: number[]): boolean => {
    const [i, j, k] = [0, 1, 2].map((c) => corner(face, c));
    if ([a, b].some((end) => [i, j, k].some((c) => c.join() === end.join()))) return false;
    const [ofA, ofB] = [volume(i, j, k, a), volume(i, j, k, b)];
    if (ofA * ofB > 0 || (ofA === 0 && ofB === 0)) return false;
    const turns = [volume(a, b, i, j), volume(a, b, j, k), volume(a, b, k, i)];
    return turns.every((t) => t >= 0) || turns.every((t) => t <= 0);
  };
  return [0, 1, 2].some(
    (k) => edgeThrough(f, corner(g, k), corner(g, k + 1)) || edgeThrough(g, corner(f, k), corner(f, k + 1)),
  );
}

test('what is known of an earlier mesh changes nothing that is found', () => {
  const random = randomOf(5);
  const counts = new Set<boolean>();
  for (let round = 0; round < 24; round++) {
    // Two balls a little apart, or a little through each other, of which a few corners then move.
    const parted = round % 2 === 0 ? 0.02 : -0.002;
    const second = ball(5, 24);
    const earlier = joinMeshes([
      asMesh(ball(5, 24)),
      asMesh(mapped(second, ([x, y, z]) => [x + 10 + parted, y, z])),
    ]);
    crossingsOf(earlier);
    const positions = earlier.positions.slice();
    for (let n = 0; n < 4; n++) {
      const vertex = nearTouching(positions, random);
      positions[vertex * 3] += (random() - 0.5) * 0.1;
    }
    const mesh = { positions, triangles: earlier.triangles };
    const found = crossingFaces(mesh);
    expect(crossingsOf(mesh, earlier)).toEqual(found);
    counts.add(found.length > 0);
  }
  expect(counts).toEqual(new Set([true, false]));
});

/** A vertex of the first or second ball close to where they meet, x = 5. */
function nearTouching(p: Float32Array, random: () => number): number {
  const near = Array.from({ length: p.length / 3 }, (_, v) => v).filter((v) => Math.abs(p[v * 3] - 5) < 0.3);
  return near[Math.floor(random() * near.length)];
}
