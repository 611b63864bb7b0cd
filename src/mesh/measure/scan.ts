import { boundsOf, type Grid } from '../../geometry/index.ts';
import type { MeshData } from './measure.ts';

/** What of a grid is asked for; what is left out is chosen to cover the mesh, with nodes at cell centres. */
export interface GridWish {
  readonly cell: number;
  readonly x0?: number;
  readonly y0?: number;
  readonly nx?: number;
  readonly ny?: number;
}

/** The grid wished for, completed so that it covers the mesh and `rim` more nodes on every side. */
export function gridOver({ positions }: MeshData, wish: GridWish, rim = 0): Grid {
  const { cell } = wish;
  if (!(cell > 0)) throw new RangeError(`a grid needs a cell above 0, not ${cell}`);
  const { min, max } = boundsOf(positions);
  if (positions.length === 0) return { cell, x0: wish.x0 ?? 0, y0: wish.y0 ?? 0, nx: 0, ny: 0 };
  const first = (low: number): number => (Math.floor(low / cell) + 0.5 - rim) * cell;
  const count = (from: number, high: number): number =>
    Math.max(1, Math.floor((high - from) / cell) + 1 + rim);
  const x0 = wish.x0 ?? first(min[0]);
  const y0 = wish.y0 ?? first(min[1]);
  return { cell, x0, y0, nx: wish.nx ?? count(x0, max[0]), ny: wish.ny ?? count(y0, max[1]) };
}

/** One triangle on one grid line: it covers `from` <= u < `to`; z runs straight between the ends. */
export type Visit = (line: number, from: number, to: number, zFrom: number, zTo: number, up: boolean) => void;

/**
 * Cuts every triangle with the grid lines of one direction and hands out the spans. `along: 'x'` cuts with the rows
 * (v = y) and spans are in x; `'y'` with the columns. Edges are cut from their lower to their higher end whichever
 * triangle they belong to, and lines at an edge's upper end belong to the next edge, so neighbours meet exactly:
 * no node is missed or met twice, and faces seen edge-on give nothing. `up` says that the face looks to +z.
 */
export function scan({ positions, triangles }: MeshData, grid: Grid, along: 'x' | 'y', visit: Visit): void {
  const lines: Lines = {
    uAxis: along === 'x' ? 0 : 1,
    vAxis: along === 'x' ? 1 : 0,
    v0: along === 'x' ? grid.y0 : grid.x0,
    count: along === 'x' ? grid.ny : grid.nx,
    cell: grid.cell,
  };
  const { uAxis, vAxis } = lines;
  for (let t = 0; t < triangles.length; t += 3) {
    let a = triangles[t] * 3;
    let b = triangles[t + 1] * 3;
    let c = triangles[t + 2] * 3;
    // Seen along y the axes are swapped, which mirrors the face. Each exchange below mirrors it once more.
    let mirrored = along === 'y';
    if (higher(positions, a, b, uAxis, vAxis)) {
      [a, b] = [b, a];
      mirrored = !mirrored;
    }
    if (higher(positions, b, c, uAxis, vAxis)) {
      [b, c] = [c, b];
      mirrored = !mirrored;
    }
    if (higher(positions, a, b, uAxis, vAxis)) {
      [a, b] = [b, a];
      mirrored = !mirrored;
    }
    cut(positions, a, b, c, mirrored, lines, visit);
  }
}

interface Lines {
  readonly uAxis: number;
  readonly vAxis: number;
  readonly v0: number;
  readonly count: number;
  readonly cell: number;
}

/** Spans of one triangle whose corners a, b, c (offsets into positions) are sorted by v, then u. */
function cut(
  p: ArrayLike<number>,
  a: number,
  b: number,
  c: number,
  mirrored: boolean,
  { uAxis, vAxis, v0, count, cell }: Lines,
  visit: Visit,
): void {
  const va = p[a + vAxis];
  const vb = p[b + vAxis];
  const vc = p[c + vAxis];
  // One line more on both sides: which lines are cut is settled by the exact comparison below.
  const first = Math.max(0, Math.ceil((va - v0) / cell - 1e-9));
  const last = Math.min(count - 1, Math.floor((vc - v0) / cell + 1e-9));
  if (first > last) return;
  const ua = p[a + uAxis];
  const ub = p[b + uAxis];
  const uc = p[c + uAxis];
  const za = p[a + 2];
  const zb = p[b + 2];
  const zc = p[c + 2];
  const cross = (ub - ua) * (vc - va) - (vb - va) * (uc - ua);
  if (cross === 0) return;
  const up = cross > 0 !== mirrored;
  for (let line = first; line <= last; line++) {
    const v = v0 + line * cell;
    if (v < va || v >= vc) continue;
    const long = (v - va) / (vc - va);
    const low = v < vb;
    const short = low ? (v - va) / (vb - va) : (v - vb) / (vc - vb);
    const uLong = ua + long * (uc - ua);
    const zLong = za + long * (zc - za);
    const uShort = low ? ua + short * (ub - ua) : ub + short * (uc - ub);
    const zShort = low ? za + short * (zb - za) : zb + short * (zc - zb);
    if (uLong <= uShort) visit(line, uLong, uShort, zLong, zShort, up);
    else visit(line, uShort, uLong, zShort, zLong, up);
  }
}

const higher = (p: ArrayLike<number>, a: number, b: number, uAxis: number, vAxis: number): boolean => {
  const difference = p[a + vAxis] - p[b + vAxis];
  return difference > 0 || (difference === 0 && p[a + uAxis] > p[b + uAxis]);
};
