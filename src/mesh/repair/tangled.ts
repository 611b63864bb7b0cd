import { crossingFaces, type TriangleMesh } from '../../geometry/index.ts';

/**
 * Most work the kernel is given: each face is cut anew by all that cross it, so that its time grows with the square
 * of how many those are. Sculpted shells placed into one another come to less than a hundredth of this; 4 500 faces
 * moved at random came to 7e8 and had not ended after minutes.
 */
const mostWork = 1e8;
/** More crossings than this are not counted: each takes some 100 bytes. */
const mostCrossings = 2_000_000;

/** Whether the faces of a mesh cross one another more often than the kernel can part in seconds. */
export function isTangled(mesh: TriangleMesh): boolean {
  const found = crossingFaces(mesh, mostCrossings);
  if (found.length === mostCrossings) return true;
  const crossed = new Map<number, number>();
  for (const { through, by } of found)
    for (const face of [through, by]) crossed.set(face, (crossed.get(face) ?? 0) + 1);
  let work = 0;
  for (const count of crossed.values()) work += count * count;
  return work > mostWork;
}
