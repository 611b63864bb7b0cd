import type { TriangleMesh } from '../../geometry/index.ts';

/** What became of the points: the mesh with fewer of them, how many were joined, the farthest any was moved. */
export interface Weld {
  readonly mesh: TriangleMesh;
  readonly joined: number;
  readonly farthest: number;
  /** A point that was moved to another, if any was. */
  readonly place?: readonly [number, number, number];
}

/**
 * Joins points with exactly the same coordinates (an STL repeats each point for every face), and leaves out points
 * no face uses. No shape changes by it. Faces keep their order; points keep the order of their first appearance.
 */
export function weldEqual(mesh: TriangleMesh): TriangleMesh {
  const { positions, triangles } = mesh;
  const count = positions.length / 3;
  const used = new Uint8Array(count);
  for (let i = 0; i < triangles.length; i++) used[triangles[i]] = 1;
  let size = 16;
  while (size < count * 1.6) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const bits = new Int32Array(positions.buffer, positions.byteOffset, positions.length);
  const kept = new Uint32Array(count);
  const map = new Uint32Array(count);
  let keptCount = 0;
  for (let v = 0; v < count; v++) {
    if (used[v] === 0) continue;
    const i = v * 3;
    let at = hash3(bits[i], bits[i + 1], bits[i + 2]) & (size - 1);
    for (;;) {
      const k = table[at];
      if (k < 0) {
        table[at] = keptCount;
        kept[keptCount] = v;
        map[v] = keptCount++;
        break;
      }
      const j = kept[k] * 3;
      if (bits[i] === bits[j] && bits[i + 1] === bits[j + 1] && bits[i + 2] === bits[j + 2]) {
        map[v] = k;
        break;
      }
      at = (at + 1) & (size - 1);
    }
  }
  if (keptCount === count) return mesh;
  return gather(positions, triangles, kept.subarray(0, keptCount), map);
}

/**
 * Joins points that lie within `tolerance` mm of one another, but only those `mayMove` allows (the ones on open
 * edges): fine detail elsewhere stays as it is. The earlier point in the file stays where it is.
 */
export function weldNear(mesh: TriangleMesh, mayMove: Uint8Array, tolerance: number): Weld {
  const { positions, triangles } = mesh;
  const count = positions.length / 3;
  const grid = new Map<string, number[]>();
  const cellOf = (value: number): number => Math.floor(value / tolerance);
  const map = Uint32Array.from({ length: count }, (_, v) => v);
  let joined = 0;
  let farthest = 0;
  let place: [number, number, number] | undefined;
  for (let v = 0; v < count; v++) {
    if (mayMove[v] === 0) continue;
    const at = [0, 1, 2].map((axis) => cellOf(positions[v * 3 + axis])) as [number, number, number];
    const near = nearestIn(grid, at, positions, v, tolerance);
    if (near === undefined) {
      const key = at.join();
      const cell = grid.get(key);
      if (cell) cell.push(v);
      else grid.set(key, [v]);
      continue;
    }
    map[v] = near.vertex;
    joined++;
    if (near.distance > farthest || place === undefined) {
      place = [positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2]];
    }
    farthest = Math.max(farthest, near.distance);
  }
  if (joined === 0 || place === undefined) return { mesh, joined: 0, farthest: 0 };
  const moved = triangles.map((v) => map[v]);
  return { mesh: weldEqual({ positions, triangles: moved }), joined, farthest, place };
}

function nearestIn(
  grid: Map<string, number[]>,
  [cx, cy, cz]: readonly [number, number, number],
  positions: Float32Array,
  v: number,
  tolerance: number,
): { vertex: number; distance: number } | undefined {
  let best: { vertex: number; distance: number } | undefined;
  for (let n = 0; n < 27; n++) {
    const key = `${cx - 1 + (n % 3)},${cy - 1 + (Math.floor(n / 3) % 3)},${cz - 1 + Math.floor(n / 9)}`;
    for (const vertex of grid.get(key) ?? []) {
      const distance = Math.hypot(
        positions[v * 3] - positions[vertex * 3],
        positions[v * 3 + 1] - positions[vertex * 3 + 1],
        positions[v * 3 + 2] - positions[vertex * 3 + 2],
      );
      if (distance <= tolerance && (best === undefined || distance < best.distance)) {
        best = { vertex, distance };
      }
    }
  }
  return best;
}

/** Only the points in `kept` stay; `map` says for each old point which kept one stands for it. */
function gather(
  positions: Float32Array,
  triangles: Uint32Array,
  kept: Uint32Array,
  map: Uint32Array,
): TriangleMesh {
  const points = new Float32Array(kept.length * 3);
  for (let k = 0; k < kept.length; k++) {
    const i = kept[k] * 3;
    points[k * 3] = positions[i];
    points[k * 3 + 1] = positions[i + 1];
    points[k * 3 + 2] = positions[i + 2];
  }
  const faces = new Uint32Array(triangles.length);
  for (let i = 0; i < triangles.length; i++) faces[i] = map[triangles[i]];
  return { positions: points, triangles: faces };
}

const hash3 = (x: number, y: number, z: number): number => {
  let h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b) ^ Math.imul(z, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  h = Math.imul(h ^ (h >>> 12), 0x297a2d39);
  return h ^ (h >>> 15);
};
