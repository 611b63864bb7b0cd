import type { Point2, TriangleMesh } from '../geometry/index.ts';

/**
 * Where the straight line from `from` to `to` (mold frame, mm) first and last meets the shadow of a placed mesh on
 * the parting plane, as shares of its length; undefined where it misses. The silhouette's edges are edges of the
 * mesh, so every crossing of the line with a projected edge is looked at.
 */
export function shadowAlong(
  mesh: TriangleMesh,
  from: Point2,
  to: Point2,
): { first: number; last: number } | undefined {
  const { positions, triangles } = mesh;
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const length2 = dx * dx + dy * dy;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  // Per vertex: share along the line and signed distance from it.
  const along = new Float64Array(positions.length / 3);
  const beside = new Float64Array(positions.length / 3);
  for (let v = 0; v < along.length; v++) {
    const px = positions[3 * v] - from[0];
    const py = positions[3 * v + 1] - from[1];
    along[v] = (px * dx + py * dy) / length2;
    beside[v] = px * dy - py * dx;
  }
  const take = (a: number, b: number): void => {
    if (beside[a] > 0 === beside[b] > 0) return;
    const t = along[a] + ((along[b] - along[a]) * beside[a]) / (beside[a] - beside[b]);
    if (t < 0 || t > 1) return;
    if (t < first) first = t;
    if (t > last) last = t;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i], triangles[i + 1], triangles[i + 2]];
    const side = beside[a] > 0;
    // Most faces lie wholly on one side.
    if (side === beside[b] > 0 && side === beside[c] > 0) continue;
    take(a, b);
    take(b, c);
    take(c, a);
  }
  return first <= last ? { first, last } : undefined;
}
