import { BufferAttribute, BufferGeometry, FrontSide, Matrix4, Mesh, MeshStandardMaterial } from 'three';
import type { ShownMesh } from '../worker/messages.ts';
import type { Kind } from './kinds.ts';

export function geometryOf({ positions, normals }: ShownMesh): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(normals, 3));
  return geometry;
}

/** What a mesh in the scene is: the layers and the cut go by it. */
interface ThingData {
  readonly kind: string;
  /** Id of the solid or placement. */
  readonly subject: string;
  /** Whether it bounds a solid, so that a cut through it is to be filled. */
  readonly closed: boolean;
}

/** A mesh of one kind, standing in the mold frame by a column-major matrix. */
export function thing(
  geometry: BufferGeometry,
  kind: Kind,
  subject: string,
  matrix: readonly number[],
  closed = true,
): Mesh<BufferGeometry, MeshStandardMaterial> {
  const material = new MeshStandardMaterial({
    color: kind.color,
    roughness: 0.78,
    metalness: 0.02,
    side: FrontSide,
  });
  const mesh = new Mesh(geometry, material);
  mesh.matrixAutoUpdate = false;
  mesh.matrix.copy(new Matrix4().fromArray(matrix as number[]));
  mesh.userData = { kind: kind.id, subject, closed } satisfies ThingData;
  return mesh;
}
