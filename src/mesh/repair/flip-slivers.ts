import { nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type EdgePairs, pairEdges } from './edges.ts';
import { faceArea, faceMiddle } from './surface.ts';

export interface SliversFlipped {
  readonly mesh: TriangleMesh;
  readonly pairs: EdgePairs;
  readonly flipped: number;
  readonly place?: Vec3;
}

/**
 * Faces whose three corners lie on one line cover nothing, yet leaving them out would open the skin. Each gives its
 * long side to the face beyond it: the two faces become two others over the same four points, and no point moves.
 * A sliver that cannot be turned without doubling an edge stays.
 */
export function flipSliverEdges(mesh: TriangleMesh, pairs: EdgePairs): SliversFlipped {
  let now = { mesh, pairs };
  let flipped = 0;
  let place: Vec3 | undefined;
  // Slivers may lie side by side: each round turns those whose neighbour is a proper face by then.
  for (let round = 0; round < 8; round++) {
    const flat = sliversOf(now.mesh);
    if (flat.length === 0) break;
    const triangles = now.mesh.triangles.slice();
    const done = flipRound(now.mesh, now.pairs, flat, triangles);
    if (done === 0) break;
    place ??= faceMiddle(now.mesh, flat[0]);
    flipped += done;
    const next = { positions: mesh.positions, triangles };
    now = { mesh: next, pairs: pairEdges(triangles, mesh.positions.length / 3) };
  }
  return { ...now, flipped, ...(place && { place }) };
}

function sliversOf(mesh: TriangleMesh): number[] {
  const flat: number[] = [];
  for (let face = 0; face < mesh.triangles.length / 3; face++)
    if (faceArea(mesh, face) === 0) flat.push(face);
  return flat;
}

/** Turns each sliver once, never two that touch in one round; writes to `triangles`, returns how many. */
function flipRound(
  mesh: TriangleMesh,
  { twin }: EdgePairs,
  flat: readonly number[],
  triangles: Uint32Array,
): number {
  const touched = new Set<number>();
  const ends = neighboursOf(mesh.triangles, flat);
  let done = 0;
  for (const face of flat) {
    const long = longestSide(mesh, face);
    const other = twin[long];
    if (other < 0) continue;
    const beyond = Math.floor(other / 3);
    const [a, b, c] = [long, nextCorner(long), nextCorner(nextCorner(long))].map((h) => mesh.triangles[h]);
    const d = mesh.triangles[nextCorner(nextCorner(other))];
    const near = [face, beyond];
    if (d === c || near.some((f) => touched.has(f)) || ends.get(c)?.has(d)) continue;
    ends.get(c)?.add(d);
    ends.get(d)?.add(c);
    triangles.set([b, c, d], face * 3);
    triangles.set([c, a, d], beyond * 3);
    for (const f of near) touched.add(f);
    // The faces round them keep their corners but not their neighbours: leave them for the next round.
    for (const f of near) for (let k = 0; k < 3; k++) touched.add(Math.floor(twin[f * 3 + k] / 3));
    done++;
  }
  return done;
}

function longestSide({ positions, triangles }: TriangleMesh, face: number): number {
  let best = face * 3;
  let longest = -1;
  for (let h = face * 3; h < face * 3 + 3; h++) {
    const p = triangles[h] * 3;
    const q = triangles[nextCorner(h)] * 3;
    const length = Math.hypot(
      positions[p] - positions[q],
      positions[p + 1] - positions[q + 1],
      positions[p + 2] - positions[q + 2],
    );
    if (length > longest) {
      longest = length;
      best = h;
    }
  }
  return best;
}

/** The far ends of all edges at the corners of the given faces. */
function neighboursOf(triangles: Uint32Array, faces: readonly number[]): Map<number, Set<number>> {
  const ends = new Map<number, Set<number>>();
  for (const face of faces) for (let k = 0; k < 3; k++) ends.set(triangles[face * 3 + k], new Set());
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h];
    const b = triangles[nextCorner(h)];
    ends.get(a)?.add(b);
    ends.get(b)?.add(a);
  }
  return ends;
}
