import type { Bounds2, TriangleMesh } from '../geometry/index.ts';
import { facesWithin } from './uniform-grid.ts';

/**
 * The single-valued height field both halves are trimmed by. Heights stand at the nodes of a square grid:
 * node (i, j) is at (x0 + i cell, y0 + j cell), index j * nx + i. `sheet` is the triangulated surface the solids are
 * cut with; it covers a square beyond the rim and stays within `error` mm of the grid. Plain data.
 */
export interface PartingSurface {
  /** True when everything is at z = 0: then `heights` is empty and `sheet` two triangles. */
  readonly flat: boolean;
  readonly cell: number;
  readonly x0: number;
  readonly y0: number;
  readonly nx: number;
  readonly ny: number;
  readonly heights: Float32Array;
  readonly sheet: TriangleMesh;
  readonly error: number;
}

/** Height of the parting surface at (x, y), bilinear between nodes; 0 outside the grid. */
export function heightAt(surface: PartingSurface, x: number, y: number): number {
  if (surface.flat) return 0;
  const { cell, nx, ny, heights } = surface;
  const u = (x - surface.x0) / cell;
  const v = (y - surface.y0) / cell;
  const i = Math.floor(u);
  const j = Math.floor(v);
  if (i < 0 || j < 0 || i >= nx - 1 || j >= ny - 1) return 0;
  const s = u - i;
  const t = v - j;
  const at = j * nx + i;
  return (
    (heights[at] * (1 - s) + heights[at + 1] * s) * (1 - t) +
    (heights[at + nx] * (1 - s) + heights[at + nx + 1] * s) * t
  );
}

/** A flat parting surface for a disc of the given radius. */
export function flatPartingSurface(discRadius: number): PartingSurface {
  const reach = Math.ceil(discRadius) + 10;
  const corners = [-reach, -reach, 0, reach, -reach, 0, reach, reach, 0, -reach, reach, 0];
  return {
    flat: true,
    cell: 2 * reach,
    x0: -reach,
    y0: -reach,
    nx: 2,
    ny: 2,
    heights: new Float32Array(),
    sheet: { positions: Float32Array.from(corners), triangles: Uint32Array.from([0, 1, 2, 0, 2, 3]) },
    error: 0,
  };
}

/**
 * The part of a surface's grid over a box (mm) and a node more around it: `heightAt` says the same inside the box, 0
 * far outside. For works that look at one place only and must not be made anew when another one changes. Has no sheet.
 */
export function cropSurface(surface: PartingSurface, box: Bounds2): PartingSurface {
  if (surface.flat) return surface;
  const { cell, x0, y0, nx, ny, heights } = surface;
  const first = (low: number, from: number): number => Math.max(0, Math.floor((low - from) / cell) - 1);
  const end = (high: number, from: number, count: number): number =>
    Math.min(count, Math.ceil((high - from) / cell) + 2);
  const [i0, j0] = [first(box.min[0], x0), first(box.min[1], y0)];
  const [width, depth] = [end(box.max[0], x0, nx) - i0, end(box.max[1], y0, ny) - j0];
  const cropped = new Float32Array(Math.max(0, width) * Math.max(0, depth));
  for (let j = 0; j < depth; j++) {
    const from = (j0 + j) * nx + i0;
    cropped.set(heights.subarray(from, from + width), j * width);
  }
  return {
    ...surface,
    x0: x0 + i0 * cell,
    y0: y0 + j0 * cell,
    nx: Math.max(0, width),
    ny: Math.max(0, depth),
    heights: cropped,
    sheet: { positions: new Float32Array(), triangles: new Uint32Array() },
  };
}

/**
 * The triangles of a surface's sheet that reach into a box (mm), for works that need the sheet itself over one place.
 * A flat sheet is given whole.
 */
export function cropSheet(
  { flat, sheet }: PartingSurface,
  box: Bounds2,
): Pick<PartingSurface, 'flat' | 'sheet'> {
  if (flat) return { flat, sheet };
  const { positions: p, triangles } = sheet;
  const index = new Map<number, number>();
  const positions: number[] = [];
  const cropped: number[] = [];
  const vertex = (v: number): number => {
    const known = index.get(v);
    if (known !== undefined) return known;
    index.set(v, index.size);
    positions.push(p[v * 3], p[v * 3 + 1], p[v * 3 + 2]);
    return index.size - 1;
  };
  const [x0, y0] = box.min;
  const [x1, y1] = box.max;
  for (const t of facesWithin(sheet, box)) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    if (p[a] > x1 && p[b] > x1 && p[c] > x1) continue;
    if (p[a] < x0 && p[b] < x0 && p[c] < x0) continue;
    if (p[a + 1] > y1 && p[b + 1] > y1 && p[c + 1] > y1) continue;
    if (p[a + 1] < y0 && p[b + 1] < y0 && p[c + 1] < y0) continue;
    cropped.push(vertex(triangles[t]), vertex(triangles[t + 1]), vertex(triangles[t + 2]));
  }
  return {
    flat,
    sheet: { positions: Float32Array.from(positions), triangles: Uint32Array.from(cropped) },
  };
}
