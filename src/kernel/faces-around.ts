/** Faces (index of their first corner, rising) that have one of the vertices, by vertex. */
export function facesAround(vertices: Iterable<number>, triangles: Uint32Array): Map<number, number[]> {
  const around = new Map<number, number[]>();
  for (const vertex of vertices) around.set(vertex, []);
  for (let corner = 0; corner < triangles.length; corner++)
    around.get(triangles[corner])?.push(corner - (corner % 3));
  return around;
}
