import { cross, dot, nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type EdgePairs, nonManifoldEdge } from './edges.ts';

export interface EdgesSplit {
  readonly mesh: TriangleMesh;
  /** Non-manifold edges whose sheets were told apart. */
  readonly split: number;
  readonly place?: Vec3;
}

/**
 * Tells sheets apart that meet in one edge (two blocks that touch along an edge): round such an edge every stretch
 * of material has a face where it begins and one where it ends; these two are neighbours. The edge's points are
 * then there once for each sheet, in the same place. Edges that are not run through equally often both ways are
 * left as they are.
 */
export function splitNonManifoldEdges(mesh: TriangleMesh, pairs: EdgePairs): EdgesSplit {
  if (pairs.nonManifold === 0) return { mesh, split: 0 };
  const twin = pairs.twin.slice();
  const edges = nonManifoldEdges(mesh.triangles, twin);
  const vertices = new Set<number>();
  let split = 0;
  let place: Vec3 | undefined;
  for (const halves of edges) {
    const couples = coupleByAngle(mesh, halves);
    if (couples === undefined) continue;
    for (const [a, b] of couples) {
      twin[a] = b;
      twin[b] = a;
    }
    const u = mesh.triangles[halves[0]];
    const v = mesh.triangles[nextCorner(halves[0])];
    vertices.add(u).add(v);
    place ??= [0, 1, 2].map(
      (axis) => (mesh.positions[u * 3 + axis] + mesh.positions[v * 3 + axis]) / 2,
    ) as unknown as Vec3;
    split++;
  }
  if (place === undefined) return { mesh, split: 0 };
  return { mesh: splitFans(mesh, twin, vertices), split, place };
}

function nonManifoldEdges(triangles: Uint32Array, twin: Int32Array): number[][] {
  const edges = new Map<string, number[]>();
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] !== nonManifoldEdge) continue;
    const a = triangles[h];
    const b = triangles[nextCorner(h)];
    const key = a < b ? `${a},${b}` : `${b},${a}`;
    const halves = edges.get(key);
    if (halves) halves.push(h);
    else edges.set(key, [h]);
  }
  return [...edges.values()];
}

/** Pairs of half-edges with material between them, or undefined where they do not come out even. */
function coupleByAngle(mesh: TriangleMesh, halfEdges: readonly number[]): [number, number][] | undefined {
  const { triangles } = mesh;
  const u = triangles[halfEdges[0]];
  const around = angleAbout(mesh, u, triangles[nextCorner(halfEdges[0])]);
  const sorted = halfEdges
    .map((h) => ({ h, begins: triangles[h] !== u, angle: around(triangles[nextCorner(nextCorner(h))]) }))
    .sort((a, b) => a.angle - b.angle || Number(b.begins) - Number(a.begins) || a.h - b.h);
  const begun: number[] = [];
  const couples: [number, number][] = [];
  const early: number[] = [];
  for (const { h, begins } of sorted) {
    if (begins) begun.push(h);
    else {
      const start = begun.pop();
      if (start === undefined) early.push(h);
      else couples.push([start, h]);
    }
  }
  // Material that reaches across the angle where the sorting began.
  for (const h of early) {
    const start = begun.pop();
    if (start === undefined) return undefined;
    couples.push([start, h]);
  }
  return begun.length === 0 ? couples : undefined;
}

/** Angle of a point about the axis u -> v; a face that runs u -> v has its material at smaller angles. */
function angleAbout({ positions }: TriangleMesh, u: number, v: number): (w: number) => number {
  const at = (vertex: number): Vec3 => [
    positions[vertex * 3] - positions[u * 3],
    positions[vertex * 3 + 1] - positions[u * 3 + 1],
    positions[vertex * 3 + 2] - positions[u * 3 + 2],
  ];
  const axis = at(v);
  const length = Math.hypot(...axis);
  const d: Vec3 = [axis[0] / length, axis[1] / length, axis[2] / length];
  const least = d.map(Math.abs).indexOf(Math.min(...d.map(Math.abs)));
  const e = cross(d, [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0]);
  const f = cross(d, e);
  return (w) => Math.atan2(dot(at(w), f), dot(at(w), e));
}

/** Gives each fan of faces round the given vertices a point of its own. */
function splitFans(mesh: TriangleMesh, twin: Int32Array, vertices: ReadonlySet<number>): TriangleMesh {
  const triangles = mesh.triangles.slice();
  const corners = new Map<number, number[]>();
  for (let h = 0; h < triangles.length; h++) {
    if (!vertices.has(triangles[h])) continue;
    const list = corners.get(triangles[h]);
    if (list) list.push(h);
    else corners.set(triangles[h], [h]);
  }
  const extra: number[] = [];
  const original = mesh.triangles;
  for (const [vertex, list] of corners) {
    const seen = new Set<number>();
    let first = true;
    for (const seed of list) {
      if (seen.has(seed)) continue;
      const fan = fanOf(original, twin, seed, vertex);
      for (const h of fan) seen.add(h);
      if (!first) {
        for (const h of fan) triangles[h] = mesh.positions.length / 3 + extra.length / 3;
        extra.push(...mesh.positions.subarray(vertex * 3, vertex * 3 + 3));
      }
      first = false;
    }
  }
  const positions = new Float32Array(mesh.positions.length + extra.length);
  positions.set(mesh.positions);
  positions.set(extra, mesh.positions.length);
  return { positions, triangles };
}

/** Corners at `vertex` reached from one of them across paired edges. */
function fanOf(triangles: Uint32Array, twin: Int32Array, seed: number, vertex: number): number[] {
  const fan = new Set([seed]);
  for (const h of fan) {
    for (const side of [h, nextCorner(nextCorner(h))]) {
      const other = twin[side];
      if (other < 0) continue;
      fan.add(triangles[other] === vertex ? other : nextCorner(other));
    }
  }
  return [...fan];
}
