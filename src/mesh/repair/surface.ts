import { sidesCrossed, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';

/** Area of one face, mm2. */
export function faceArea({ positions, triangles }: TriangleMesh, face: number): number {
  const [nx, ny, nz] = areaVector(positions, triangles, face);
  return Math.hypot(nx, ny, nz);
}

/** Half the cross product of two sides: points out of the face, as long as its area in mm2. */
export function areaVector(positions: Float32Array, triangles: Uint32Array, face: number): Vec3 {
  const h = face * 3;
  const [x, y, z] = sidesCrossed(positions, triangles[h], triangles[h + 1], triangles[h + 2]);
  return [x / 2, y / 2, z / 2];
}

/** Middle of one face. */
export function faceMiddle({ positions, triangles }: TriangleMesh, face: number): Vec3 {
  const a = triangles[face * 3] * 3;
  const b = triangles[face * 3 + 1] * 3;
  const c = triangles[face * 3 + 2] * 3;
  return [
    (positions[a] + positions[b] + positions[c]) / 3,
    (positions[a + 1] + positions[b + 1] + positions[c + 1]) / 3,
    (positions[a + 2] + positions[b + 2] + positions[c + 2]) / 3,
  ];
}

/** Volume of the tetrahedron from `origin` to one face, mm3, positive where the face looks away from it. */
export function faceVolume(
  positions: Float32Array,
  triangles: Uint32Array,
  face: number,
  [ox, oy, oz]: Vec3,
): number {
  const [nx, ny, nz] = areaVector(positions, triangles, face);
  const a = triangles[face * 3] * 3;
  return ((positions[a] - ox) * nx + (positions[a + 1] - oy) * ny + (positions[a + 2] - oz) * nz) / 3;
}

/**
 * Area (mm2) and signed volume (mm3; divergence theorem over the faces) of a mesh. The volume of an open mesh
 * depends on where it lies, so it is taken about the mesh's first point and is a guide only.
 */
export function sizeOf({ positions, triangles }: TriangleMesh): { area: number; volume: number } {
  const first = (triangles[0] ?? 0) * 3;
  const origin: Vec3 = [positions[first], positions[first + 1], positions[first + 2]];
  let area = 0;
  let volume = 0;
  for (let face = 0; face < triangles.length / 3; face++) {
    const [nx, ny, nz] = areaVector(positions, triangles, face);
    area += Math.sqrt(nx * nx + ny * ny + nz * nz);
    volume += faceVolume(positions, triangles, face, origin);
  }
  return { area, volume };
}
