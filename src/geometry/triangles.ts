/** A point or vector: x, y, z in mm (unless said otherwise). */
export type Vec3 = readonly [number, number, number];

/**
 * An indexed triangle mesh in mm. `positions` holds x, y, z per vertex; `triangles` holds three vertex indices
 * per face, counter-clockwise seen from outside. Plain data: can be sent to a worker or hashed.
 */
export interface TriangleMesh {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
}

export interface Bounds {
  readonly min: Vec3;
  readonly max: Vec3;
}

export const triangleCount = (mesh: TriangleMesh): number => mesh.triangles.length / 3;

/** The box round all vertices. An empty mesh gives an inverted box (min = +Infinity). */
export function boundsOf(positions: ArrayLike<number>): Bounds {
  let [left, front, low] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [right, back, high] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < positions.length; i += 3) {
    const x = positions[i];
    const y = positions[i + 1];
    const z = positions[i + 2];
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < front) front = y;
    if (y > back) back = y;
    if (z < low) low = z;
    if (z > high) high = z;
  }
  return { min: [left, front, low], max: [right, back, high] };
}

/** Joins meshes into one without uniting them; right for meshes known to be disjoint. */
export function joinMeshes(meshes: readonly TriangleMesh[]): TriangleMesh {
  const positions = new Float32Array(meshes.reduce((sum, mesh) => sum + mesh.positions.length, 0));
  const triangles = new Uint32Array(meshes.reduce((sum, mesh) => sum + mesh.triangles.length, 0));
  let vertexAt = 0;
  let indexAt = 0;
  for (const mesh of meshes) {
    positions.set(mesh.positions, vertexAt * 3);
    for (let i = 0; i < mesh.triangles.length; i++) {
      triangles[indexAt + i] = mesh.triangles[i] + vertexAt;
    }
    vertexAt += mesh.positions.length / 3;
    indexAt += mesh.triangles.length;
  }
  return { positions, triangles };
}

/** The next corner of the same face. */
export const nextCorner = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);

/** The corner before, of the same face. */
export const lastCorner = (h: number): number => (h % 3 === 0 ? h + 2 : h - 1);
