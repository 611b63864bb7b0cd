import { BufferAttribute, BufferGeometry } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import type { TriangleMesh } from '../../geometry/index.ts';

// Keyed by the triangles, which are never changed after they are made.
const hierarchies = new WeakMap<
  Uint32Array,
  { readonly positions: Float32Array; readonly hierarchy: MeshBVH }
>();

/** A mesh prepared for rays and for balls that grow until they touch it. Empty meshes: RangeError. */
export function bvhOf({ positions, triangles }: TriangleMesh): MeshBVH {
  if (triangles.length === 0) throw new RangeError('bvhOf: the mesh is empty');
  const known = hierarchies.get(triangles);
  if (known?.positions === positions) return known.hierarchy;
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  // The tree sorts the index in place: it gets its own.
  geometry.setIndex(new BufferAttribute(triangles.slice(), 1));
  const hierarchy = new MeshBVH(geometry);
  hierarchies.set(triangles, { positions, hierarchy });
  return hierarchy;
}
