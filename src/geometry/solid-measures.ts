import type { Vec3 } from './triangles.ts';

/** What checks get of a solid. Volume mm3, lengths mm, inertia about the centroid per unit density (mm5). */
export interface SolidMeasures {
  readonly volume: number;
  readonly area: number;
  readonly centroid: Vec3;
  /** Ixx, Iyy, Izz, Ixy, Iyz, Izx of the inertia tensor (off-diagonals are tensor entries, -integral xy dV). */
  readonly inertia: readonly [number, number, number, number, number, number];
  readonly bounds: { readonly min: Vec3; readonly max: Vec3 };
}
