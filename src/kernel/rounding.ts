import type { TriangleMesh } from '../geometry/index.ts';
import { collapseShortEdges } from './coincident-edges.ts';
import { dropDoubleFaces } from './double-faces.ts';
import { flipFlatFaces } from './flat-faces.ts';

/** How far a vertex is moved that fell on another one by rounding, mm: over a float32 step, under any process. */
const nudge = 1e-4;
const rounds = 16;

/** Steps per mm, a power of two: exact in float32 below 16 mm, where a float32 step is finer than this, not above. */
const stepsPerMm = 2 ** 20;

/**
 * Coordinates in whole steps of 2^-20 mm. A boolean leaves points a few 1e-9 mm beside the plane they were cut in;
 * near zero float32 would keep that, so that a flat face were not quite flat.
 */
export function onGrid({ positions, triangles }: TriangleMesh): TriangleMesh {
  // + 0 turns -0 into 0.
  return { positions: positions.map((value) => Math.round(value * stepsPerMm) / stepsPerMm + 0), triangles };
}

/**
 * Makes a closed indexed mesh stay closed when it is written as a soup of float32 corners and welded again by exact
 * equality. Fins without thickness go. Vertices joined by an edge that fell on one point become one; other vertices that share a position are
 * moved 1e-4 mm along their normal; faces that became flat (three corners on one line) are turned away by swapping
 * the long edge. The surface moves by at most a few 1e-4 mm. Deterministic; a sound mesh comes back unchanged.
 */
export function closedAfterRounding(mesh: TriangleMesh): TriangleMesh {
  const vertices = mesh.positions.length / 3;
  let triangles = dropDoubleFaces(collapseShortEdges(mesh), vertices);
  const positions = separate({ positions: mesh.positions, triangles });
  triangles = flipFlatFaces({ positions, triangles });
  return positions === mesh.positions && triangles === mesh.triangles
    ? mesh
    : withoutUnused({ positions, triangles });
}

/** Moves vertices that share a position with another one in use until none do. */
function separate(mesh: TriangleMesh): Float32Array {
  let { positions } = mesh;
  for (let round = 1; round <= rounds; round++) {
    const doubles = sharedPositions(positions, mesh.triangles);
    if (doubles.length === 0) return positions;
    if (positions === mesh.positions) positions = positions.slice();
    const normals = normalsAt(doubles, positions, mesh.triangles);
    for (const [index, vertex] of doubles.entries()) {
      // A later round goes farther and to the other side: two doubles may have met again.
      const step = nudge * (round % 2 ? round : -round);
      for (let axis = 0; axis < 3; axis++) positions[vertex * 3 + axis] += step * normals[index][axis];
    }
  }
  return positions;
}

/** Every vertex in use, but the first, of each group at one position. */
export function sharedPositions(positions: Float32Array, triangles: Uint32Array): number[] {
  const used = new Uint8Array(positions.length / 3);
  for (const vertex of triangles) used[vertex] = 1;
  // + 0 turns -0 into 0: readers compare numbers, and 0 equals -0.
  const plain = positions.map((value) => value + 0);
  const bits = new Int32Array(plain.buffer, plain.byteOffset, plain.length);
  let size = 16;
  while (size < used.length * 2) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const doubles: number[] = [];
  for (let vertex = 0; vertex < used.length; vertex++) {
    if (!used[vertex]) continue;
    const at = vertex * 3;
    let slot = scatter(bits[at], bits[at + 1], bits[at + 2]) & (size - 1);
    for (;;) {
      const other = table[slot];
      if (other < 0) {
        table[slot] = at;
        break;
      }
      if (bits[other] === bits[at] && bits[other + 1] === bits[at + 1] && bits[other + 2] === bits[at + 2]) {
        doubles.push(vertex);
        break;
      }
      slot = (slot + 1) & (size - 1);
    }
  }
  return doubles;
}

const scatter = (x: number, y: number, z: number): number => {
  let hash = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca77) ^ Math.imul(z, 0xc2b2ae3d);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return (hash ^ (hash >>> 13)) >>> 0;
};

type Direction = [number, number, number];

/** Area-weighted unit normals of a few vertices; along x where the faces cancel out. */
function normalsAt(
  vertices: readonly number[],
  positions: Float32Array,
  triangles: Uint32Array,
): readonly Direction[] {
  const sums = new Map(vertices.map((vertex) => [vertex, [0, 0, 0] as Direction]));
  for (let face = 0; face < triangles.length; face += 3) {
    for (let k = 0; k < 3; k++) {
      const sum = sums.get(triangles[face + k]);
      if (sum)
        faceNormal(positions, triangles, face).forEach((value, axis) => {
          sum[axis] += value;
        });
    }
  }
  return vertices.map((vertex) => {
    const [x, y, z] = sums.get(vertex) as Direction;
    const length = Math.hypot(x, y, z);
    return length > 0 ? [x / length, y / length, z / length] : [1, 0, 0];
  });
}

function faceNormal(p: Float32Array, triangles: Uint32Array, face: number): Direction {
  const [a, b, c] = [triangles[face] * 3, triangles[face + 1] * 3, triangles[face + 2] * 3];
  const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
  const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** Drops vertices no face uses, keeping the order of the others. */
function withoutUnused({ positions, triangles }: TriangleMesh): TriangleMesh {
  const next = new Int32Array(positions.length / 3).fill(-1);
  for (const vertex of triangles) next[vertex] = 0;
  let count = 0;
  for (let vertex = 0; vertex < next.length; vertex++) if (next[vertex] === 0) next[vertex] = count++;
  if (count === next.length) return { positions, triangles };
  const kept = new Float32Array(count * 3);
  for (let vertex = 0; vertex < next.length; vertex++) {
    if (next[vertex] >= 0) kept.set(positions.subarray(vertex * 3, vertex * 3 + 3), next[vertex] * 3);
  }
  return { positions: kept, triangles: triangles.map((vertex) => next[vertex]) };
}
