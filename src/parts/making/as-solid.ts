import {
  compose,
  inverse,
  type Matrix4,
  scaling,
  type TriangleMesh,
  translation,
} from '../../geometry/index.ts';
import {
  type Body,
  closedAfterRounding,
  onGrid,
  type Scope,
  uncrossed,
  uncrossSlivers,
} from '../../kernel/index.ts';
import type { Solid } from '../../mold/index.ts';

export interface SolidNaming
  extends Pick<Solid, 'id' | 'title' | 'role' | 'subjects' | 'lettered' | 'windows'> {
  readonly estimated?: boolean;
  /** Cut along a surface that grazes its masters: faces may cross by the kernel's tolerance and are parted. */
  readonly grazing?: boolean;
  /** The making process's own shrink, made up for: everything is 1 / (1 - this) as large. */
  readonly compensation?: number | undefined;
}

/**
 * A body in the mold frame as a solid in its printing orientation: turned by `toPrint` (in the kernel, so that z
 * levels stay exact), standing on z = 0, closed after rounding to float32. Throws KernelFault where nothing is left.
 */
export function asSolid(scope: Scope, body: Body, toPrint: Matrix4, naming: SolidNaming): Solid {
  const {
    id,
    title,
    role,
    subjects,
    lettered,
    windows,
    estimated = false,
    grazing = false,
    compensation = 0,
  } = naming;
  const place = compensation === 0 ? toPrint : compose(scaling(1 / (1 - compensation)), toPrint);
  const rotated = scope.expectSolid(scope.move(body, place, title), title);
  const rounded = closedAfterRounding(onGrid(scope.toMesh(rotated)));
  return {
    id,
    title,
    role,
    subjects: [...new Set(subjects)],
    mesh: uncrossed(grazing ? uncrossedSlivers(rounded) : rounded),
    toMold: inverse(place),
    estimated,
    ...(lettered && { lettered }),
    ...(windows && { windows }),
  };
}

/** Lifts a body whose lowest point is at `lowest` onto the bed. */
export const onBed = (lowest: number): Matrix4 => translation(0, 0, -lowest);

/** Rounding, and what closes the surface after it, may push a corner through the sliver beside it: parted last of all. */
function uncrossedSlivers(mesh: TriangleMesh): TriangleMesh {
  const parted = uncrossSlivers(mesh);
  return parted === mesh ? mesh : closedAfterRounding(parted);
}
