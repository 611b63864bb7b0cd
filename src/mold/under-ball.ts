import type { Grid } from '../mesh/index.ts';
import type { Nodes } from './loose-ground.ts';

/**
 * Lowers heights over the window (mm) to what stays under a ball rolled along the underside of a roof that is known
 * over the grid. Heights of `least` and less do not count: none is looked at, and one that falls so low is let be.
 */
export function lowerByBall(
  heights: Float32Array,
  roof: Float32Array,
  { grid, window }: Nodes,
  radius: number,
  least: number,
): void {
  const { steps, drops, reach } = ballOf(radius, grid);
  const near = new NearRoof(roof, grid, reach + 1);
  for (let j = 0, k = 0; j < window.ny; j++) {
    const row = (window.j0 + j) * grid.nx + window.i0;
    for (let i = 0; i < window.nx; i++, k++) {
      if (heights[k] <= least || !near.at(window.i0 + i, window.j0 + j)) continue;
      let low = heights[k];
      for (let n = 0; n < steps.length; n++) {
        const z = roof[row + i + steps[n]] - drops[n];
        if (!(z < low)) continue;
        low = z;
        if (low <= least) break;
      }
      heights[k] = low;
    }
  }
}

/** Knows in squares of nodes whether a roof can be within a square's side. */
class NearRoof {
  private readonly across: number;
  private readonly near: Uint8Array;

  constructor(
    roof: Float32Array,
    { nx, ny }: Grid,
    private readonly side: number,
  ) {
    const across = Math.ceil(nx / side) + 2;
    const roofed = new Uint8Array(across * (Math.ceil(ny / side) + 2));
    for (let j = 0; j < ny; j++) {
      const row = (Math.floor(j / side) + 1) * across + 1;
      for (let i = 0; i < nx; i++) {
        if (!Number.isNaN(roof[j * nx + i])) roofed[row + Math.floor(i / side)] = 1;
      }
    }
    this.across = across;
    this.near = roofed.map((_, k) =>
      [-across, 0, across].some((row) => roofed[k + row - 1] || roofed[k + row] || roofed[k + row + 1])
        ? 1
        : 0,
    );
  }

  at(i: number, j: number): boolean {
    return this.near[(Math.floor(j / this.side) + 1) * this.across + 1 + Math.floor(i / this.side)] > 0;
  }
}

/** Steps to the nodes within a ball's radius (mm) of its middle, and how far its underside is below the middle there. */
function ballOf(radius: number, { nx, cell }: Grid) {
  const reach = Math.floor(radius / cell);
  const nodes: { step: number; drop: number }[] = [];
  for (let j = -reach; j <= reach; j++) {
    for (let i = -reach; i <= reach; i++) {
      const rest = radius * radius - (i * i + j * j) * cell * cell;
      if (rest >= 0) nodes.push({ step: j * nx + i, drop: Math.sqrt(rest) });
    }
  }
  // The middle, which lowers most, comes first.
  nodes.sort((a, b) => b.drop - a.drop);
  return {
    reach,
    steps: Int32Array.from(nodes, ({ step }) => step),
    drops: Float64Array.from(nodes, ({ drop }) => drop),
  };
}
