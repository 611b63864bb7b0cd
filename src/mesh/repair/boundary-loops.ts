import { lastCorner, nextCorner } from '../../geometry/index.ts';
import { type EdgePairs, openEdge } from './edges.ts';

/**
 * Closed chains of open edges, each a list of vertices in the order in which a patch over the hole must run round
 * them (against the faces that border it). Each chain passes through a vertex once at most: a figure of eight
 * comes out as two chains. The faces must agree with one another.
 */
export function boundaryLoops(triangles: Uint32Array, { twin }: EdgePairs): number[][] {
  const loops: number[][] = [];
  const seen = new Uint8Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    if (twin[h] !== openEdge || seen[h] === 1) continue;
    const chain: number[] = [];
    let at = h;
    for (; at >= 0 && seen[at] === 0; at = before(triangles, twin, at)) {
      seen[at] = 1;
      chain.push(triangles[nextCorner(at)]);
    }
    // A chain that a non-manifold edge breaks off is not a loop: it stays open.
    if (at === h) loops.push(...simpleLoops(chain));
  }
  return loops;
}

/**
 * The open half-edge that ends where `h` begins, found by turning round that point from face to face; -1 where a
 * non-manifold edge is in the way.
 */
function before(triangles: Uint32Array, twin: Int32Array, h: number): number {
  let at = lastCorner(h);
  for (let turns = 0; turns < triangles.length; turns++) {
    if (twin[at] === openEdge) return at;
    if (twin[at] < 0) return -1;
    at = lastCorner(twin[at]);
  }
  return -1;
}

function simpleLoops(chain: readonly number[]): number[][] {
  const loops: number[][] = [];
  const path: number[] = [];
  const placeOf = new Map<number, number>();
  for (const vertex of chain) {
    const earlier = placeOf.get(vertex);
    if (earlier !== undefined) {
      const loop = path.splice(earlier);
      for (const v of loop) placeOf.delete(v);
      if (loop.length > 2) loops.push(loop);
    }
    placeOf.set(vertex, path.length);
    path.push(vertex);
  }
  if (path.length > 2) loops.push(path);
  return loops;
}
