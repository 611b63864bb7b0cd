import type { Grid, TriangleMesh } from '../../geometry/index.ts';
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
  const blocks = new Blocks(lattice);
  const corners = blocks.all.map((block) => cornersOf(block, errors, lattice, tolerance));
  const worst = new Float64Array(blocks.all.length);
  // What is asked for in a block reaches the blocks round it and no farther: a block's diagonal ends at its corners.
  let changed = blocks.withNeighbors(blocks.all.filter((block) => !isLevel(block, heights, lattice)));
  while (changed.length > 0) {
    passErrorsUp(heights, errors, lattice, changed);
    const farNodes: number[] = [];
    for (const block of changed) {
      corners[block.index] = cornersOf(block, errors, lattice, tolerance);
      worst[block.index] = findFarNodes(heights, corners[block.index], lattice, tolerance, farNodes);
    }
    for (const node of farNodes) errors[node] = Number.POSITIVE_INFINITY;
    changed = blocks.withNeighbors(farNodes.flatMap((node) => blocks.at(node)));
  }
  const error = worst.reduce((most, one) => Math.max(most, one), 0);
  return { sheet: sheetOf(heights, corners, lattice), error };
}

/** A block of cells; its first node is (i0, j0), its last one is shared with the next block. */
interface Block {
  readonly index: number;
  readonly i0: number;
  readonly j0: number;
}

class Blocks {
  readonly all: readonly Block[];
  private readonly across: number;
  private readonly along: number;

  constructor(private readonly lattice: Grid) {
    this.across = (lattice.nx - 1) / blockCells;
    this.along = (lattice.ny - 1) / blockCells;
    this.all = Array.from({ length: this.across * this.along }, (_, index) => ({
      index,
      i0: (index % this.across) * blockCells,
      j0: Math.floor(index / this.across) * blockCells,
    }));
  }

  /** Those a node belongs to: up to four. */
  at(node: number): Block[] {
    const { nx } = this.lattice;
    const near = (step: number): number[] => {
      const block = Math.floor(step / blockCells);
      return step % blockCells === 0 ? [block - 1, block] : [block];
    };
    return near(Math.floor(node / nx)).flatMap((b) => near(node % nx).flatMap((a) => this.block(a, b)));
  }

  /** The same and those that share a side or a corner with one of them, each once, in order. */
  withNeighbors(some: readonly Block[]): Block[] {
    const found = new Set<number>();
    for (const { i0, j0 } of some) {
      const [a, b] = [i0 / blockCells, j0 / blockCells];
      for (const y of [b - 1, b, b + 1])
        for (const { index } of [a - 1, a, a + 1].flatMap((x) => this.block(x, y))) found.add(index);
    }
    return [...found].sort((x, y) => x - y).map((index) => this.all[index]);
  }

  private block(a: number, b: number): Block[] {
    return a >= 0 && b >= 0 && a < this.across && b < this.along ? [this.all[b * this.across + a]] : [];
  }
}

function isLevel({ i0, j0 }: Block, heights: Float32Array, { nx }: Grid): boolean {
  const height = heights[j0 * nx + i0];
  for (let j = j0; j <= j0 + blockCells; j++) {
    for (let k = j * nx + i0; k <= j * nx + i0 + blockCells; k++) if (heights[k] !== height) return false;
  }
  return true;
}

/**
 * Square (a, b) of a level, counted in its own size, is cut along the diagonal through the middle of its parent:
 * rising where a + b is even, falling where it is odd.
 */
const rising = (a: number, b: number): boolean => ((a + b) & 1) === 0;

function passErrorsUp(h: Float32Array, errors: Float32Array, lattice: Grid, blocks: readonly Block[]): void {
  for (let size = 2; size <= blockCells; size *= 2) {
    for (const block of blocks) sideErrors(h, errors, lattice, block, size);
    for (const block of blocks) diagonalErrors(h, errors, lattice, block, size);
  }
}

