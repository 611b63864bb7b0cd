import {
  type Body,
  closedAfterRounding,
  inverse,
  type Matrix4,
  onGrid,
  type Scope,
  type Solid,
  translation,
} from '../kernel/index.ts';

export interface SolidNaming extends Pick<Solid, 'id' | 'title' | 'role' | 'subjects'> {
  readonly estimated?: boolean;
}

/**
 * A body in the mold frame as a solid in its printing orientation: turned by `toPrint` (in the kernel, so that z
 * levels stay exact), standing on z = 0, closed after rounding to float32. Throws KernelFault where nothing is left.
 */
export function asSolid(scope: Scope, body: Body, toPrint: Matrix4, naming: SolidNaming): Solid {
  const { id, title, role, subjects, estimated = false } = naming;
  const turned = scope.expectSolid(scope.move(body, toPrint, title), title);
  return {
    id,
    title,
    role,
    subjects: [...new Set(subjects)],
    mesh: closedAfterRounding(onGrid(scope.toMesh(turned))),
    toMold: inverse(toPrint),
    estimated,
  };
}

/** Lifts a body whose lowest point is at `lowest` onto the bed. */
export const onBed = (lowest: number): Matrix4 => translation(0, 0, -lowest);
