import { type Matrix4, moveMesh, type TriangleMesh } from '../../geometry/index.ts';
import { type Memoize, makeAlways } from '../../mold/index.ts';
import { type PressedArea, trianglePressed } from '../../physics/index.ts';

/** How metal in a cavity presses the halves apart: its upward faces seen from above, and how far in and out it is. */
export interface PressedCavity {
  readonly id: string;
  readonly pressed: PressedArea;
  readonly inner: number;
  readonly outer: number;
}

/**
 * Faces that look up are each counted, also where one lies over another, so that the area is never too small. Inner
 * radius is that of the nearest point of an edge, outer that of the farthest vertex, mm.
 */
export const pressedOf = (
  { id, mesh, matrix }: PlacedCavity,
  memoize: Memoize = makeAlways,
): PressedCavity => ({ id, ...memoize('pressed area', { mesh, matrix }, () => pressedBy(mesh, matrix)) });

interface PlacedCavity {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
}

function pressedBy(mesh: TriangleMesh, matrix: Matrix4): Omit<PressedCavity, 'id'> {
  const { positions: p, triangles } = moveMesh(mesh, matrix);
  let [area, secondMoment, inner] = [0, 0, Number.POSITIVE_INFINITY];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] * 3, triangles[t + 1] * 3, triangles[t + 2] * 3];
    const one = trianglePressed(p[a], p[a + 1], p[b], p[b + 1], p[c], p[c + 1]);
    if (one.area <= 0) continue;
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ])
      inner = Math.min(inner, fromAxis(p[from], p[from + 1], p[to], p[to + 1]));
    area += one.area;
    secondMoment += one.secondMoment;
  }
  let outer = 0;
  for (let i = 0; i < p.length; i += 3) {
    const radius = Math.hypot(p[i], p[i + 1]);
    outer = Math.max(outer, radius);
  }
  return { pressed: { area, secondMoment }, inner, outer };
}

/** Distance of a line's nearest point from the axis, seen from above. */
function fromAxis(ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length = dx * dx + dy * dy;
  const t = length > 0 ? Math.min(1, Math.max(0, -(ax * dx + ay * dy) / length)) : 0;
  return Math.hypot(ax + t * dx, ay + t * dy);
}
