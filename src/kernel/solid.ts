import type { Matrix4 } from './matrix.ts';
import type { Point2 } from './outline.ts';
import type { TriangleMesh, Vec3 } from './triangles.ts';

/** What a solid is for. Decides its color in pictures and its place in the shop papers. */
export type SolidRole =
  | 'half'
  | 'blank'
  | 'sprue form'
  | 'plug'
  | 'boss'
  | 'boss cup'
  | 'build-up'
  | 'tab'
  | 'notch'
  | 'scaled master'
  | 'pattern plate'
  | 'jig'
  | 'layout plate'
  | 'nest'
  | 'can part'
  | 'gauge'
  | 'left by the cutter';

/** What a solid of this role shows is looked at; nobody prints or mills it. */
export const onlyToLookAt = (role: SolidRole): boolean => role === 'left by the cutter';

/**
 * A named closed solid, ready to be exported.
 * `id` is also the file stem. `subjects` are the plan's ids it was made from: a stop about one of them withholds it.
 * `mesh` stands in its printing or machining orientation; `toMold` brings it to the mold frame.
 * `estimated` is true when a stand-in went into it.
 */
export interface Solid {
  readonly id: string;
  readonly title: string;
  readonly role: SolidRole;
  readonly subjects: readonly string[];
  readonly mesh: TriangleMesh;
  readonly toMold: Matrix4;
  readonly estimated: boolean;
  /** Convex outlines round engraved texts, counter-clockwise, in the frame of `mesh`: no cut should go through them. */
  readonly lettered?: readonly (readonly Point2[])[];
  /** Openings of its own that no cut should go through, in the same frame. */
  readonly windows?: readonly { readonly id: string; readonly corners: readonly Point2[] }[];
}

/** What checks get of a solid. Volume mm3, lengths mm, inertia about the centroid per unit density (mm5). */
export interface SolidMeasures {
  readonly volume: number;
  readonly area: number;
  readonly centroid: Vec3;
  /** Ixx, Iyy, Izz, Ixy, Iyz, Izx of the inertia tensor (off-diagonals are tensor entries, -integral xy dV). */
  readonly inertia: readonly [number, number, number, number, number, number];
  readonly bounds: { readonly min: Vec3; readonly max: Vec3 };
}
