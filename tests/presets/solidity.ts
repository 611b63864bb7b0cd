import type { TriangleMesh } from '../../src/geometry/index.ts';

/** Enclosed volume by the divergence theorem: the sum of signed tetrahedra from the origin, mm3. */
export function volumeOf({ positions: p, triangles: t }: TriangleMesh): number {
  let six = 0;
  for (let i = 0; i < t.length; i += 3) {
    const [a, b, c] = [t[i] * 3, t[i + 1] * 3, t[i + 2] * 3];
    six +=
      p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
      p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
      p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c]);
  }
  return six / 6;
}

/** In how many pieces the faces hang together, by shared vertices. */
export function piecesOf({ positions, triangles }: TriangleMesh): number {
  const parent = Int32Array.from({ length: positions.length / 3 }, (_, v) => v);
  const root = (v: number): number => {
    let at = v;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    parent[root(triangles[i + 1])] = root(triangles[i]);
    parent[root(triangles[i + 2])] = root(triangles[i]);
  }
  return new Set(triangles.map(root)).size;
}
