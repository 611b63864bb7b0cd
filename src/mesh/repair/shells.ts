import type { Bounds, TriangleMesh, Vec3 } from '../../geometry/index.ts';
import { type EdgePairs, pairEdges } from './edges.ts';
import { faceVolume } from './surface.ts';

/** Parts of a mesh that share no edge with one another (two may touch in a point). `of[face]` is the shell a face belongs to. */
export interface Shells {
  readonly of: Uint32Array;
  readonly count: number;
  /** Signed volume (mm3, negative where the faces look inward), face count and box of each. */
  readonly volumes: Float64Array;
  readonly faces: Uint32Array;
  /** Face numbers shell by shell, and where each shell's begin (count + 1 entries). */
  readonly order: Uint32Array;
  readonly starts: Uint32Array;
  readonly bounds: readonly Bounds[];
}

/** Splits a mesh into shells, in the order of their first faces. Volumes hold for closed shells. */
export function findShells(mesh: TriangleMesh, pairs = pairsOf(mesh)): Shells {
  const { positions, triangles } = mesh;
  const parent = joinFaces(pairs.twin);
  const shellAt = new Int32Array(parent.length).fill(-1);
  const of = new Uint32Array(triangles.length / 3);
  const boxes: [number, number, number, number, number, number][] = [];
  const faces: number[] = [];
  for (let face = 0; face < of.length; face++) {
    const top = topOf(parent, face);
    if (shellAt[top] < 0) {
      shellAt[top] = boxes.length;
      boxes.push([Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]);
      faces.push(0);
    }
    const shell = shellAt[top];
    of[face] = shell;
    faces[shell]++;
    const box = boxes[shell];
    for (let h = face * 3; h < face * 3 + 3; h++) {
      for (let axis = 0; axis < 3; axis++) {
        const value = positions[triangles[h] * 3 + axis];
        if (value < box[axis]) box[axis] = value;
        if (value > box[axis + 3]) box[axis + 3] = value;
      }
    }
  }
  // Measured from the middle of each box, so that a shell with a hole gives a fair guess too.
  const middles = boxes.map((b): Vec3 => [(b[0] + b[3]) / 2, (b[1] + b[4]) / 2, (b[2] + b[5]) / 2]);
  const volumes = new Float64Array(boxes.length);
  for (let face = 0; face < of.length; face++) {
    volumes[of[face]] += faceVolume(positions, triangles, face, middles[of[face]]);
  }
  return {
    of,
    count: boxes.length,
    volumes,
    faces: Uint32Array.from(faces),
    ...byShell(of, faces),
    bounds: boxes.map((b) => ({ min: [b[0], b[1], b[2]], max: [b[3], b[4], b[5]] })),
  };
}

function byShell(of: Uint32Array, faces: readonly number[]) {
  const starts = new Uint32Array(faces.length + 1);
  for (let shell = 0; shell < faces.length; shell++) starts[shell + 1] = starts[shell] + faces[shell];
  const fill = starts.slice();
  const order = new Uint32Array(of.length);
  for (let face = 0; face < of.length; face++) order[fill[of[face]]++] = face;
  return { starts, order };
}

/** One shell as a mesh of its own; with `insideOut` its faces are turned over. */
export function shellMesh(
  mesh: TriangleMesh,
  shells: Shells,
  shell: number,
  insideOut = false,
): TriangleMesh {
  const number = new Map<number, number>();
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const face of shells.order.subarray(shells.starts[shell], shells.starts[shell + 1])) {
    for (const k of insideOut ? [0, 2, 1] : [0, 1, 2]) {
      const v = mesh.triangles[face * 3 + k];
      let at = number.get(v);
      if (at === undefined) {
        at = number.size;
        number.set(v, at);
        positions.push(mesh.positions[v * 3], mesh.positions[v * 3 + 1], mesh.positions[v * 3 + 2]);
      }
      triangles.push(at);
    }
  }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Whether two boxes have a point in common. */
export const boxesMeet = (a: Bounds, b: Bounds): boolean =>
  [0, 1, 2].every((axis) => a.min[axis] <= b.max[axis] && b.min[axis] <= a.max[axis]);

const pairsOf = ({ positions, triangles }: TriangleMesh): EdgePairs =>
  pairEdges(triangles, positions.length / 3);

function joinFaces(twin: Int32Array): Uint32Array {
  const parent = new Uint32Array(twin.length / 3);
  for (let face = 0; face < parent.length; face++) parent[face] = face;
  for (let h = 0; h < twin.length; h++) {
    // Each pair once, from its later half.
    if (twin[h] < 0 || twin[h] > h) continue;
    const a = topOf(parent, Math.floor(h / 3));
    const b = topOf(parent, Math.floor(twin[h] / 3));
    if (a < b) parent[b] = a;
    else parent[a] = b;
  }
  return parent;
}

function topOf(parent: Uint32Array, face: number): number {
  let at = face;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]];
    at = parent[at];
  }
  return at;
}
