import type { Grid } from '../../geometry/index.ts';
import type { Window } from '../../mesh/index.ts';

/** Cells along one side of a block of the triangulated network; a power of two. */
export const blockCells = 64;
/** The sheet reaches this far past the rim, mm, so that the cut through the disc has no edge in it. */
const overhang = 2;
/** More nodes than this would ask for more than two gigabytes; whoever asks has to choose a coarser cell. */
const mostNodes = 40e6;

/**
 * The nodes the parting surface is computed at: a square round the disc, whole blocks, no node on the disc's axes.
 * Throws RangeError for sizes not above 0 and for more than 40 million nodes.
 */
export function latticeOver(discRadius: number, cell: number): Grid {
  if (!(discRadius > 0) || !(cell > 0)) {
    throw new RangeError(`latticeOver(${discRadius}, ${cell}): both must be > 0`);
  }
  const blocks = Math.ceil((2 * (discRadius + overhang)) / cell / blockCells);
  const cells = blocks * blockCells;
  if ((cells + 1) ** 2 > mostNodes) {
    throw new RangeError(
      `latticeOver(${discRadius}, ${cell}): more than ${mostNodes} nodes; take larger cells`,
    );
  }
  // Half a cell off centre: meshes with edges on an axis are met inside their faces.
  const start = (0.5 - cells / 2) * cell;
  return { cell, x0: start, y0: start, nx: cells + 1, ny: cells + 1 };
}

/** Nodes within a box of x, y and `rim` more on each side, as far as the lattice goes. */
export function windowOver(
  { cell, x0, y0, nx, ny }: Grid,
  box: { readonly min: ArrayLike<number>; readonly max: ArrayLike<number> },
  rim = 0,
): Window {
  const first = (low: number, from: number): number => Math.max(0, Math.ceil((low - from) / cell) - rim);
  const last = (high: number, from: number, count: number): number =>
    Math.min(count - 1, Math.floor((high - from) / cell) + rim);
  const i0 = first(box.min[0], x0);
  const j0 = first(box.min[1], y0);
  return {
    i0,
    j0,
    nx: Math.max(0, last(box.max[0], x0, nx) - i0 + 1),
    ny: Math.max(0, last(box.max[1], y0, ny) - j0 + 1),
  };
}

/** The window as a grid of its own. */
export const gridOf = (lattice: Grid, { i0, j0, nx, ny }: Window): Grid => ({
  cell: lattice.cell,
  x0: lattice.x0 + i0 * lattice.cell,
  y0: lattice.y0 + j0 * lattice.cell,
  nx,
  ny,
});
