import { type Cells, cellsOf, isTooFine, middleOf } from '../../src/fill/cells.ts';
import type { Conditions, Port } from '../../src/fill/conditions.ts';
import { moveMesh, rotation, type TriangleMesh } from '../../src/geometry/index.ts';
import { box, single, together } from '../revolved-solids.ts';

export type Box = readonly [readonly [number, number, number], readonly [number, number, number]];

/** A room of boxes that overlap, turned about the axis by an angle in degrees. */
export function roomOf(boxes: readonly Box[], turn = 0): TriangleMesh {
  return turned(single(together(...boxes.map(([low, high]) => box(low, high)))), turn);
}

const turned = (mesh: TriangleMesh, degrees: number): TriangleMesh =>
  degrees === 0 ? mesh : moveMesh(mesh, rotation('z', (degrees * Math.PI) / 180));

export function cut(mesh: TriangleMesh, cell: number): Cells {
  const cells = cellsOf(mesh, cell);
  if (isTooFine(cells)) throw new Error(`too fine: ${cells.wouldFit} mm would fit`);
  return cells;
}

/** A gate or vent that opens into all cells of a box (before a turn in degrees). */
export function portIn(cells: Cells, kind: Port['kind'], [low, high]: Box, turn = 0, width = 3): Port {
  const [c, s] = [Math.cos((-turn * Math.PI) / 180), Math.sin((-turn * Math.PI) / 180)];
  const members = Array.from({ length: cells.count }, (_, n) => n).filter((n) => {
    const [x, y, z] = middleOf(cells, n);
    const at = [x * c - y * s, x * s + y * c, z];
    return at.every((value, axis) => value >= low[axis] && value <= high[axis]);
  });
  return { id: kind, kind, cells: members, width, depth: width / 2 };
}

/** 427 rpm: 140 m/s2 at 70 mm. */
export const turning: Conditions = {
  field: { speedRpm: (Math.sqrt(140 / 0.07) * 30) / Math.PI, gravity: 9.80665 },
  metal: { densityKgM3: 7280, tensionNM: 0.55 },
  wellLevel: 20,
  flow: 200,
};
