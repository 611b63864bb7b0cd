import { boundsOf, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { columnsOf, type Grid, heightMap } from '../mesh/index.ts';
import type { PartingSurface } from './parting-surface.ts';

/**
 * Undercut of a placed master: rubber or mold material that would have to pass through it when the halves are
 * lifted straight off, mm3. `below` is the lower half's, `above` the upper's. `irreducible` is the air enclosed in
 * the columns: no single-valued parting surface leaves less. `deepest` is the greatest undercut in one column, mm,
 * at `place`.
 */
export interface Undercut {
  readonly below: number;
  readonly above: number;
  readonly irreducible: number;
  readonly deepest: number;
  readonly place: Vec3;
}

/** How fine undercut is measured, mm: not on the grid the parting surface was computed on. */
export const undercutCell = 0.06;

/**
 * Measures the undercut (mold frame, mm) against the sheet the solids are cut with, on columns `cell` apart. In a
 * column from b to t, cut at s, the lower half holds on to the air between b and s, the upper to that between s
 * and t. A master beyond the sheet meets the plane there.
 */
export function undercut(mesh: TriangleMesh, surface: PartingSurface, cell = undercutCell): Undercut {
  const columns = columnsOf(mesh, { cell });
  const { start, z, up } = columns;
  const grid: Grid = { cell, x0: columns.x0, y0: columns.y0, nx: columns.nx, ny: columns.ny };
  const sheet = sheetHeights(surface, grid);
  const [sum, worst] = [
    { below: 0, above: 0, irreducible: 0 },
    { length: 0, node: -1 },
  ];
  for (let k = 0; k < grid.nx * grid.ny; k++) {
    const [from, to] = [start[k], start[k + 1]];
    if (from === to) continue;
    const s = sheet ? sheet[k] || 0 : 0;
    const [bottom, top] = [z[from], z[to - 1]];
    let solidBelow = 0;
    let solid = 0;
    for (let at = from; at < to; at++) {
      const sign = up[at] ? 1 : -1;
      solidBelow += sign * Math.min(z[at], s);
      solid += sign * z[at];
    }
    const below = Math.max(0, s - bottom) - solidBelow;
    const above = Math.max(0, top - s) - (solid - solidBelow);
    sum.below += below;
    sum.above += above;
    sum.irreducible += top - bottom - solid;
    if (below + above > worst.length) {
      worst.length = below + above;
      worst.node = k;
    }
  }
  const area = grid.cell * grid.cell;
  return {
    below: sum.below * area,
    above: sum.above * area,
    irreducible: sum.irreducible * area,
    deepest: worst.length,
    place: placeOf(mesh, grid, worst.node, sheet),
  };
}

/** Heights of the sheet itself over the grid's nodes (NaN beyond it); undefined where all is on the plane. */
function sheetHeights({ flat, sheet }: PartingSurface, grid: Grid): Float32Array | undefined {
  return flat ? undefined : heightMap(sheet, grid).top;
}

function placeOf(mesh: TriangleMesh, grid: Grid, node: number, sheet: Float32Array | undefined): Vec3 {
  if (node < 0) {
    const { min, max } = boundsOf(mesh.positions);
    return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, 0];
  }
  const i = node % grid.nx;
  return [
    grid.x0 + i * grid.cell,
    grid.y0 + ((node - i) / grid.nx) * grid.cell,
    sheet ? sheet[node] || 0 : 0,
  ];
}
