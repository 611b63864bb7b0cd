import { BufferAttribute, BufferGeometry } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { memoPerMesh } from '../../geometry/index.ts';

/** A mesh prepared for rays and for balls that grow until they touch it. Empty meshes: RangeError. */
export const bvhOf = memoPerMesh(({ positions, triangles }): MeshBVH => {
  if (triangles.length === 0) throw new RangeError('bvhOf: the mesh is empty');
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  // The tree sorts the index in place: it gets its own.
  geometry.setIndex(new BufferAttribute(triangles.slice(), 1));
  return new MeshBVH(geometry);
});
