import type { TriangleMesh, Vec3 } from '../../geometry/index.ts';
import { measureMesh } from '../../mesh/index.ts';

/** A closed mesh through convex sections with the same number of corners, capped at both ends, looking outward. */
export function lofted(sections: readonly (readonly Vec3[])[]): TriangleMesh {
  const ring = sections[0].length;
  const faces: number[] = [];
  for (let section = 0; section + 1 < sections.length; section++) {
    for (let k = 0; k < ring; k++) {
      const [a, b] = [section * ring + k, section * ring + ((k + 1) % ring)];
      faces.push(a, b, a + ring, b, b + ring, a + ring);
    }
  }
  const last = (sections.length - 1) * ring;
  for (let k = 1; k + 1 < ring; k++) faces.push(0, k + 1, k, last, last + k, last + k + 1);
  const mesh = { positions: Float32Array.from(sections.flat(2)), triangles: Uint32Array.from(faces) };
  return measureMesh(mesh).volume < 0 ? { ...mesh, triangles: mesh.triangles.slice().reverse() } : mesh;
}
