import type { TriangleMesh } from './triangles.ts';

/** Faces lower than this (mm) over their longest edge are looked at: wider ones the kernel does not get wrong. */
const sliver = 0.03;
/** Crossings deeper than this (mm) are the shape's own and not ours to change. */
const deepest = 1e-3;
/** How far past the face a vertex is put at least, mm: some float32 steps. */
const clear = 2e-5;
const cell = 0.25;
/** Faces longer than this (mm) are not looked at: the cut along a master has none. */
const longest = 3;
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

type Vector = readonly [number, number, number];

/** What to add to which vertex. */
export function crossingShifts(p: Float32Array, triangles: Uint32Array): Map<number, Vector> {
  const slivers = sliversByCell(p, triangles);
  const shifts = new Map<number, Vector>();
  for (let face = 0; face < triangles.length; face += 3) {
    const box = boxOf(p, triangles, face);
    if (!box) continue;
    for (const other of facesNear(slivers, box)) {
      if (other === face || apart(box, boxOf(p, triangles, other))) continue;
      for (const [f, g] of [
        [face, other],
        [other, face],
      ]) {
        const found = pokingCorner(p, triangles, f, g);
        if (found) shifts.set(found.vertex, found.shift);
      }
    }
  }
  return shifts;
}

const none: ReadonlySet<number> = new Set();

function facesNear(cells: ReadonlyMap<number, number[]>, box: Box): ReadonlySet<number> {
  let near: Set<number> | undefined;
  for (const key of cellsIn(box)) {
    const faces = cells.get(key);
    if (!faces) continue;
    near ??= new Set();
    for (const face of faces) near.add(face);
  }
  return near ?? none;
}

type Box = readonly [number, number, number, number, number, number];

/** Least and greatest x, y, z of a face; undefined for long faces. */
function boxOf(p: Float32Array, triangles: Uint32Array, face: number): Box | undefined {
  const a = triangles[face] * 3;
  const b = triangles[face + 1] * 3;
  const c = triangles[face + 2] * 3;
  const x0 = Math.min(p[a], p[b], p[c]);
  const x1 = Math.max(p[a], p[b], p[c]);
  const y0 = Math.min(p[a + 1], p[b + 1], p[c + 1]);
  const y1 = Math.max(p[a + 1], p[b + 1], p[c + 1]);
  const z0 = Math.min(p[a + 2], p[b + 2], p[c + 2]);
  const z1 = Math.max(p[a + 2], p[b + 2], p[c + 2]);
  if (x1 - x0 > longest || y1 - y0 > longest || z1 - z0 > longest) return undefined;
  return [x0, y0, z0, x1, y1, z1];
}

const apart = (a: Box, b: Box | undefined): boolean =>
  !b || a[0] > b[3] || b[0] > a[3] || a[1] > b[4] || b[1] > a[4] || a[2] > b[5] || b[2] > a[5];

/** Keys of the grid's cells a box touches. Two cells may have one key: that costs a look, no more. */
function cellsIn([x0, y0, z0, x1, y1, z1]: Box): number[] {
  const keys: number[] = [];
  for (let i = Math.floor(x0 / cell); i <= x1 / cell; i++) {
    for (let j = Math.floor(y0 / cell); j <= y1 / cell; j++) {
      for (let k = Math.floor(z0 / cell); k <= z1 / cell; k++) {
        keys.push((Math.imul(i, 73856093) ^ Math.imul(j, 19349663) ^ Math.imul(k, 83492791)) | 0);
      }
    }
  }
  return keys;
}

function sliversByCell(p: Float32Array, triangles: Uint32Array): ReadonlyMap<number, number[]> {
  const cells = new Map<number, number[]>();
  for (let face = 0; face < triangles.length; face += 3) {
    if (!isSliver(p, triangles, face)) continue;
    const box = boxOf(p, triangles, face);
    if (!box) continue;
    for (const key of cellsIn(box)) {
      const faces = cells.get(key);
      if (faces) faces.push(face);
      else cells.set(key, [face]);
    }
  }
  return cells;
}

function isSliver(p: Float32Array, triangles: Uint32Array, face: number): boolean {
  const edges = [0, 1, 2].map((k) => between(p, triangles[face + k], triangles[face + ((k + 1) % 3)]));
  const twice = Math.hypot(...cross(edges[0], edges[1]));
  return twice < sliver * Math.max(...edges.map((edge) => Math.hypot(...edge)));
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

const cross = (u: Vector, v: Vector): Vector => [
  u[1] * v[2] - u[2] * v[1],
  u[2] * v[0] - u[0] * v[2],
  u[0] * v[1] - u[1] * v[0],
];

const dot = (u: Vector, v: Vector): number => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
