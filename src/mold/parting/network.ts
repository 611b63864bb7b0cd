import type { TriangleMesh } from '../../kernel/index.ts';
import type { Grid } from '../../mesh/index.ts';
import { blockCells } from './lattice.ts';

export interface Network {
  readonly sheet: TriangleMesh;
  /** Greatest distance in z between the sheet and the heights over all nodes, mm. */
  readonly error: number;
}

/**
 * Triangulates heights over a lattice of whole blocks by a right-triangulated irregular network: right isosceles
 * triangles, halved where the height in the middle of the long side is off by more than `tolerance` mm (Evans,
 * Kirkpatrick, Townsend, Algorithmica 30 (2001) 264-286). A node's error counts the errors of all finer nodes that
 * need it, so neighbors always meet along whole edges, across blocks too. That rule alone does not bound the
 * distance at nodes inside a triangle: those still off are made vertices, until none is. Faces look to +z.
 */
export function network(heights: Float32Array, lattice: Grid, tolerance: number): Network {
  const errors = new Float32Array(heights.length);
  for (;;) {
    passErrorsUp(heights, errors, lattice);
    const corners = cornersOf(errors, lattice, tolerance);
    const strays = straysFrom(heights, corners, lattice, tolerance);
    if (strays.nodes.length === 0) return { sheet: sheetOf(heights, corners, lattice), error: strays.error };
    for (const node of strays.nodes) errors[node] = Number.POSITIVE_INFINITY;
  }
}

/**
 * Square (a, b) of a level, counted in its own size, is cut along the diagonal through the middle of its parent:
 * rising where a + b is even, falling where it is odd.
 */
const rising = (a: number, b: number): boolean => ((a + b) & 1) === 0;

function passErrorsUp(heights: Float32Array, errors: Float32Array, { nx, ny }: Grid): void {
  for (let size = 2; size <= blockCells; size *= 2) {
    sideErrors(heights, errors, nx, ny, size);
    diagonalErrors(heights, errors, nx, ny, size);
  }
}

/** Middles of the sides of squares: the long sides of triangles whose right angle is in a square's middle. */
function sideErrors(h: Float32Array, errors: Float32Array, nx: number, ny: number, size: number): void {
  const half = size >> 1;
  for (let j = 0, level = true; j < ny; j += half, level = !level) {
    const reach = level ? half : half * nx;
    for (let i = level ? half : 0; i < nx; i += size) {
      const k = j * nx + i;
      errors[k] = Math.max(errors[k], Math.abs((h[k - reach] + h[k + reach]) / 2 - h[k]));
      const quarter = size >> 2;
      if (quarter === 0) continue;
      for (const dj of [j > 0 ? -quarter : quarter, j < ny - 1 ? quarter : -quarter]) {
        const left = i > 0 ? -quarter : quarter;
        const right = i < nx - 1 ? quarter : -quarter;
        errors[k] = Math.max(errors[k], errors[k + dj * nx + left], errors[k + dj * nx + right]);
      }
    }
  }
}

/** Middles of squares: the long sides are diagonals. */
function diagonalErrors(h: Float32Array, errors: Float32Array, nx: number, ny: number, size: number): void {
  const half = size >> 1;
  for (let j = half, b = 0; j < ny; j += size, b++) {
    for (let i = half, a = 0; i < nx; i += size, a++) {
      const k = j * nx + i;
      const reach = rising(a, b) ? half * nx + half : half * nx - half;
      errors[k] = Math.max(
        errors[k],
        Math.abs((h[k - reach] + h[k + reach]) / 2 - h[k]),
        errors[k - half],
        errors[k + half],
        errors[k - half * nx],
        errors[k + half * nx],
      );
    }
  }
}

/** Node numbers of the triangles' corners, three by three. */
function cornersOf(errors: Float32Array, { nx, ny }: Grid, tolerance: number): number[] {
  const corners: number[] = [];
  // a, b: ends of the long side; c: right angle. Counter-clockwise a, b, c.
  const halve = (a: number, b: number, c: number): void => {
    const middle = (a + b) / 2;
    const onNode = Number.isInteger(middle) && ((a % nx) + (b % nx)) % 2 === 0;
    if (onNode && errors[middle] > tolerance) {
      halve(c, a, middle);
      halve(b, c, middle);
    } else corners.push(a, b, c);
  };
  for (let j = 0; j < ny - 1; j += blockCells) {
    for (let i = 0; i < nx - 1; i += blockCells) {
      const low = j * nx + i;
      const [right, up] = [low + blockCells, low + blockCells * nx];
      const high = up + blockCells;
      if (rising(i / blockCells, j / blockCells)) {
        halve(high, low, right);
        halve(low, high, up);
      } else {
        halve(right, up, low);
        halve(up, right, high);
      }
    }
  }
  return corners;
}

/** Nodes farther than the tolerance from the triangle over them. */
function straysFrom(
  heights: Float32Array,
  corners: readonly number[],
  { nx }: Grid,
  tolerance: number,
): { readonly nodes: readonly number[]; readonly error: number } {
  const nodes: number[] = [];
  let greatest = 0;
  for (let t = 0; t < corners.length; t += 3) {
    const [a, b, c] = [corners[t], corners[t + 1], corners[t + 2]];
    const [ai, bi, ci] = [a % nx, b % nx, c % nx];
    const [aj, bj, cj] = [(a - ai) / nx, (b - bi) / nx, (c - ci) / nx];
    const twice = (bi - ai) * (cj - aj) - (bj - aj) * (ci - ai);
    if (twice <= 1) continue;
    const [za, zb, zc] = [heights[a], heights[b], heights[c]];
    for (let j = Math.min(aj, bj, cj); j <= Math.max(aj, bj, cj); j++) {
      for (let i = Math.min(ai, bi, ci); i <= Math.max(ai, bi, ci); i++) {
        const wb = (i - ai) * (cj - aj) - (j - aj) * (ci - ai);
        const wc = (bi - ai) * (j - aj) - (bj - aj) * (i - ai);
        if (wb < 0 || wc < 0 || wb + wc > twice) continue;
        const z = (za * (twice - wb - wc) + zb * wb + zc * wc) / twice;
        const off = Math.abs(z - heights[j * nx + i]);
        if (off > tolerance) nodes.push(j * nx + i);
        if (off > greatest) greatest = off;
      }
    }
  }
  return { nodes, error: greatest };
}

function sheetOf(
  heights: Float32Array,
  corners: readonly number[],
  { cell, x0, y0, nx }: Grid,
): TriangleMesh {
  const vertexAt = new Map<number, number>();
  const triangles = new Uint32Array(corners.length);
  const positions: number[] = [];
  for (const [k, node] of corners.entries()) {
    let vertex = vertexAt.get(node);
    if (vertex === undefined) {
      vertex = vertexAt.size;
      vertexAt.set(node, vertex);
      const i = node % nx;
      positions.push(x0 + i * cell, y0 + ((node - i) / nx) * cell, heights[node]);
    }
    triangles[k] = vertex;
  }
  return { positions: Float32Array.from(positions), triangles };
}
