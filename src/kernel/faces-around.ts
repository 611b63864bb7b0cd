/**
 * Faces (index of their first corner, rising) that have one of the vertices, by vertex; of `count` vertices in all. Marks
 * tell the few corners that count from the others: halves have three million.
 */
export function facesAround(
  vertices: Iterable<number>,
  triangles: Uint32Array,
  count: number,
): Map<number, number[]> {
  const around = new Map<number, number[]>();
  const marked = new Uint8Array(count);
  for (const vertex of vertices) {
    marked[vertex] = 1;
    around.set(vertex, []);
  }
  for (let corner = 0; corner < triangles.length; corner++)
    if (marked[triangles[corner]] === 1) around.get(triangles[corner])?.push(corner - (corner % 3));
  return around;
}

/** The triangles without some of their faces (index of their first corner); the others in their order. */
export function withoutFaces(triangles: Uint32Array, gone: ReadonlySet<number>): Uint32Array {
  const kept = new Uint32Array(triangles.length - gone.size * 3);
  let from = 0;
  let at = 0;
  for (const face of [...gone].sort((a, b) => a - b)) {
    kept.set(triangles.subarray(from, face), at);
    at += face - from;
    from = face + 3;
  }
  kept.set(triangles.subarray(from), at);
  return kept;
}
