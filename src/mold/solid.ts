import type { Matrix4, Point2, TriangleMesh } from '../geometry/index.ts';
import type { SolidRole } from '../kinds/index.ts';

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
  /** How many of it the mold takes. Left out, one. */
  readonly count?: number;
  /** Convex outlines round engraved texts, counter-clockwise, in the frame of `mesh`: no cut should go through them. */
  readonly lettered?: readonly (readonly Point2[])[];
  /** Openings of its own that no cut should go through, in the same frame. */
  readonly windows?: readonly { readonly id: string; readonly corners: readonly Point2[] }[];
}
