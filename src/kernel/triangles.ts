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
  const min = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY] as [
    number,
    number,
    number,
  ];
  const max = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY] as [
    number,
    number,
    number,
  ];
  for (let i = 0; i < positions.length; i += 3) {
    for (let axis = 0; axis < 3; axis++) {
      const value = positions[i + axis];
      if (value < min[axis]) min[axis] = value;
      if (value > max[axis]) max[axis] = value;
    }
  }
  return { min, max };
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
