import type { Grid, TriangleMesh } from '../../geometry/index.ts';

/** A patch of squares that hang together by their sides: squares are numbered by the node at their lowest x and y. */
export interface Patch {
  readonly squares: readonly number[];
  /** mm2 seen from above, mm3, and the greatest height between the two fields, mm. */
  readonly area: number;
  readonly volume: number;
  readonly deepest: number;
  /** Where that is: x, y, and z of the lower field there. */
  readonly place: readonly [number, number, number];
}

export interface Fields {
  readonly grid: Grid;
  readonly lower: Float32Array;
  readonly upper: Float32Array;
}

/**
 * Where one height field stands more than `least` (mm) over another at all four corners of a square between nodes; a
 * strip one node wide, as a slanting wall leaves on a grid, is nothing. Squares that meet others only at a corner are
 * left out, so that a solid between the fields has no edge with four faces. Largest volume first.
 */
export function patchesBetween(fields: Fields, least: number): Patch[] {
  const { grid } = fields;
  const filled = new Uint8Array(grid.nx * grid.ny);
  const high = (node: number): boolean => fields.upper[node] - fields.lower[node] > least;
  for (let j = 0; j + 1 < grid.ny; j++)
    for (let i = 0; i + 1 < grid.nx; i++) {
      const node = j * grid.nx + i;
      if (high(node) && high(node + 1) && high(node + grid.nx) && high(node + grid.nx + 1)) filled[node] = 1;
    }
  partCorners(filled, grid.nx);
  return gathered(filled, grid.nx)
    .map((squares) => measured(fields, squares))
    .sort((a, b) => b.volume - a.volume || a.squares[0] - b.squares[0]);
}

/** Empties squares until no two meet at a corner alone. */
function partCorners(filled: Uint8Array, nx: number): void {
  for (let changed = true; changed; ) {
    changed = false;
    for (let node = 0; node + nx + 1 < filled.length; node++) {
      const [a, b, c, d] = [node, node + 1, node + nx, node + nx + 1];
      const crossed = filled[a] === filled[d] && filled[b] === filled[c] && filled[a] !== filled[b];
      if (!crossed) continue;
      filled[filled[a] ? d : c] = 0;
      changed = true;
    }
  }
}

function gathered(filled: Uint8Array, nx: number): number[][] {
  const patches: number[][] = [];
  const seen = new Uint8Array(filled.length);
  for (let start = 0; start < filled.length; start++) {
    if (!filled[start] || seen[start]) continue;
    const patch = [start];
    seen[start] = 1;
    for (let k = 0; k < patch.length; k++)
      for (const next of [patch[k] - 1, patch[k] + 1, patch[k] - nx, patch[k] + nx])
        if (filled[next] && !seen[next]) {
          seen[next] = 1;
          patch.push(next);
        }
    patches.push(patch);
  }
  return patches;
}

function measured({ grid, lower, upper }: Fields, squares: readonly number[]): Patch {
  const { cell, nx, x0, y0 } = grid;
  let volume = 0;
  let deepest = 0;
  let at = squares[0];
  for (const square of squares) {
    const corners = [square, square + 1, square + nx, square + nx + 1];
    for (const node of corners) {
      const height = upper[node] - lower[node];
      volume += (height * cell * cell) / 4;
      if (height > deepest) {
        deepest = height;
        at = node;
      }
    }
  }
  const place = [x0 + (at % nx) * cell, y0 + Math.floor(at / nx) * cell, lower[at]] as const;
  return { squares, area: squares.length * cell * cell, volume, deepest, place };
}

/** The closed mesh between the two fields over the squares of spots, with upright walls round each spot. */
export function meshBetween({ grid, lower, upper }: Fields, patches: readonly Patch[]): TriangleMesh {
  const { cell, nx, x0, y0 } = grid;
  const positions: number[] = [];
  const triangles: number[] = [];
  const filled = new Set(patches.flatMap(({ squares }) => squares));
  const known = new Map<number, number>();
  // The vertex under a node; the one over it is the next.
  const under = (node: number): number => {
    const found = known.get(node);
    if (found !== undefined) return found;
    const [x, y] = [x0 + (node % nx) * cell, y0 + Math.floor(node / nx) * cell];
    const index = positions.length / 3;
    positions.push(x, y, lower[node], x, y, upper[node]);
    known.set(node, index);
    return index;
  };
  for (const square of filled) {
    const [a, b, c, d] = [square, square + 1, square + nx + 1, square + nx].map(under);
    triangles.push(a + 1, b + 1, c + 1, a + 1, c + 1, d + 1, a, c, b, a, d, c);
    const sides = [
      [square - nx, a, b],
      [square + 1, b, c],
      [square + nx, c, d],
      [square - 1, d, a],
    ];
    for (const [beside, from, to] of sides)
      if (!filled.has(beside)) triangles.push(from, to, to + 1, from, to + 1, from + 1);
  }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}
