import type { Vec3 } from '../geometry/index.ts';
import { type Cells, middleOf, wall } from './cells.ts';
import type { Port } from './conditions.ts';

/**
 * A gate or vent as it is cut: hung from the points of its way along the parting surface, `width` across, `depth` up into
 * the upper half or down into the lower. It ends in the cavity. mm.
 */
export interface SweptChannel {
  readonly id: string;
  readonly kind: 'gate' | 'vent';
  readonly path: readonly Vec3[];
  readonly width: number;
  readonly depth: number;
  readonly half: 'lower' | 'upper';
}

/**
 * Where a channel opens into the cavity: the cells its section meets, to half a cell, so that one thinner than a cell is
 * not missed. None where it passes the cavity by.
 */
export function portOf(cells: Cells, channel: SweptChannel): Port {
  const { id, kind, width, depth, path } = channel;
  const met = new Set<number>();
  for (let k = 0; k + 1 < path.length; k++) meetAlong(cells, channel, path[k], path[k + 1], met);
  return { id, kind, width, depth, cells: [...met].sort((a, b) => a - b) };
}

function meetAlong(cells: Cells, channel: SweptChannel, a: Vec3, b: Vec3, met: Set<number>): void {
  const { cell } = cells;
  const { width, depth, half } = channel;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (!(length > 0)) return;
  const [dx, dy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const up = half === 'upper' ? 1 : -1;
  const grown = width / 2 + depth + cell;
  eachWithin(cells, a, b, grown, (c) => {
    const [x, y, z] = middleOf(cells, c);
    const along = (x - a[0]) * dx + (y - a[1]) * dy;
    if (along < -cell / 2 || along > length + cell / 2) return;
    const across = Math.abs((y - a[1]) * dx - (x - a[0]) * dy);
    const over = up * (z - a[2] - (along / length) * (b[2] - a[2]));
    if (across <= (width + cell) / 2 && over >= -cell / 2 && over <= depth + cell / 2) met.add(c);
  });
}

/** Cells whose middles lie in the box round two points, grown all round. */
function eachWithin(
  { low, cell, size, numbers }: Cells,
  a: Vec3,
  b: Vec3,
  grown: number,
  visit: (c: number) => void,
): void {
  const [from, to] = [Math.min, Math.max].map((end, which) =>
    [0, 1, 2].map((x) => {
      const at = (end(a[x], b[x]) + (which === 0 ? -grown : grown) - low[x]) / cell;
      return Math.max(0, Math.min(size[x] - 1, which === 0 ? Math.ceil(at) : Math.floor(at)));
    }),
  );
  for (let k = from[2]; k <= to[2]; k++)
    for (let j = from[1]; j <= to[1]; j++)
      for (let i = from[0]; i <= to[0]; i++) {
        const c = numbers[(k * size[1] + j) * size[0] + i];
        if (c !== wall) visit(c);
      }
}
