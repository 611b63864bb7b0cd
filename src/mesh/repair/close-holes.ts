import { boundsOf, midpoint, nextCorner, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { boundaryLoops } from './boundary-loops.ts';
import { type EdgePairs, openEdge } from './edges.ts';
import { newellVector, spanLoop, triangleArea } from './span-loop.ts';
import { areaVector, sizeOf } from './surface.ts';

export interface ClosedHoles {
  readonly mesh: TriangleMesh;
  readonly closed: number;
  /** Faces added; they are the last ones of the mesh. */
  readonly added: number;
  /** Area of the faces added, mm2, and the width (mm) and middle of the widest hole closed. */
  readonly area: number;
  readonly widest: number;
  /** Farthest (mm) the middle of an added face lies from the rim of its hole. */
  readonly farthest: number;
  readonly place?: Vec3;
  /** Holes left open: wider than the limit and not flat, not to be spanned, or no hole but the rim of a strip. */
  readonly left: number;
}

/** A hole whose points keep this share of its width to one plane counts as flat and may be of any width. */
const flatShare = 0.03;

/** Where patches that are not flat would be more than this share of the surface, it is torn: they are not holes. */
const tornShare = 0.25;

interface Patch {
  /** Vertices round the hole, and faces as numbers into them. */
  readonly points: readonly number[];
  readonly faces: readonly number[];
  readonly area: number;
  readonly width: number;
  readonly flat: boolean;
}

/**
 * Spans holes no wider than `limit` mm, and flat ones of any width (a part cut off at its base). A hole's width is
 * 4 x area / perimeter: the diameter of a round hole, twice the width of a crack however long. Of a surface torn all
 * over only flat holes are spanned.
 */
export function closeHoles(mesh: TriangleMesh, pairs: EdgePairs, limit: number): ClosedHoles {
  const loops = boundaryLoops(mesh.triangles, pairs);
  const edges = edgesAt(mesh.triangles, new Set(loops.flat()));
  const rim = openEdges(mesh.triangles, pairs);
  const patches: Patch[] = [];
  for (const loop of loops) {
    const patch = patchOver(mesh.positions, loop, edges);
    if (!patch || (patch.width > limit && !patch.flat) || foldsBack(mesh, loop, patch.faces, rim)) continue;
    patches.push(patch);
    for (let i = 0; i < patch.faces.length; i++) {
      edges.add(edgeKey(loop[patch.faces[i]], loop[patch.faces[nextCorner(i)]]));
    }
  }
  const bent = patches.reduce((sum, { flat, area }) => sum + (flat ? 0 : area), 0);
  const torn = bent > tornShare * sizeOf(mesh).area;
  const used = torn ? patches.filter(({ flat }) => flat) : patches;
  return addPatches(mesh, used, loops.length - used.length);
}

function addPatches(mesh: TriangleMesh, patches: readonly Patch[], left: number): ClosedHoles {
  const added = patches.flatMap(({ points, faces }) => faces.map((i) => points[i]));
  const tally = { closed: patches.length, added: added.length / 3, area: 0, widest: 0, farthest: 0, left };
  let place: Vec3 | undefined;
  for (const { points, faces, area, width } of patches) {
    if (place === undefined || width > tally.widest) place = middleOf(mesh.positions, points);
    tally.area += area;
    tally.widest = Math.max(tally.widest, width);
    tally.farthest = Math.max(tally.farthest, farthestFromRim(mesh.positions, points, faces));
  }
  if (place === undefined) return { mesh, ...tally };
  const triangles = new Uint32Array(mesh.triangles.length + added.length);
  triangles.set(mesh.triangles);
  triangles.set(added, mesh.triangles.length);
  return { mesh: { positions: mesh.positions, triangles }, ...tally, place };
}

const edgeKey = (a: number, b: number): string => (a < b ? `${a},${b}` : `${b},${a}`);

/** All edges that run between two of the given vertices. */
function edgesAt(triangles: Uint32Array, vertices: ReadonlySet<number>): Set<string> {
  const edges = new Set<string>();
  if (vertices.size === 0) return edges;
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h];
    const b = triangles[nextCorner(h)];
    if (vertices.has(a) && vertices.has(b)) edges.add(edgeKey(a, b));
  }
  return edges;
}

