import type { Body, Scope, TriangleMesh } from '../kernel/index.ts';
import type { Half } from './half.ts';

/** A face counts as overhung where its normal leans over by more than this (rad): steeper is a vertical wall. */
const leanRad = 1e-3;
/** How far the sweep begins inside the cavity, mm, so that it shares no face with it. */
const into = 0.02;

/**
 * What keeps a rigid casting from leaving a half straight through the parting surface: the material over (lower
 * half) or under (upper half) every face of the master that faces it. Each connected patch of such faces is swept
 * vertically to z = `end`, which must lie at or past the parting surface. Together with the cavity the union is the
 * cavity's sweep. Faces wholly past the parting surface `heightAt` are left out.
 * Patches that fold over themselves seen from above are swept face by face.
 */
export function reliefBodies(
  scope: Scope,
  mesh: TriangleMesh,
  half: Half,
  heightAt: (x: number, y: number) => number,
  end: number,
  what: string,
): Body[] {
  const up = half === 'lower' ? 1 : -1;
  const faces = overhungFaces(mesh, up, heightAt);
  return patchesOf(mesh, faces).flatMap((patch) => {
    const parts = foldsOver(scope, mesh, patch) ? patch.map((face) => [face]) : [patch];
    return parts.map((part) => scope.fromMesh(sweep(mesh, part, up, end), what));
  });
}

function overhungFaces(
  { positions: p, triangles }: TriangleMesh,
  up: number,
  heightAt: (x: number, y: number) => number,
): number[] {
  const least = Math.sin(leanRad);
  const before = (vertex: number): boolean =>
    up * (heightAt(p[vertex * 3], p[vertex * 3 + 1]) - p[vertex * 3 + 2]) > into;
  const faces: number[] = [];
  for (let face = 0; face < triangles.length; face += 3) {
    const [a, b, c] = [triangles[face], triangles[face + 1], triangles[face + 2]];
    const normal = crossOf(p, a, b, c);
    if (up * normal[2] <= least * Math.hypot(...normal)) continue;
    if (before(a) || before(b) || before(c)) faces.push(face);
  }
  return faces;
}

function crossOf(p: Float32Array, a: number, b: number, c: number): [number, number, number] {
  const u = [0, 1, 2].map((axis) => p[b * 3 + axis] - p[a * 3 + axis]);
  const v = [0, 1, 2].map((axis) => p[c * 3 + axis] - p[a * 3 + axis]);
  return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
}

/** Groups of faces joined by edges. */
function patchesOf({ triangles }: TriangleMesh, faces: readonly number[]): number[][] {
  const byEdge = new Map<string, number>();
  const edge = (a: number, b: number): string => `${a} ${b}`;
  for (const face of faces) {
    for (let k = 0; k < 3; k++) byEdge.set(edge(triangles[face + k], triangles[face + ((k + 1) % 3)]), face);
  }
  const seen = new Set<number>();
  const patches: number[][] = [];
  for (const first of faces) {
    if (seen.has(first)) continue;
    seen.add(first);
    const patch = [first];
    for (let i = 0; i < patch.length; i++) {
      for (let k = 0; k < 3; k++) {
        const next = byEdge.get(edge(triangles[patch[i] + ((k + 1) % 3)], triangles[patch[i] + k]));
        if (next === undefined || seen.has(next)) continue;
        seen.add(next);
        patch.push(next);
      }
    }
    patches.push(patch);
  }
  return patches;
}

/** Whether a patch covers some of the plane twice: then its faces' areas add up to more than their union. */
function foldsOver(scope: Scope, mesh: TriangleMesh, patch: readonly number[]): boolean {
  const { positions: p, triangles } = mesh;
  let sum = 0;
  const outlines = patch.map((face) => {
    const corners = [0, 1, 2].map((k) => triangles[face + k] * 3);
    const twice = crossOf(p, triangles[face], triangles[face + 1], triangles[face + 2])[2];
    sum += Math.abs(twice) / 2;
    const outline = corners.map((at) => [p[at], p[at + 1]] as const);
    return twice > 0 ? outline : outline.reverse();
  });
  return sum > scope.areaOf(outlines) * (1 + 1e-6) + 1e-6;
}

/** A patch with its copy at z = `end` and walls along its edge: a closed solid. */
function sweep(
  { positions: p, triangles }: TriangleMesh,
  patch: readonly number[],
  up: number,
  end: number,
): TriangleMesh {
  const corners = splitFans(triangles, patch);
  const count = corners.source.length;
  const positions = new Float32Array(count * 6);
  corners.source.forEach((vertex, index) => {
    const [x, y, z] = p.subarray(vertex * 3, vertex * 3 + 3);
    positions.set([x, y, z - up * into], index * 3);
    positions.set([x, y, end], (count + index) * 3);
  });
  const faces: number[] = [];
  const open = new Map<string, readonly [number, number]>();
  for (let i = 0; i < corners.faces.length; i += 3) {
    const [a, b, c] = corners.faces.slice(i, i + 3);
    // The master's faces look into the sweep, so the near end is turned over.
    faces.push(a, c, b, a + count, b + count, c + count);
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      if (!open.delete(`${to} ${from}`)) open.set(`${from} ${to}`, [from, to]);
    }
  }
  for (const [from, to] of open.values()) {
    faces.push(from, to, to + count, from, to + count, from + count);
  }
  return { positions, triangles: Uint32Array.from(faces) };
}

/**
 * The patch with one vertex for each fan of faces round it: where a patch only touches itself in a point, its sweep
 * would have an edge with four walls.
 */
function splitFans(
  triangles: Uint32Array,
  patch: readonly number[],
): { readonly source: number[]; readonly faces: number[] } {
  const parent = Array.from({ length: patch.length * 3 }, (_, i) => i);
  const root = (i: number): number => {
    let at = i;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  };
  const corner = (i: number): number => triangles[patch[Math.floor(i / 3)] + (i % 3)];
  const next = (i: number): number => i - (i % 3) + ((i + 1) % 3);
  const byEdge = new Map<string, number>();
  for (let i = 0; i < parent.length; i++) byEdge.set(`${corner(i)} ${corner(next(i))}`, i);
  for (let i = 0; i < parent.length; i++) {
    const mate = byEdge.get(`${corner(next(i))} ${corner(i)}`);
    if (mate === undefined) continue;
    parent[root(i)] = root(next(mate));
    parent[root(next(i))] = root(mate);
  }
  const index = new Map<number, number>();
  const source: number[] = [];
  const faces = parent.map((_, i) => {
    const fan = root(i);
    const known = index.get(fan);
    if (known !== undefined) return known;
    index.set(fan, source.length);
    source.push(corner(i));
    return source.length - 1;
  });
  return { source, faces };
}
