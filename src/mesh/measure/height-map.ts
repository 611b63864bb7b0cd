import type { Grid } from '../../geometry/index.ts';
import type { MeshData } from './measure.ts';
import { type GridWish, gridOver, scan } from './scan.ts';

/** Lowest and highest surface over each node, mm; NaN where the mesh has nothing over the node. */
export interface HeightMap extends Grid {
  readonly bottom: Float32Array;
  readonly top: Float32Array;
}

/**
 * Every surface over each node: those of node k are `z[start[k]]` up to, not including, `z[start[k + 1]]`, from
 * below to above; `up` is 1 where the face looks to +z (the solid ends there), 0 where it begins.
 */
export interface Columns extends Grid {
  readonly start: Uint32Array;
  readonly z: Float32Array;
  readonly up: Uint8Array;
}

/**
 * Heights of a mesh from below and above by a raster of its triangles (mesh frame, mm). Without further wishes the
 * nodes stand at the centres of cells that cover the mesh: (n + 1/2) cell. Faces seen edge-on count nothing.
 */
export function heightMap(mesh: MeshData, wish: GridWish): HeightMap {
  const grid = gridOver(mesh, wish);
  const { nx, ny } = grid;
  const bottom = new Float32Array(nx * ny).fill(Number.NaN);
  const top = new Float32Array(nx * ny).fill(Number.NaN);
  eachNode(mesh, grid, (node, z) => {
    if (!(bottom[node] <= z)) bottom[node] = z;
    if (!(top[node] >= z)) top[node] = z;
  });
  return { ...grid, bottom, top };
}

/**
 * Lowest surface of several meshes over each node of a grid, mm; NaN where nothing is over it. Only faces that look
 * down are asked: of closed meshes turned outward the lowest one over a node always does.
 */
export function undersideOf(meshes: readonly MeshData[], grid: Grid): Float32Array {
  const lowest = new Float32Array(grid.nx * grid.ny).fill(Number.NaN);
  for (const { positions, triangles } of meshes) {
    eachNode({ positions, triangles: lookingDown(positions, triangles, grid) }, grid, (node, z) => {
      if (!(lowest[node] <= z)) lowest[node] = z;
    });
  }
  return lowest;
}

/** The faces that do not look up, less those that are beside the grid. */
function lookingDown(
  p: ArrayLike<number>,
  triangles: ArrayLike<number>,
  { cell, x0, y0, nx, ny }: Grid,
): Uint32Array {
  const x1 = x0 + (nx - 1) * cell;
  const y1 = y0 + (ny - 1) * cell;
  const down = new Uint32Array(triangles.length);
  let count = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    const [ax, bx, cx] = [p[a], p[b], p[c]];
    if ((ax < x0 && bx < x0 && cx < x0) || (ax > x1 && bx > x1 && cx > x1)) continue;
    const [ay, by, cy] = [p[a + 1], p[b + 1], p[c + 1]];
    if ((ay < y0 && by < y0 && cy < y0) || (ay > y1 && by > y1 && cy > y1)) continue;
    if ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax) > 0) continue;
    down[count++] = triangles[t];
    down[count++] = triangles[t + 1];
    down[count++] = triangles[t + 2];
  }
  return down.subarray(0, count);
}

/** All surfaces over each node, sorted. Needs two rasters: one to count, one to fill. */
export function columnsOf(mesh: MeshData, wish: GridWish): Columns {
  const grid = gridOver(mesh, wish);
  const start = new Uint32Array(grid.nx * grid.ny + 1);
  eachNode(mesh, grid, (node) => {
    start[node + 1]++;
  });
  for (let k = 1; k < start.length; k++) start[k] += start[k - 1];
  const filled = start.slice();
  const z = new Float32Array(start[start.length - 1]);
  const up = new Uint8Array(z.length);
  eachNode(mesh, grid, (node, height, faceUp) => {
    // Insertion into the sorted part: columns hold few surfaces.
    let at = filled[node]++;
    for (; at > start[node] && z[at - 1] > height; at--) {
      z[at] = z[at - 1];
      up[at] = up[at - 1];
    }
    z[at] = height;
    up[at] = faceUp ? 1 : 0;
  });
  return { ...grid, start, z, up };
}

function eachNode(mesh: MeshData, grid: Grid, visit: (node: number, z: number, up: boolean) => void): void {
  const { cell, x0, nx } = grid;
  scan(mesh, grid, 'x', (line, from, to, zFrom, zTo, up) => {
    const span = to - from;
    // The guard widths let rounding be settled by the exact comparison below.
    const first = Math.max(0, Math.ceil((from - x0) / cell - 1e-9));
    for (let i = first; i < nx; i++) {
      const x = x0 + i * cell;
      if (x < from) continue;
      if (x >= to) break;
      visit(line * nx + i, zFrom + ((x - from) / span) * (zTo - zFrom), up);
    }
  });
}