function patchOver(positions: Float32Array, loop: readonly number[], edges: Set<string>): Patch | undefined {
  const points = loop.map((v): Vec3 => [positions[v * 3], positions[v * 3 + 1], positions[v * 3 + 2]]);
  const faces = spanLoop(points, (i, j) => edges.has(edgeKey(loop[i], loop[j])));
  if (faces === undefined) return undefined;
  let area = 0;
  for (let i = 0; i < faces.length; i += 3) {
    area += triangleArea(points[faces[i]], points[faces[i + 1]], points[faces[i + 2]]);
  }
  let perimeter = 0;
  for (let i = 0; i < points.length; i++) {
    const [ax, ay, az] = points[i];
    const [bx, by, bz] = points[(i + 1) % points.length];
    perimeter += Math.hypot(bx - ax, by - ay, bz - az);
  }
  const width = perimeter > 0 ? (4 * area) / perimeter : 0;
  return { points: loop, faces, area, width, flat: isFlat(points, width) };
}

/** Open half-edges by their ends. */
function openEdges(triangles: Uint32Array, { twin }: EdgePairs): Map<string, number> {
  const open = new Map<string, number>();
  for (let h = 0; h < triangles.length; h++) {
    if (twin[h] === openEdge) open.set(`${triangles[h]},${triangles[nextCorner(h)]}`, h);
  }
  return open;
}

/**
 * True where a patch lies back to back with the faces at most of its rim: the chain then runs round a loose strip
 * of skin, not round a hole in it, and spanning it would shut the strip on itself.
 */
function foldsBack(
  mesh: TriangleMesh,
  loop: readonly number[],
  faces: readonly number[],
  rim: ReadonlyMap<string, number>,
): boolean {
  const corners = Uint32Array.from(faces, (i) => loop[i]);
  let back = 0;
  let length = 0;
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i];
    const b = corners[nextCorner(i)];
    const border = rim.get(`${b},${a}`);
    if (border === undefined) continue;
    const [nx, ny, nz] = areaVector(mesh.positions, corners, Math.floor(i / 3));
    const [mx, my, mz] = areaVector(mesh.positions, mesh.triangles, Math.floor(border / 3));
    const size = Math.hypot(nx, ny, nz) * Math.hypot(mx, my, mz);
    const edge = Math.hypot(
      ...[0, 1, 2].map((axis) => mesh.positions[a * 3 + axis] - mesh.positions[b * 3 + axis]),
    );
    length += edge;
    // Less than 10 degrees between the two sheets.
    if (nx * mx + ny * my + nz * mz < -0.985 * size) back += edge;
  }
  return back > length / 2;
}

function isFlat(points: readonly Vec3[], width: number): boolean {
  const n = newellVector(points);
  const length = Math.hypot(...n);
  if (length === 0) return false;
  const heights = points.map((p) => (p[0] * n[0] + p[1] * n[1] + p[2] * n[2]) / length);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const h of heights) {
    low = Math.min(low, h);
    high = Math.max(high, h);
  }
  return high - low <= flatShare * width;
}

function middleOf(positions: Float32Array, loop: readonly number[]): Vec3 {
  const points = loop.flatMap((v) => [...positions.subarray(v * 3, v * 3 + 3)]);
  const { min, max } = boundsOf(points);
  return midpoint(min, max);
}

/** Greatest distance from the middle of a face of the patch to the rim; of a large patch only some faces are asked. */
function farthestFromRim(positions: Float32Array, loop: readonly number[], faces: readonly number[]): number {
  const at = (i: number): Vec3 => {
    const v = loop[i % loop.length] * 3;
    return [positions[v], positions[v + 1], positions[v + 2]];
  };
  const step = Math.ceil(faces.length / 3 / 300) * 3;
  let farthest = 0;
  for (let f = 0; f < faces.length; f += step) {
    const corners = [at(faces[f]), at(faces[f + 1]), at(faces[f + 2])];
    const middle = [0, 1, 2].map((axis) => corners.reduce((sum, p) => sum + p[axis] / 3, 0));
    let nearest = Number.POSITIVE_INFINITY;
    for (let i = 0; i < loop.length; i++) nearest = Math.min(nearest, toSegment(middle, at(i), at(i + 1)));
    farthest = Math.max(farthest, nearest);
  }
  return farthest;
}

function toSegment(p: readonly number[], a: Vec3, b: Vec3): number {
  const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const w = [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
  const uu = u[0] * u[0] + u[1] * u[1] + u[2] * u[2];
  const t = uu > 0 ? Math.max(0, Math.min(1, (u[0] * w[0] + u[1] * w[1] + u[2] * w[2]) / uu)) : 0;
  return Math.hypot(w[0] - t * u[0], w[1] - t * u[1], w[2] - t * u[2]);
}
