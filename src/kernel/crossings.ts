import {
  type Crossing,
  cross,
  crossingsOf,
  dot,
  sidesCrossed,
  type TriangleMesh,
} from '../geometry/index.ts';
import { closedAfterRounding } from './rounding.ts';
import { eachNearSliver } from './sliver-cells.ts';

/** Crossings deeper than this (mm) are the shape's own and not ours to change. */
const deepest = 1e-3;
/** How far past the face a vertex is put at least, mm: some float32 steps. */
const clear = 2e-5;
const rounds = 4;

/**
 * Parts faces that cross each other by less than 1e-3 mm beside a sliver. A boolean is right to within its tolerance:
 * where two surfaces graze, dropping points closer than that can push a corner through the face next to it. The
 * corner is put back on its own side, moving by at most twice the depth. The same mesh comes back where none cross.
 */
export function uncrossSlivers(mesh: TriangleMesh): TriangleMesh {
  let { positions } = mesh;
  for (let round = 0; round < rounds; round++) {
    const shifts = crossingShifts(positions, mesh.triangles);
    if (shifts.size === 0) break;
    if (positions === mesh.positions) positions = positions.slice();
    for (const [vertex, shift] of shifts) {
      for (let axis = 0; axis < 3; axis++) positions[vertex * 3 + axis] += shift[axis];
    }
  }
  return positions === mesh.positions ? mesh : { positions, triangles: mesh.triangles };
}

/** Looks at every face of a solid that its parting may take. */
const mostLooks = 12;

/**
 * A rounded solid whose faces do not cross one another, as far as they can be parted: what the kernel's tolerance and
 * rounding to float32 left crossing by less than 1e-3 mm goes back to its own side, and what that leaves open is closed
 * again. The same mesh comes back where none cross.
 */
export function uncrossed(mesh: TriangleMesh): TriangleMesh {
  let best = mesh;
  let crossings = crossingsOf(best);
  let next = best;
  let left = crossings;
  for (let look = 1; look < mostLooks && left.length > 0; look++) {
    const before = next;
    next = closedAfterRounding(putBack(before, left, look));
    left = crossingsOf(next, before);
    if (left.length >= crossings.length) continue;
    best = next;
    crossings = left;
  }
  return best;
}

/** Corners that are a little through a face, put back before it, each by the crossing found last; `times` as clear of it. */
function putBack(mesh: TriangleMesh, crossings: readonly Crossing[], times: number): TriangleMesh {
  const positions = mesh.positions.slice();
  for (const { through, corner, other, depth } of crossings) {
    if (depth > deepest) continue;
    const [i, j, k] = mesh.triangles.subarray(through * 3, through * 3 + 3);
    const normal = sidesCrossed(mesh.positions, i, j, k);
    const length = Math.hypot(...normal);
    const side = Math.sign(dot(normal, between(mesh.positions, i, other)));
    const by = side * (depth + times * Math.max(depth / 2, clear));
    for (let axis = 0; axis < 3; axis++)
      positions[corner * 3 + axis] = mesh.positions[corner * 3 + axis] + (normal[axis] / length) * by;
  }
  return { positions, triangles: mesh.triangles };
}

type Vector = readonly [number, number, number];

/** What to add to which vertex. */
export function crossingShifts(p: Float32Array, triangles: Uint32Array): Map<number, Vector> {
  const shifts = new Map<number, Vector>();
  eachNearSliver(p, triangles, (face, sliver) => {
    // Two faces with an edge in common have no edge that could go through the other.
    if (sharedCorners(triangles, face, sliver) > 1) return;
    for (const found of [
      pokingCorner(p, triangles, face, sliver),
      pokingCorner(p, triangles, sliver, face),
    ]) {
      if (found) shifts.set(found.vertex, found.shift);
    }
  });
  return shifts;
}

function sharedCorners(triangles: Uint32Array, f: number, g: number): number {
  let shared = 0;
  for (let k = 0; k < 3; k++) {
    const corner = triangles[f + k];
    if (corner === triangles[g] || corner === triangles[g + 1] || corner === triangles[g + 2]) shared++;
  }
  return shared;
}

/** The corner of g nearest to the plane of f on an edge that goes through f, with the way back. */
function pokingCorner(
  p: Float32Array,
  triangles: Uint32Array,
  f: number,
  g: number,
): { readonly vertex: number; readonly shift: Vector } | undefined {
  const corners = [triangles[f], triangles[f + 1], triangles[f + 2]];
  const raw = cross(between(p, corners[0], corners[1]), between(p, corners[0], corners[2]));
  const length = Math.hypot(...raw);
  if (!(length > 0)) return undefined;
  const normal: Vector = [raw[0] / length, raw[1] / length, raw[2] / length];
  for (let k = 0; k < 3; k++) {
    const a = triangles[g + k];
    const b = triangles[g + ((k + 1) % 3)];
    if (corners.includes(a) || corners.includes(b)) continue;
    const da = dot(normal, between(p, corners[0], a));
    const db = dot(normal, between(p, corners[0], b));
    if (!(da * db < 0) || !goesThrough(p, corners, normal, a, b, da / (da - db))) continue;
    const [vertex, depth] = Math.abs(da) < Math.abs(db) ? [a, da] : [b, db];
    if (Math.abs(depth) > deepest) continue;
    const by = -depth - Math.sign(depth) * Math.max(Math.abs(depth) / 2, clear);
    return { vertex, shift: [normal[0] * by, normal[1] * by, normal[2] * by] };
  }
  return undefined;
}

/** Whether the point a share `t` along the edge from a to b lies within the face. */
function goesThrough(
  p: Float32Array,
  corners: readonly number[],
  normal: Vector,
  a: number,
  b: number,
  t: number,
): boolean {
  const at = [0, 1, 2].map((axis) => p[a * 3 + axis] + t * (p[b * 3 + axis] - p[a * 3 + axis]));
  return corners.every((corner, k) => {
    const toPoint: Vector = [at[0] - p[corner * 3], at[1] - p[corner * 3 + 1], at[2] - p[corner * 3 + 2]];
    return dot(cross(between(p, corner, corners[(k + 1) % 3]), toPoint), normal) >= 0;
  });
}

const between = (p: Float32Array, a: number, b: number): Vector => [
  p[b * 3] - p[a * 3],
  p[b * 3 + 1] - p[a * 3 + 1],
  p[b * 3 + 2] - p[a * 3 + 2],
];
