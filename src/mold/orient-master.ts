import {
  boundsOf,
  compose,
  type Matrix4,
  moveMesh,
  rotation,
  scaling,
  type TriangleMesh,
  translation,
} from '../geometry/index.ts';
import { smallestCircle, widestHeight } from '../mesh/index.ts';

/** How a master is turned before it is placed: about x, then y, then z of its own file axes, rad. */
export interface Lie {
  readonly xRad: number;
  readonly yRad: number;
  readonly zRad: number;
}

/** How deep: a length below the parting plane, a share of the height, or where the contour is widest. */
export type Sink = { readonly depth: number } | { readonly share: number } | 'silhouette';

/** A master after its lie: centered on the smallest circle round its silhouette, its lowest point at z = 0. */
export interface OrientedMaster {
  readonly matrix: Matrix4;
  readonly height: number;
  readonly reach: number;
  /** Height of the widest contour over the lowest point. */
  readonly widest: number;
}

/** Turns and scales a master's mesh (file axes, mm) to its lie. */
export function orientMaster(mesh: TriangleMesh, lie: Lie, scale: number): OrientedMaster {
  const rotated = compose(
    rotation('z', lie.zRad),
    rotation('y', lie.yRad),
    rotation('x', lie.xRad),
    scaling(scale),
  );
  const moved = moveMesh(mesh, rotated);
  const { min, max } = boundsOf(moved.positions);
  const circle = smallestCircle(moved.positions);
  return {
    matrix: compose(translation(-circle.x, -circle.y, -min[2]), rotated),
    height: max[2] - min[2],
    reach: circle.radius,
    widest: widestHeight(moved) - min[2],
  };
}

/** Depth below the parting plane in mm; a share over 1 or a depth over the height is the caller's to report. */
export function sinkDepth(oriented: OrientedMaster, sink: Sink): number {
  if (sink === 'silhouette') return oriented.widest;
  return 'depth' in sink ? sink.depth : sink.share * oriented.height;
}

/** The matrix from the master's file axes to the mold frame; at turn 0 its own +x points outward along the radius. */
export const placingMatrix = (
  oriented: OrientedMaster,
  at: {
    readonly radius: number;
    readonly angleRad: number;
    readonly turnRad: number;
    readonly depth: number;
  },
): Matrix4 =>
  compose(
    translation(at.radius * Math.cos(at.angleRad), at.radius * Math.sin(at.angleRad), -at.depth),
    rotation('z', at.angleRad + at.turnRad),
    oriented.matrix,
  );
