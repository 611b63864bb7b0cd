import type { TriangleMesh } from './triangles.ts';

/** `make`, done once for each object as long as that lives; the object is never changed after it is made. */
export function memoPerObject<K extends object, T extends object | string>(
  make: (key: K) => T,
): (key: K) => T {
  const known = new WeakMap<K, T>();
  return (key) => {
    const made = known.get(key) ?? make(key);
    known.set(key, made);
    return made;
  };
}

/** The same for a mesh, known again by its arrays, which all placements of a master share. */
export function memoPerMesh<T extends object | string>(
  make: (mesh: TriangleMesh) => T,
): (mesh: TriangleMesh) => T {
  const perPositions = memoPerObject((positions: Float32Array) =>
    memoPerObject((triangles: Uint32Array) => make({ positions, triangles })),
  );
  return ({ positions, triangles }) => perPositions(positions)(triangles);
}
