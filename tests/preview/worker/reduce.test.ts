import { expect, test } from 'vitest';
import type { TriangleMesh } from '../../../src/geometry/index.ts';
import { loadKernel } from '../../../src/kernel/index.ts';
import { readMesh, repairMesh, TriangleTree } from '../../../src/mesh/index.ts';
import { reduce } from '../../../src/preview/worker/reduce.ts';
import { bumpyMesh } from '../../browser/bumpy-mesh.ts';

const kernel = await loadKernel();
const read = readMesh(bumpyMesh(150, 120, 12), 'leaf.stl');
if (!read.mesh) throw new Error('the test mesh cannot be read');
const { mesh } = repairMesh(read.mesh, { subject: 'leaf', unit: 'mm' }, kernel);
if (!mesh) throw new Error('the test mesh cannot be mended');

/** Of the corners and the middles of the faces of one mesh, the farthest from the other's surface, mm. */
function farthest({ positions: p, triangles }: TriangleMesh, tree: TriangleTree): number {
  let most = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => triangles[t + k] * 3);
    const middle = [0, 1, 2].map((axis) => (p[a + axis] + p[b + axis] + p[c + axis]) / 3);
    most = Math.max(most, tree.distanceTo(p[a], p[a + 1], p[a + 2]));
    most = Math.max(most, tree.distanceTo(middle[0], middle[1], middle[2]));
  }
  return most;
}

// From hardly reduced to as few as there can be.
test.each([30_000, 8000, 3000, 900, 60])(
  'to about %d triangles moves the surface by no more than it says',
  (most) => {
    const { reduced, error } = reduce(mesh, most, kernel);
    const count = reduced.triangles.length / 3;
    expect(count).toBeLessThan(mesh.triangles.length / 3);
    if (most >= 900) expect(count).toBeLessThanOrEqual(most);
    const moved = Math.max(
      farthest(mesh, new TriangleTree(reduced)),
      farthest(reduced, new TriangleTree(mesh)),
    );
    expect(moved).toBeGreaterThan(0);
    expect(moved).toBeLessThanOrEqual(error);
  },
);

test('to what it has already gives the mesh itself', () => {
  expect(reduce(mesh, mesh.triangles.length / 3, kernel)).toEqual({ reduced: mesh, error: 0 });
});
