import {
  boundsOf,
  compose,
  type Matrix4,
  moveMesh,
  rotation,
  type TriangleMesh,
  translation,
} from '../../src/geometry/index.ts';
import type { Kernel } from '../../src/kernel/index.ts';
import { measureMesh, smallestCircle } from '../../src/mesh/index.ts';
import type { Master, Placement } from '../../src/mold/index.ts';

export const masterOf = (id: string, mesh: TriangleMesh): Master => ({
  id,
  kind: 'mesh',
  mesh,
  measures: measureMesh(mesh),
  estimated: false,
});

/** A ball about the origin, `segments` round, as a turned polygon: a vertex ring on its equator. */
export function ball(kernel: Kernel, radius: number, segments = 64): TriangleMesh {
  return kernel.scope((scope) => {
    const outline = Array.from({ length: segments / 2 + 1 }, (_, i) => {
      const angle = -Math.PI / 2 + (2 * Math.PI * i) / segments;
      const onAxis = i === 0 || i === segments / 2;
      return [onAxis ? 0 : radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    });
    return scope.toMesh(scope.revolve(outline, segments, 'ball'));
  });
}

/** Places a master's mesh at a distance from the axis, turned, its origin at height z. */
export function place(
  master: Master,
  id: string,
  at: { readonly radius: number; readonly angleRad: number; readonly z?: number; readonly turnRad?: number },
): Placement {
  const turnRad = at.turnRad ?? 0;
  const x = at.radius * Math.cos(at.angleRad);
  const y = at.radius * Math.sin(at.angleRad);
  const matrix: Matrix4 = compose(translation(x, y, at.z ?? 0), rotation('z', at.angleRad + turnRad));
  const moved = moveMesh(master.mesh, matrix);
  const { min, max } = boundsOf(moved.positions);
  const circle = smallestCircle(moved.positions);
  return {
    id,
    master: master.id,
    x: circle.x,
    y: circle.y,
    turnRad,
    scale: 1,
    matrix,
    lowest: min[2],
    highest: max[2],
    reach: circle.radius,
    estimated: false,
  };
}

/** `count` placements evenly round a ring. */
export const ring = (
  master: Master,
  count: number,
  radius: number,
  options: { readonly z?: number; readonly fromRad?: number; readonly turnRad?: number } = {},
): Placement[] =>
  Array.from({ length: count }, (_, i) =>
    place(master, `${master.id}-${radius}-${i + 1}`, {
      radius,
      angleRad: (options.fromRad ?? 0) + (2 * Math.PI * i) / count,
      ...options,
    }),
  );
