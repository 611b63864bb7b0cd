import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { TriangleMesh } from '../../src/geometry/index.ts';
import { facesWithin } from '../../src/mold/uniform-grid.ts';

/** A sheet of squares of uneven size, each of two faces, some of them far larger than the squares it is sorted into. */
function sheet(): TriangleMesh {
  const steps = [-60, -58, -57.5, -40, -8, 0, 3, 3.5, 4, 16, 24, 31, 60];
  const positions = steps.flatMap((y) => steps.flatMap((x) => [x, y, Math.sin(x) * Math.cos(y)]));
  const triangles: number[] = [];
  for (let j = 0; j + 1 < steps.length; j++) {
    for (let i = 0; i + 1 < steps.length; i++) {
      const [a, b] = [j * steps.length + i, (j + 1) * steps.length + i];
      triangles.push(a, a + 1, b, b, a + 1, b + 1);
    }
  }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}

// The plain way: every face of the sheet is held against the box.
const byAllFaces = ({ positions: p, triangles }: TriangleMesh, min: number[], max: number[]): number[] => {
  const found: number[] = [];
  for (let t = 0; t < triangles.length; t += 3) {
    const reaches = [0, 1].every((axis) => {
      const at = [0, 1, 2].map((k) => p[triangles[t + k] * 3 + axis]);
      return Math.min(...at) <= max[axis] && Math.max(...at) >= min[axis];
    });
    if (reaches) found.push(t);
  }
  return found;
};

test('all faces that reach into a box are found, each once, in order, and few others', () => {
  const mesh = sheet();
  const at = fc.double({ min: -70, max: 70, noNaN: true });
  const wide = fc.double({ min: 0, max: 30, noNaN: true });
  fc.assert(
    fc.property(at, at, wide, wide, (x, y, w, d) => {
      const found = [...facesWithin(mesh, { min: [x, y], max: [x + w, y + d] })];
      const wanted = byAllFaces(mesh, [x, y], [x + w, y + d]);
      expect(wanted.filter((face) => !found.includes(face))).toEqual([]);
      expect(found).toEqual([...new Set(found)].sort((a, b) => a - b));
      // No farther off than the side of a square.
      const about = byAllFaces(mesh, [x - 8, y - 8], [x + w + 8, y + d + 8]);
      const isOnSheet = x <= 60 && y <= 60 && x + w >= -60 && y + d >= -60;
      if (isOnSheet) expect(found.filter((face) => !about.includes(face))).toEqual([]);
    }),
    { seed: 3 },
  );
});
