import { expect, test } from 'vitest';
import { crossingShifts, type TriangleMesh, uncrossSlivers } from '../../src/kernel/index.ts';

/** A sliver 1 mm long and 0.02 mm wide in the plane z = 0, and a face that stands over it on one corner. */
const standing = (depth: number): TriangleMesh => ({
  positions: Float32Array.from([
    ...[0, 0, 0, 1, 0, 0, 0.5, 0.02, 0],
    ...[0.5, 0.008, -depth, 0.6, 0.008, 0.3, 0.4, 0.008, 0.3],
  ]),
  triangles: Uint32Array.from([0, 1, 2, 3, 4, 5]),
});

test.each([5e-5, 5e-4])(
  'a corner %s mm through a sliver goes back over it, by at most twice that',
  (depth) => {
    const through = standing(depth);
    expect(crossingShifts(through.positions, through.triangles).size).toBe(1);
    const parted = uncrossSlivers(through);
    expect(crossingShifts(parted.positions, parted.triangles).size).toBe(0);
    expect(parted.positions[11]).toBeGreaterThan(0);
    const moved = parted.positions.map((value, i) => Math.abs(value - through.positions[i]));
    expect(Math.max(...moved)).toBeLessThan(2 * depth);
  },
);

test('a sound mesh comes back as it is, and so does one that crosses itself deeply', () => {
  for (const mesh of [standing(-1e-3), standing(0.05)]) expect(uncrossSlivers(mesh)).toBe(mesh);
});
