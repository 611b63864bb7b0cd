import { pieceOfVertex, type TriangleMesh } from '../../geometry/index.ts';

/**
 * Whether a closed mesh has more than one body: shells round a positive volume, each the outside of a piece. Shells
 * round a negative volume are the walls of enclosed holes and do not count.
 */
export function hasLooseComponents(mesh: TriangleMesh): boolean {
  const { positions, triangles } = mesh;
  const root = pieceOfVertex(mesh);
  const first = root(triangles[0]);
  const others = new Map<number, number>();
  let ownVolume = 0;
  for (let face = 0; face < triangles.length; face += 3) {
    const shell = root(triangles[face]);
    const six = sixVolumes(positions, triangles, face);
    if (shell === first) ownVolume += six;
    else others.set(shell, (others.get(shell) ?? 0) + six);
  }
  const bodies = [ownVolume, ...others.values()].filter((volume) => volume > 0);
  return bodies.length > 1;
}

function sixVolumes(p: Float32Array, triangles: Uint32Array, face: number): number {
  const a = triangles[face] * 3;
  const b = triangles[face + 1] * 3;
  const c = triangles[face + 2] * 3;
  return (
    p[a] * (p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1]) +
    p[a + 1] * (p[b + 2] * p[c] - p[b] * p[c + 2]) +
    p[a + 2] * (p[b] * p[c + 1] - p[b + 1] * p[c])
  );
}
