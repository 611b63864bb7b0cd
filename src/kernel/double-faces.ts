import { withoutFaces } from './faces-around.ts';

/**
 * Drops pairs of faces that lie back to back on the same three vertices: a fin without thickness, left where two
 * cutters met exactly. What was joined through a fin's two faces is then joined directly, so that a closed mesh stays
 * closed. Gives the same array where there are none.
 */
export function dropDoubleFaces(triangles: Uint32Array, vertices: number): Uint32Array {
  // Faces by their lowest vertex: a chain for each vertex.
  const head = new Int32Array(vertices).fill(-1);
  const next = new Int32Array(triangles.length / 3);
  const gone = new Set<number>();
  for (let face = 0; face < triangles.length; face += 3) {
    const low = lowestCorner(triangles, face);
    const second = triangles[face + ((low + 1) % 3)];
    const third = triangles[face + ((low + 2) % 3)];
    const vertex = triangles[face + low];
    for (let other = head[vertex]; other >= 0; other = next[other / 3]) {
      const first = lowestCorner(triangles, other);
      if (triangles[other + ((first + 1) % 3)] !== third || triangles[other + ((first + 2) % 3)] !== second)
        continue;
      if (gone.has(other)) continue;
      gone.add(face);
      gone.add(other);
      break;
    }
    next[face / 3] = head[vertex];
    head[vertex] = face;
  }
  return gone.size === 0 ? triangles : withoutFaces(triangles, gone);
}

/** Which corner of a face has its lowest vertex. */
function lowestCorner(triangles: Uint32Array, face: number): 0 | 1 | 2 {
  const a = triangles[face];
  const b = triangles[face + 1];
  const c = triangles[face + 2];
  if (a < b && a < c) return 0;
  return b < c ? 1 : 2;
}
