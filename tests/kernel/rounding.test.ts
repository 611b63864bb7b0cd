import { expect, test } from 'vitest';
import type { TriangleMesh } from '../../src/geometry/index.ts';
import { closedAfterRounding, onGrid, sharedPositions } from '../../src/kernel/index.ts';
import { pairEdges } from '../parts/pairing.ts';

/** A tetrahedron with corner `at` for its first vertex. */
const tetra = (at: readonly number[], away: number): number[] => [...at, away, 0, 0, 0, away, 0, 0, 0, away];
const faces = [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3];

/** The same faces seen from inside, for a body mirrored in its first vertex. */
const turnedOver = [0, 1, 2, 0, 3, 1, 0, 2, 3, 1, 3, 2];

const mesh = (positions: readonly number[], triangles: readonly number[]): TriangleMesh => ({
  positions: Float32Array.from(positions),
  triangles: Uint32Array.from(triangles),
});

test('a sound mesh comes back as it is', () => {
  const sound = mesh(tetra([0, 0, 0], 1), faces);
  expect(closedAfterRounding(sound)).toBe(sound);
});

test('two bodies that touch in a point by rounding are parted by no more than a few 1e-4 mm', () => {
  const touching = mesh(
    [...tetra([0, 0, 0], 1), ...tetra([0, 0, 0], -1)],
    [...faces, ...turnedOver.map((vertex) => 4 + vertex)],
  );
  expect(sharedPositions(touching.positions, touching.triangles)).toEqual([4]);
  const parted = closedAfterRounding(touching);
  expect(sharedPositions(parted.positions, parted.triangles)).toEqual([]);
  expect(pairEdges(parted)).toEqual({ unpaired: 0, flat: 0, euler: 4 });
  parted.positions.forEach((value, i) => {
    expect(Math.abs(value - touching.positions[i])).toBeLessThan(2e-4);
  });
});

test('an edge that lost its length goes, with the two faces beside it', () => {
  // A square pyramid whose apex is an edge of no length.
  const pyramid = mesh(
    [0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0, 0.5, 0.5, 1, 0.5, 0.5, 1],
    [0, 2, 1, 0, 3, 2, 0, 1, 4, 1, 5, 4, 1, 2, 5, 2, 3, 5, 3, 4, 5, 3, 0, 4],
  );
  const whole = closedAfterRounding(pyramid);
  expect(whole.positions.length).toBe(15);
  expect(whole.triangles.length).toBe(18);
  expect(pairEdges(whole)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
});

test('a fin of two faces back to back goes, and what hung on it is joined', () => {
  // The tetrahedron's edge from 1 to 2 opened, and a fin to a point of its own put between.
  const finned = mesh([...tetra([0, 0, 0], 1), 3, 3, 3], [...faces, 1, 2, 4, 2, 1, 4]);
  expect(pairEdges(finned).unpaired).toBeGreaterThan(0);
  const plain = closedAfterRounding(finned);
  expect(pairEdges(plain)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect([...plain.positions]).toEqual(tetra([0, 0, 0], 1));
});

test('a face whose corners fell on one line is turned away without moving the surface', () => {
  // A tetrahedron with an extra vertex on one edge, seen by one of the edge's two faces only as a flat face.
  const flat = mesh(
    [0, 0, 0, 2, 0, 0, 0, 2, 0, 0, 0, 2, 1, 0, 0],
    [0, 2, 1, 0, 4, 3, 4, 1, 3, 0, 3, 2, 1, 2, 3, 0, 1, 4],
  );
  expect(pairEdges(flat)).toMatchObject({ unpaired: 0, flat: 1 });
  const mended = closedAfterRounding(flat);
  expect(pairEdges(mended)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect([...mended.positions]).toEqual([...flat.positions]);
});

test('coordinates in whole steps of 2^-20 mm: a point 3e-9 beside a plane lies in it', () => {
  const [x, y, z] = onGrid(mesh([3e-9, -2e-8, 19.05], [])).positions;
  expect([x, y, z]).toEqual([0, 0, Math.fround(19.05)]);
});

test('a thin face that rounding folded back on its neighbor is turned away', () => {
  // As above, but the extra vertex lies 1e-4 mm past the edge, so that its thin face lies folded on the one beyond.
  const folded = mesh(
    [0, 0, 0, 2, 0, 0, 0, 2, 0, 0, 0, 2, 1, 1e-4, 0],
    [0, 2, 1, 0, 4, 3, 4, 1, 3, 0, 3, 2, 1, 2, 3, 0, 1, 4],
  );
  const mended = closedAfterRounding(folded);
  expect(pairEdges(mended)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  expect([...mended.positions]).toEqual([...folded.positions]);
  const down = [0, 3, 6, 9, 12, 15]
    .map((at) => [...mended.triangles.subarray(at, at + 3)])
    .filter((corners) => corners.every((vertex) => Math.abs(mended.positions[vertex * 3 + 2]) < 1e-6));
  // Every face in the bottom plane now looks down: none is folded over another.
  for (const [a, b, c] of down) {
    const [ax, ay] = mended.positions.subarray(a * 3, a * 3 + 2);
    const [bx, by] = mended.positions.subarray(b * 3, b * 3 + 2);
    const [cx, cy] = mended.positions.subarray(c * 3, c * 3 + 2);
    expect((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)).toBeLessThan(0);
  }
  expect(down.length).toBe(2);
});
