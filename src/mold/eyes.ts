import type { Grid, TriangleMesh } from '../geometry/index.ts';

/** Handles of a closed mesh, all its pieces together: its genus, pieces less half of V - E + F (Euler, Poincare). */
export function handlesOf({ positions, triangles }: TriangleMesh): number {
  const root = Int32Array.from({ length: positions.length / 3 }, (_, i) => i);
  const find = (at: number): number => {
    let i = at;
    while (root[i] !== i) {
      root[i] = root[root[i]];
      i = root[i];
    }
    return i;
  };
  for (let i = 0; i < triangles.length; i += 3)
    for (const k of [1, 2]) root[find(triangles[i + k])] = find(triangles[i]);
  const used = new Set(triangles);
  let pieces = 0;
  for (const vertex of used) if (root[vertex] === vertex) pieces++;
  // Every edge belongs to two triangles.
  const faces = triangles.length / 3;
  return pieces - (used.size - faces / 2) / 2;
}

/** Narrower holes the columns cannot tell from none. */
const leastNodes = 4;

/** Holes of the silhouette: places with no metal over or under them, shut in by it. */
function silhouetteHoles({ nx, ny }: Grid, metal: Uint8Array): number {
  const seen = Uint8Array.from(metal);
  let holes = 0;
  for (let first = 0; first < seen.length; first++) {
    if (seen[first]) continue;
    const stack = [first];
    seen[first] = 1;
    let [nodes, open] = [0, false];
    for (let k = stack.pop(); k !== undefined; k = stack.pop()) {
      const [i, j] = [k % nx, Math.floor(k / nx)];
      nodes++;
      if (i === 0 || j === 0 || i === nx - 1 || j === ny - 1) open = true;
      const beside = [i > 0 && k - 1, i < nx - 1 && k + 1, j > 0 && k - nx, j < ny - 1 && k + nx];
      for (const next of beside) {
        if (next === false || seen[next]) continue;
        seen[next] = 1;
        stack.push(next);
      }
    }
    if (!open && nodes >= leastNodes) holes++;
  }
  return holes;
}

/**
 * Eyes of a master that rubber goes through along the parting surface, such as a bail or a handle standing on edge: a
 * handle whose hole is seen from above is filled by a post that lifts out; what handles there are beyond those shut
 * rubber in on all sides, and it must be torn.
 */
export const closedEyes = (mesh: TriangleMesh, grid: Grid, metal: Uint8Array): number =>
  Math.max(0, handlesOf(mesh) - silhouetteHoles(grid, metal));
