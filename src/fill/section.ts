import type { Vec3 } from '../geometry/index.ts';
import { type Cells, middleOf, sides, wall } from './cells.ts';
import { reachAlong } from './open-parts.ts';

/** Half the smallest clear width at a cell and half that square to it, mm. */
export interface Section {
  readonly small: number;
  readonly large: number;
  readonly at: number;
}

/** Directions across a narrow place in which it is measured, over half a turn. */
const directions = 12;

/**
 * The section of a narrow place at a cell, square to the way from its mouth. The widths are chords through the cell: a blade that
 * is thin one way and wide the other lets metal and air pass along its width. `steps` from the mouth by cell, negative outside.
 */
export function sectionAt(cells: Cells, clearance: Float32Array, steps: Int32Array, c: number): Section {
  const along = alongAt(cells, steps, c, Math.ceil((3 * clearance[c]) / cells.cell) + 2);
  const [u, v] = across(along);
  const half = (way: Vec3): number =>
    (reachAlong(cells, c, way) + reachAlong(cells, c, [-way[0], -way[1], -way[2]])) / 2;
  if (cells.planar) {
    const only = half([-along[2], 0, along[0]]);
    return { small: only, large: only, at: c };
  }
  const chords = Array.from({ length: directions }, (_, k) => {
    const [cos, sin] = [Math.cos((Math.PI * k) / directions), Math.sin((Math.PI * k) / directions)];
    return half([u[0] * cos + v[0] * sin, u[1] * cos + v[1] * sin, u[2] * cos + v[2] * sin]);
  });
  const least = chords.indexOf(Math.min(...chords));
  return { small: chords[least], large: chords[(least + directions / 2) % directions], at: c };
}

/** Along the way from the mouth at a cell, of length 1: from some steps before it to some after. */
function alongAt(cells: Cells, steps: Int32Array, c: number, most: number): Vec3 {
  const before = walk(cells, steps, c, most, -1);
  const after = walk(cells, steps, c, most, 1);
  const [a, b] = [middleOf(cells, before), middleOf(cells, after)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  if (length === 0) return [0, 0, 1];
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length];
}

/** The cell some steps on, toward the mouth (-1) and out of it by one, or away from it (1). */
function walk({ beside }: Cells, steps: Int32Array, from: number, most: number, way: -1 | 1): number {
  let c = from;
  for (let k = 0; k < most; k++) {
    const around = beside.subarray(sides * c, sides * c + sides);
    const next = around.find((n) => n !== wall && steps[n] === steps[c] + way);
    if (next !== undefined) c = next;
    else return way < 0 ? (around.find((n) => n !== wall && steps[n] < 0) ?? c) : c;
  }
  return c;
}

/** Two directions square to one and to each other. */
function across([x, y, z]: Vec3): readonly [Vec3, Vec3] {
  const [ux, uy, uz] = Math.abs(z) < 0.9 ? [y, -x, 0] : [0, z, -y];
  const length = Math.hypot(ux, uy, uz);
  const u = [ux / length, uy / length, uz / length] as const;
  return [u, [y * u[2] - z * u[1], z * u[0] - x * u[2], x * u[1] - y * u[0]]];
}
