import type { TriangleMesh } from './triangles.ts';

/** Tells for each vertex of a mesh the connected piece it belongs to: the number of one of the piece's vertices. */
export function pieceOfVertex({ positions, triangles }: TriangleMesh): (vertex: number) => number {
  const parent = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
  const root = (vertex: number): number => {
    let at = vertex;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  for (let face = 0; face < triangles.length; face += 3) {
    const a = root(triangles[face]);
    parent[root(triangles[face + 1])] = a;
    parent[root(triangles[face + 2])] = a;
  }
  return root;
}
