import type { TriangleMesh } from '../../src/geometry/index.ts';

export interface Pairing {
  /** Directed edges without exactly one partner, after welding by exact equality of float32 positions. */
  readonly unpaired: number;
  /** Faces with two equal corners or corners exactly on one line. */
  readonly flat: number;
  /** Vertices - edges + faces. */
  readonly euler: number;
}

/** Pairs the edges of a mesh as a reader of its STL would see it. */
export function pairEdges({ positions: p, triangles }: TriangleMesh): Pairing {
  const ids = new Map<string, number>();
  const id = (v: number): number => {
    const key = `${p[v * 3] + 0},${p[v * 3 + 1] + 0},${p[v * 3 + 2] + 0}`;
    const known = ids.get(key);
    if (known !== undefined) return known;
    ids.set(key, ids.size);
    return ids.size - 1;
  };
  const welded = Uint32Array.from(triangles, id);
  const count = ids.size;
  const edges = new Map<number, number>();
  let flat = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    if (!hasArea(p, triangles.subarray(i, i + 3))) flat++;
    for (let k = 0; k < 3; k++) {
      const key = welded[i + k] * count + welded[i + ((k + 1) % 3)];
      edges.set(key, (edges.get(key) ?? 0) + 1);
    }
  }
  let unpaired = 0;
  for (const [key, times] of edges) {
    const back = (key % count) * count + Math.floor(key / count);
    if (times !== 1 || edges.get(back) !== 1) unpaired++;
  }
  return { unpaired, flat, euler: count - edges.size / 2 + triangles.length / 3 };
}

function hasArea(p: Float32Array, corners: Uint32Array): boolean {
  const [a, b, c] = Array.from(corners, (v) => [p[v * 3], p[v * 3 + 1], p[v * 3 + 2]]);
  const u = b.map((value, axis) => value - a[axis]);
  const v = c.map((value, axis) => value - a[axis]);
  return [0, 1, 2].some((axis) => {
    const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
    return u[i] * v[j] !== u[j] * v[i];
  });
}
