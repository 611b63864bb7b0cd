import type { RawMesh } from '../raw.ts';

/**
 * Leaves out points no face names: they would count in the size of the mesh. `left` is how many went; the mesh comes
 * back as it is where there are none. Points keep their order. Every index must be in range.
 */
export function compactVertices(mesh: RawMesh): { readonly mesh: RawMesh; readonly left: number } {
  const { positions, triangles } = mesh;
  const points = positions.length / 3;
  const used = new Uint8Array(points);
  for (let h = 0; h < triangles.length; h++) used[triangles[h]] = 1;
  let kept = 0;
  for (let v = 0; v < points; v++) kept += used[v];
  if (kept === points) return { mesh, left: 0 };
  const place = new Uint32Array(points);
  const moved = new Float64Array(kept * 3);
  let next = 0;
  for (let v = 0; v < points; v++) {
    if (used[v] === 0) continue;
    place[v] = next;
    for (let axis = 0; axis < 3; axis++) moved[next * 3 + axis] = positions[v * 3 + axis];
    next++;
  }
  return {
    mesh: { ...mesh, positions: moved, triangles: triangles.map((v) => place[v]) },
    left: points - kept,
  };
}
