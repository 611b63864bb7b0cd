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
    const [low, second, third] = lowestFirst(triangles, face);
    for (let other = head[low]; other >= 0; other = next[other / 3]) {
      const [, otherSecond, otherThird] = lowestFirst(triangles, other);
      if (otherSecond !== third || otherThird !== second || gone.has(other)) continue;
      gone.add(face);
      gone.add(other);
      break;
    }
    next[face / 3] = head[low];
    head[low] = face;
  }
  return gone.size === 0 ? triangles : triangles.filter((_, corner) => !gone.has(corner - (corner % 3)));
}

/** A face's vertices in its own order, the lowest first. */
function lowestFirst(triangles: Uint32Array, face: number): readonly [number, number, number] {
  const a = triangles[face];
  const b = triangles[face + 1];
  const c = triangles[face + 2];
  if (a < b && a < c) return [a, b, c];
  return b < c ? [b, c, a] : [c, a, b];
}
