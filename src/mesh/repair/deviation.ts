import type { TriangleMesh, Vec3 } from '../../geometry/index.ts';
import { areaVector, sizeOf } from './surface.ts';
import { TriangleTree } from './triangle-tree.ts';

/** How far points of one surface lie from another, mm, and where the farthest lies. */
export interface Deviation {
  readonly greatest: number;
  readonly rms: number;
  readonly place: Vec3;
}

/**
 * Distances from points spread evenly over `mesh` (about `samples`, and a corner of each sampled face) to the
 * surface in `tree`. One way only: ask both ways to compare two surfaces. `counts` may leave points out, told the
 * point and the face's unit normal. The same points every time.
 */
export function deviation(
  mesh: TriangleMesh,
  tree: TriangleTree,
  counts: (at: Vec3, normal: Vec3) => boolean = () => true,
  samples = 20_000,
): Deviation {
  let greatest = 0;
  let squares = 0;
  let taken = 0;
  let place: Vec3 = [0, 0, 0];
  for (const { at, normal } of spread(mesh, samples)) {
    if (!counts(at, normal)) continue;
    const distance = tree.distanceTo(...at);
    taken++;
    squares += distance * distance;
    if (distance <= greatest) continue;
    greatest = distance;
    place = at;
  }
  return { greatest, rms: taken > 0 ? Math.sqrt(squares / taken) : 0, place };
}

/**
 * Both ways between an old surface (`tree` holds its faces) and the one that replaces it: `kept` is how far the
 * old outer surface lies from the new one, `added` how far the new one lies from any old face (across holes much
 * farther than `kept`). Old faces inside the body, told by winding numbers `step` mm on both sides, do not count.
 */
export function compareSurfaces(old: TriangleMesh, tree: TriangleTree, anew: TriangleMesh, step: number) {
  const isOuter = ([x, y, z]: Vec3, [nx, ny, nz]: Vec3): boolean =>
    tree.windingAt(x + step * nx, y + step * ny, z + step * nz) < 0.5 ||
    tree.windingAt(x - step * nx, y - step * ny, z - step * nz) < 0.5;
  return {
    kept: deviation(old, new TriangleTree(anew), isOuter, 8000),
    added: deviation(anew, tree, undefined, 8000),
  };
}

/** Points spread over a surface, as many per mm2 everywhere; additive recurrence with the plastic number's powers. */
function* spread(mesh: TriangleMesh, samples: number): Generator<{ at: Vec3; normal: Vec3 }> {
  const { positions, triangles } = mesh;
  const { area } = sizeOf(mesh);
  if (!(area > 0)) return;
  let due = 0.5;
  let n = 0;
  for (let face = 0; face < triangles.length / 3; face++) {
    const vector = areaVector(positions, triangles, face);
    const size = Math.hypot(...vector);
    if (size === 0) continue;
    const normal: Vec3 = [vector[0] / size, vector[1] / size, vector[2] / size];
    due += (size / area) * samples;
    for (; due >= 1; due--) {
      n++;
      let u = (n * 0.7548776662466927) % 1;
      let v = (n * 0.5698402909980532) % 1;
      if (u + v > 1) [u, v] = [1 - u, 1 - v];
      const at = [0, 1, 2].map((axis) => {
        const a = positions[triangles[face * 3] * 3 + axis];
        const b = positions[triangles[face * 3 + 1] * 3 + axis];
        const c = positions[triangles[face * 3 + 2] * 3 + axis];
        return a + u * (b - a) + v * (c - a);
      });
      yield { at: at as unknown as Vec3, normal };
      // Corners stick out farthest.
      const corner = triangles[face * 3 + (n % 3)] * 3;
      yield { at: [positions[corner], positions[corner + 1], positions[corner + 2]], normal };
    }
  }
}
