import type { MeshData } from './measure.ts';
import { type Grid, type GridWish, gridOver, scan } from './scan.ts';

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

/** What is seen of meshes over each node of a grid from below or above, mm; NaN where nothing is over it. */
export function surfaceFrom(meshes: readonly MeshData[], grid: Grid, from: 'below' | 'above'): Float32Array {
  const seen = new Float32Array(grid.nx * grid.ny).fill(Number.NaN);
  for (const mesh of meshes) {
    if (from === 'below')
      eachNode(mesh, grid, (node, z) => {
        if (!(seen[node] <= z)) seen[node] = z;
      });
    else
      eachNode(mesh, grid, (node, z) => {
        if (!(seen[node] >= z)) seen[node] = z;
      });
  }
  return seen;
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
