import type { Grid } from '../geometry/index.ts';
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
  const floors = new Floors(roof, grid, reach + 1);
  for (let j = 0, k = 0; j < window.ny; j++) {
    const row = (window.j0 + j) * grid.nx + window.i0;
    for (let i = 0; i < window.nx; i++, k++) {
      let low = heights[k];
      if (low <= least) continue;
      const floor = floors.at(window.i0 + i, window.j0 + j);
      // Under the ball's rim, which comes last, it lowers least.
      for (let n = 0; n < steps.length && floor - drops[n] < low; n++) {
        const z = roof[row + i + steps[n]] - drops[n];
        if (!(z < low)) continue;
        low = z;
        if (low <= least) break;
      }
      heights[k] = low;
    }
  }
}

/** Knows for squares of nodes how low a roof comes within a square's side of them; Infinity where there is none. */
class Floors {
  private readonly across: number;
  private readonly lowest: Float32Array;

  constructor(
    roof: Float32Array,
    { nx, ny }: Grid,
    private readonly side: number,
  ) {
    const across = Math.ceil(nx / side) + 2;
    const own = new Float32Array(across * (Math.ceil(ny / side) + 2)).fill(Number.POSITIVE_INFINITY);
    for (let j = 0; j < ny; j++) {
      const row = (Math.floor(j / side) + 1) * across + 1;
      for (let i = 0, square = row; i < nx; square++) {
        for (const end = Math.min(nx, i + side); i < end; i++) {
          if (roof[j * nx + i] < own[square]) own[square] = roof[j * nx + i];
        }
      }
    }
    this.across = across;
    // Along the rows, then along the columns; the rim of squares round the grid has no roof.
    const inRow = own.slice();
    for (let k = 1; k < own.length - 1; k++) inRow[k] = Math.min(own[k - 1], own[k], own[k + 1]);
    this.lowest = inRow.slice();
    for (let k = across; k < own.length - across; k++)
      this.lowest[k] = Math.min(inRow[k - across], inRow[k], inRow[k + across]);
  }

  at(i: number, j: number): number {
    return this.lowest[(Math.floor(j / this.side) + 1) * this.across + 1 + Math.floor(i / this.side)];
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
