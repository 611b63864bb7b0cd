import { type Finding, finding } from '../../findings/index.ts';
import { boundsOf } from '../../geometry/index.ts';
import type { RawMesh } from '../raw.ts';

/** Most triangles taken in: twice the largest master expected; about 1.5 GB while it is worked on. */
const mostTriangles = 4_000_000;

/** Stops for a mesh nothing can be done with: no faces, too many, no finite points, a flat one. */
export function limitFindings(
  raw: RawMesh,
  { subject, triangleLimit = mostTriangles }: { subject: string; triangleLimit?: number | undefined },
): Finding[] {
  const faces = Math.floor(raw.triangles.length / 3);
  if (faces === 0) return [finding('repair.empty', { subject, values: { which: 'faces' } })];
  if (faces > triangleLimit)
    return [finding('repair.too-large', { subject, values: { measured: faces, limit: triangleLimit } })];
  const bad = brokenFace(raw);
  if (bad !== undefined) return [finding('repair.not-a-number', { subject, values: { face: bad + 1 } })];
  return flatness(raw, subject);
}

/** The first face with a corner that is not there or not finite. */
function brokenFace({ positions, triangles }: RawMesh): number | undefined {
  const points = positions.length / 3;
  for (let h = 0; h < triangles.length; h++) {
    const v = triangles[h];
    if (v < points && Number.isFinite(positions[v * 3] + positions[v * 3 + 1] + positions[v * 3 + 2]))
      continue;
    return Math.floor(h / 3);
  }
  return triangles.length % 3 === 0 ? undefined : Math.floor(triangles.length / 3);
}

function flatness({ positions }: RawMesh, subject: string): Finding[] {
  const { min, max } = boundsOf(positions);
  const sides = [0, 1, 2].map((axis) => max[axis] - min[axis]);
  const longest = Math.max(...sides);
  if (longest === 0) return [finding('repair.empty', { subject, values: { which: 'extent' } })];
  const axis = (['x', 'y', 'z'] as const).find((_, i) => sides[i] <= 1e-6 * longest);
  return axis ? [finding('repair.flat', { subject, values: { which: 'axis', axis } })] : [];
}