/** Middles of the sides of squares: the long sides of triangles whose right angle is in a square's middle. */
function sideErrors(
  h: Float32Array,
  errors: Float32Array,
  { nx, ny }: Grid,
  { i0, j0 }: Block,
  size: number,
): void {
  const half = size >> 1;
  const quarter = size >> 2;
  for (let j = j0, level = true; j <= j0 + blockCells; j += half, level = !level) {
    const reach = level ? half : half * nx;
    const down = (j > 0 ? -quarter : quarter) * nx;
    const up = (j < ny - 1 ? quarter : -quarter) * nx;
    for (let i = i0 + (level ? half : 0); i <= i0 + blockCells; i += size) {
      const k = j * nx + i;
      let error = Math.max(errors[k], Math.abs((h[k - reach] + h[k + reach]) / 2 - h[k]));
      if (quarter > 0) {
        const left = i > 0 ? -quarter : quarter;
        const right = i < nx - 1 ? quarter : -quarter;
        error = Math.max(error, errors[k + down + left], errors[k + down + right]);
        error = Math.max(error, errors[k + up + left], errors[k + up + right]);
      }
      errors[k] = error;
    }
  }
}

/** Middles of squares: the long sides are diagonals. */
function diagonalErrors(
  h: Float32Array,
  errors: Float32Array,
  { nx }: Grid,
  { i0, j0 }: Block,
  size: number,
): void {
  const half = size >> 1;
  for (let j = j0 + half; j < j0 + blockCells; j += size) {
    for (let i = i0 + half; i < i0 + blockCells; i += size) {
      const k = j * nx + i;
      const reach = rising((i - half) / size, (j - half) / size) ? half * nx + half : half * nx - half;
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

/** Node numbers of the corners of a block's triangles, three by three. */
function cornersOf({ i0, j0 }: Block, errors: Float32Array, { nx }: Grid, tolerance: number): number[] {
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
  const low = j0 * nx + i0;
  const [right, up] = [low + blockCells, low + blockCells * nx];
  const high = up + blockCells;
  if (rising(i0 / blockCells, j0 / blockCells)) {
    halve(high, low, right);
    halve(low, high, up);
  } else {
    halve(right, up, low);
    halve(up, right, high);
  }
  return corners;
}

/** Adds the nodes farther than the tolerance from the triangle over them to `farNodes`; gives the greatest distance. */
function findFarNodes(
  heights: Float32Array,
  corners: readonly number[],
  { nx }: Grid,
  tolerance: number,
  farNodes: number[],
): number {
  let greatest = 0;
  for (let t = 0; t < corners.length; t += 3) {
    const a = corners[t];
    const b = corners[t + 1];
    const c = corners[t + 2];
    const ai = a % nx;
    const bi = b % nx;
    const ci = c % nx;
    const aj = (a - ai) / nx;
    const bj = (b - bi) / nx;
    const cj = (c - ci) / nx;
    const twice = (bi - ai) * (cj - aj) - (bj - aj) * (ci - ai);
    if (twice <= 1) continue;
    const za = heights[a];
    const zb = heights[b];
    const zc = heights[c];
    const [left, right] = [Math.min(ai, bi, ci), Math.max(ai, bi, ci)];
    for (let j = Math.min(aj, bj, cj); j <= Math.max(aj, bj, cj); j++) {
      for (let i = left; i <= right; i++) {
        const wb = (i - ai) * (cj - aj) - (j - aj) * (ci - ai);
        const wc = (bi - ai) * (j - aj) - (bj - aj) * (i - ai);
        if (wb < 0 || wc < 0 || wb + wc > twice) continue;
        const z = (za * (twice - wb - wc) + zb * wb + zc * wc) / twice;
        const off = Math.abs(z - heights[j * nx + i]);
        if (off > tolerance) farNodes.push(j * nx + i);
        if (off > greatest) greatest = off;
      }
    }
  }
  return greatest;
}

/** Vertices in the order they are met. */
function sheetOf(
  heights: Float32Array,
  corners: readonly (readonly number[])[],
  { cell, x0, y0, nx }: Grid,
): TriangleMesh {
  const vertexAt = new Int32Array(heights.length).fill(-1);
  const triangles = new Uint32Array(corners.reduce((sum, some) => sum + some.length, 0));
  const positions: number[] = [];
  let [count, corner] = [0, 0];
  for (const some of corners) {
    for (const node of some) {
      if (vertexAt[node] < 0) {
        vertexAt[node] = count++;
        const i = node % nx;
        positions.push(x0 + i * cell, y0 + ((node - i) / nx) * cell, heights[node]);
      }
      triangles[corner++] = vertexAt[node];
    }
  }
  return { positions: Float32Array.from(positions), triangles };
}
