import { boundsOf, type Grid, type TriangleMesh, type Vec3 } from '../geometry/index.ts';
import { columnsOf, heightMap } from '../mesh/index.ts';
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
const undercutCell = 0.06;

/** Undercut column by column, mm; 0 where there is none or no master. */
export interface UndercutColumns {
  readonly grid: Grid;
  /** What the lower half and the upper half hold on to. */
  readonly below: Float32Array;
  readonly above: Float32Array;
  /** Air enclosed in each column. */
  readonly air: Float32Array;
  /** 1 where a column meets the master. */
  readonly metal: Uint8Array;
  /** Heights of the sheet over the nodes; undefined where all is on the plane. */
  readonly sheet: Float32Array | undefined;
}

/** What undercut looks at of the parting surface. */
export type Sheet = Pick<PartingSurface, 'flat' | 'sheet'>;

/**
 * The undercut (mold frame, mm) against the sheet the solids are cut with, on columns `cell` apart. In a column from
 * b to t, cut at s, the lower half holds on to the air between b and s, the upper to that between s and t. A master
 * beyond the sheet meets the plane there.
 */
export function undercutColumns(mesh: TriangleMesh, surface: Sheet, cell: number): UndercutColumns {
  const columns = columnsOf(mesh, { cell });
  const { start, z, up } = columns;
  const grid: Grid = { cell, x0: columns.x0, y0: columns.y0, nx: columns.nx, ny: columns.ny };
  const sheet = sheetHeights(surface, grid);
  const [below, above, air] = [0, 1, 2].map(() => new Float32Array(grid.nx * grid.ny));
  const metal = new Uint8Array(below.length);
  for (let k = 0; k < below.length; k++) {
    const [from, to] = [start[k], start[k + 1]];
    if (from === to) continue;
    metal[k] = 1;
    const s = sheet ? sheet[k] || 0 : 0;
    const [bottom, top] = [z[from], z[to - 1]];
    let solidBelow = 0;
    let solid = 0;
    for (let at = from; at < to; at++) {
      const sign = up[at] ? 1 : -1;
      solidBelow += sign * Math.min(z[at], s);
      solid += sign * z[at];
    }
    below[k] = Math.max(0, s - bottom) - solidBelow;
    above[k] = Math.max(0, top - s) - (solid - solidBelow);
    air[k] = top - bottom - solid;
  }
  return { grid, below, above, air, metal, sheet };
}

/** Measures the undercut as a whole, on columns `cell` apart; see `undercutColumns`. */
export function undercut(mesh: TriangleMesh, surface: Sheet, cell = undercutCell): Undercut {
  const { grid, below, above, air, sheet } = undercutColumns(mesh, surface, cell);
  const sum = { below: 0, above: 0, irreducible: 0 };
  const worst = { length: 0, node: -1 };
  for (let k = 0; k < below.length; k++) {
    sum.below += below[k];
    sum.above += above[k];
    sum.irreducible += air[k];
    if (below[k] + above[k] > worst.length) {
      worst.length = below[k] + above[k];
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
function sheetHeights({ flat, sheet }: Sheet, grid: Grid): Float32Array | undefined {
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
