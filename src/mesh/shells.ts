import type { Bounds, TriangleMesh, Vec3 } from '../kernel/index.ts';
import { faceVolume } from './surface.ts';

/** Parts of a mesh that share no point with one another. `of[face]` is the shell a face belongs to. */
export interface Shells {
  readonly of: Uint32Array;
  readonly count: number;
  /** Signed volume (mm3, negative where the faces look inward), face count and box of each. */
  readonly volumes: Float64Array;
  readonly faces: Uint32Array;
  readonly bounds: readonly Bounds[];
}

/** Splits a mesh into shells, in the order of their first faces. Volumes hold for closed shells. */
export function findShells({ positions, triangles }: TriangleMesh): Shells {
  const parent = joinCorners(positions.length / 3, triangles);
  const shellAt = new Int32Array(parent.length).fill(-1);
  const of = new Uint32Array(triangles.length / 3);
  const boxes: [number, number, number, number, number, number][] = [];
  const faces: number[] = [];
  for (let face = 0; face < of.length; face++) {
    const top = topOf(parent, triangles[face * 3]);
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
    bounds: boxes.map((b) => ({ min: [b[0], b[1], b[2]], max: [b[3], b[4], b[5]] })),
  };
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
  for (let face = 0; face < shells.of.length; face++) {
    if (shells.of[face] !== shell) continue;
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

function joinCorners(vertexCount: number, triangles: Uint32Array): Uint32Array {
  const parent = new Uint32Array(vertexCount);
  for (let v = 0; v < vertexCount; v++) parent[v] = v;
  for (let h = 0; h < triangles.length; h += 3) {
    const a = topOf(parent, triangles[h]);
    for (let k = 1; k < 3; k++) {
      const b = topOf(parent, triangles[h + k]);
      const root = topOf(parent, a);
      if (b < root) parent[root] = b;
      else if (root < b) parent[b] = root;
    }
  }
  return parent;
}

function topOf(parent: Uint32Array, v: number): number {
  let at = v;
  while (parent[at] !== at) {
    parent[at] = parent[parent[at]];
    at = parent[at];
  }
  return at;
}
