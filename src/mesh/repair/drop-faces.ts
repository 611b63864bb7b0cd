import { nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { faceMiddle } from './surface.ts';

export interface Dropped {
  readonly mesh: TriangleMesh;
  readonly dropped: number;
  /** The middle of one of the faces left out. */
  readonly place?: Vec3;
}

/** Leaves out faces of which two corners are the same point: they cover nothing and close nothing. */
export function dropCollapsed(mesh: TriangleMesh): Dropped {
  const { triangles } = mesh;
  const keep = new Uint8Array(triangles.length / 3);
  for (let face = 0; face < keep.length; face++) {
    const a = triangles[face * 3];
    const b = triangles[face * 3 + 1];
    const c = triangles[face * 3 + 2];
    keep[face] = a !== b && b !== c && c !== a ? 1 : 0;
  }
  return keepFaces(mesh, keep);
}

/**
 * Leaves out faces that are there more than once. Copies that look the same way count once. Copies that look
 * opposite ways are judged a whole patch at a time by the faces at the patch's rim: where each rim edge has one
 * more face, the patch is part of the skin, and one copy stays; where it has two, the patch is a wall between two
 * touching bodies, and all of it goes.
 */
export function dropDoubled(mesh: TriangleMesh): Dropped {
  const groups = groupsOfCopies(mesh.triangles);
  if (groups.length === 0) return { mesh, dropped: 0 };
  const keep = new Uint8Array(mesh.triangles.length / 3).fill(1);
  const folded: number[][] = [];
  for (const group of groups) {
    const ways = group.map((face) => looksLike(mesh.triangles, face, group[0]));
    const net = ways.reduce((sum, same) => sum + (same ? 1 : -1), 0);
    const stays = net === 0 ? group[0] : group[ways.indexOf(net > 0)];
    for (const face of group) keep[face] = face === stays ? 1 : 0;
    if (net === 0) folded.push(group);
  }
  for (const patch of wallPatches(mesh.triangles, folded, keep)) for (const face of patch) keep[face] = 0;
  return keepFaces(mesh, keep);
}

/** The mesh with only the marked faces, in their order. */
export function keepFaces(mesh: TriangleMesh, keep: Uint8Array): Dropped {
  const { positions, triangles } = mesh;
  const stay = keep.reduce((sum, flag) => sum + flag, 0);
  if (stay === keep.length) return { mesh, dropped: 0 };
  const left = new Uint32Array(stay * 3);
  let at = 0;
  for (let face = 0; face < keep.length; face++) {
    if (keep[face] === 0) continue;
    left[at++] = triangles[face * 3];
    left[at++] = triangles[face * 3 + 1];
    left[at++] = triangles[face * 3 + 2];
  }
  return {
    mesh: { positions, triangles: left },
    dropped: keep.length - stay,
    place: faceMiddle(mesh, keep.indexOf(0)),
  };
}

/** Faces over the same three points, two or more to a group, in file order. */
function groupsOfCopies(triangles: Uint32Array): number[][] {
  const count = triangles.length / 3;
  let size = 16;
  while (size < count * 1.6) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const groups = new Map<number, number[]>();
  for (let face = 0; face < count; face++) {
    let at = slotOf(triangles, face) & (size - 1);
    while (table[at] >= 0 && !sameCorners(triangles, table[at], face)) at = (at + 1) & (size - 1);
    const first = table[at];
    if (first < 0) {
      table[at] = face;
      continue;
    }
    const group = groups.get(first);
    if (group) group.push(face);
    else groups.set(first, [first, face]);
  }
  return [...groups.values()];
}

// The same for every order of the corners.
function slotOf(triangles: Uint32Array, face: number): number {
  const mix = (v: number): number => {
    const h = Math.imul(v ^ (v >>> 16), 0x45d9f3b);
    return h ^ (h >>> 13);
  };
  const sum = mix(triangles[face * 3]) + mix(triangles[face * 3 + 1]) + mix(triangles[face * 3 + 2]);
  return mix(sum | 0);
}

function sameCorners(triangles: Uint32Array, a: number, b: number): boolean {
  for (let k = 0; k < 3; k++) {
    const v = triangles[a * 3 + k];
    if (v !== triangles[b * 3] && v !== triangles[b * 3 + 1] && v !== triangles[b * 3 + 2]) return false;
  }
  return true;
}

/** True where two faces over the same points run round them the same way. */
function looksLike(triangles: Uint32Array, a: number, b: number): boolean {
  const first = triangles[a * 3];
  const k = [0, 1, 2].find((corner) => triangles[b * 3 + corner] === first) ?? 0;
  return triangles[a * 3 + 1] === triangles[b * 3 + ((k + 1) % 3)];
}

/** Patches of folded faces that are walls: more rim edges with two other faces than with one. */
function wallPatches(triangles: Uint32Array, folded: readonly number[][], keep: Uint8Array): number[][] {
  if (folded.length === 0) return [];
  const patchOf = new Map<number, number>(folded.map((group) => [group[0], group[0]]));
  const root = (face: number): number => {
    let at = face;
    for (let up = patchOf.get(at) ?? at; up !== at; up = patchOf.get(at) ?? at) at = up;
    return at;
  };
  const edges = facesAtEdges(triangles, patchOf, keep);
  for (const { folded: mine } of edges.values()) {
    for (const face of mine) patchOf.set(root(face), root(mine[0]));
  }
  const votes = new Map<number, number>();
  for (const { folded: mine, others } of edges.values()) {
    if (others === 0) continue;
    const patch = root(mine[0]);
    votes.set(patch, (votes.get(patch) ?? 0) + (others % 2 === 0 ? 1 : -1));
  }
  return folded.map((group) => ((votes.get(root(group[0])) ?? 0) > 0 ? [group[0]] : []));
}

/** For each edge of a folded face: the folded faces there (one a group) and how many other faces stay there. */
function facesAtEdges(triangles: Uint32Array, patchOf: ReadonlyMap<number, number>, keep: Uint8Array) {
  const edges = new Map<string, { folded: number[]; others: number }>();
  const keyOf = (h: number): string => {
    const a = triangles[h];
    const b = triangles[nextCorner(h)];
    return a < b ? `${a},${b}` : `${b},${a}`;
  };
  for (const face of patchOf.keys()) {
    for (let k = 0; k < 3; k++) {
      const key = keyOf(face * 3 + k);
      const edge = edges.get(key);
      if (edge) edge.folded.push(face);
      else edges.set(key, { folded: [face], others: 0 });
    }
  }
  for (let h = 0; h < triangles.length; h++) {
    const face = Math.floor(h / 3);
    if (keep[face] === 0 || patchOf.has(face)) continue;
    const edge = edges.get(keyOf(h));
    if (edge) edge.others++;
  }
  return edges;
}
