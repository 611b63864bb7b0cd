import { sidesCrossed, type TriangleMesh } from '../geometry/index.ts';
import { facesAround } from './faces-around.ts';

/**
 * Edges up to this length are taken for none, mm: a hundred float32 steps on a 250 mm disc. The ends of such an edge have
 * been rounded separately, so that the slivers beside it may cross each other.
 */
const shortest = 5e-4;

/**
 * Makes one vertex of the two ends of every edge without length, dropping the two faces beside it, where the surface
 * stays a closed 2-manifold by that (link condition: the ends share exactly two neighbors) and no other face is
 * turned over. Gives the triangles, the same array where nothing was to do. Other edges are left.
 */
export function collapseShortEdges({ positions, triangles }: TriangleMesh): Uint32Array {
  const short = shortEdges(positions, triangles);
  if (short.length === 0) return triangles;
  const faces = facesAround(short.flat(), triangles);
  const result = triangles.slice();
  const gone = new Set<number>();
  for (const [first, second] of short) {
    const keep = Math.min(first, second);
    const drop = Math.max(first, second);
    const round = (vertex: number): number[] => (faces.get(vertex) ?? []).filter((face) => !gone.has(face));
    const around = round(drop);
    const between = around.filter((face) => result.subarray(face, face + 3).includes(keep));
    if (between.length !== 2) continue;
    const neighbors = neighborsOf(drop, around, result);
    const common = [...neighborsOf(keep, round(keep), result)].filter((vertex) => neighbors.has(vertex));
    if (common.length !== 2) continue;
    if (turnsOver(positions, result, around, between, drop, keep)) continue;
    for (const face of between) gone.add(face);
    const moved = around.filter((face) => !gone.has(face));
    for (const face of moved) {
      for (let k = 0; k < 3; k++) if (result[face + k] === drop) result[face + k] = keep;
    }
    faces.set(keep, [...round(keep), ...moved]);
    faces.set(drop, []);
  }
  return result.filter((_, corner) => !gone.has(corner - (corner % 3)));
}

function shortEdges(p: Float32Array, triangles: Uint32Array): (readonly [number, number])[] {
  const short: (readonly [number, number])[] = [];
  for (let face = 0; face < triangles.length; face += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[face + k];
      const b = triangles[face + ((k + 1) % 3)];
      if (a < b && distance2(p, a, b) <= shortest * shortest) short.push([a, b]);
    }
  }
  return short;
}

const distance2 = (p: Float32Array, a: number, b: number): number =>
  (p[a * 3] - p[b * 3]) ** 2 + (p[a * 3 + 1] - p[b * 3 + 1]) ** 2 + (p[a * 3 + 2] - p[b * 3 + 2]) ** 2;

/** Whether a face that stays would point the other way once `drop` lies where `keep` is. */
function turnsOver(
  p: Float32Array,
  triangles: Uint32Array,
  around: readonly number[],
  between: readonly number[],
  drop: number,
  keep: number,
): boolean {
  if (distance2(p, drop, keep) === 0) return false;
  return around.some((face) => {
    if (between.includes(face)) return false;
    const before = [...triangles.subarray(face, face + 3)];
    const after = before.map((vertex) => (vertex === drop ? keep : vertex));
    const [ax, ay, az] = sidesCrossed(p, before[0], before[1], before[2]);
    const [bx, by, bz] = sidesCrossed(p, after[0], after[1], after[2]);
    return ax * bx + ay * by + az * bz < 0;
  });
}

function neighborsOf(vertex: number, faces: readonly number[], triangles: Uint32Array): Set<number> {
  const found = new Set<number>();
  for (const face of faces) for (let k = 0; k < 3; k++) found.add(triangles[face + k]);
  found.delete(vertex);
  return found;
}
