import { boundsOf, type Grid, type TriangleMesh } from '../geometry/index.ts';
import { nodeDistances, undersideOf, type Window } from '../mesh/index.ts';
import { blockCells } from './parting/lattice.ts';
import type { PartingSurface } from './parting-surface.ts';

/** Which side of the plane a loose body stands on: above it under raised masters, below it over sunk ones. */
export type Side = 1 | -1;

export interface LooseInput {
  readonly side: Side;
  readonly surface: PartingSurface;
  /** The master the body belongs to, in its place (mold frame, mm). */
  readonly own: TriangleMesh;
  /** Other masters near it. */
  readonly others: readonly TriangleMesh[];
  /** Least distance to all masters, mm. */
  readonly clearance: number;
}

/** The nodes a loose body has to do with, whole blocks of them, and a grid that goes on round them. */
export interface Nodes {
  readonly grid: Grid;
  readonly window: Window;
}

const mostNodes = 4e6;

/** Nodes `wished` mm apart over a box, and `round` mm farther for what bounds a body in it. */
export function nodesOver(
  { min, max }: Readonly<Record<'min' | 'max', readonly [number, number]>>,
  round: number,
  wished: number,
): Nodes {
  const [width, depth] = [max[0] - min[0], max[1] - min[1]];
  const cell = Math.max(wished, Math.sqrt(((width + 2 * round) * (depth + 2 * round)) / mostNodes));
  const cells = (length: number): number => Math.ceil(length / cell / blockCells) * blockCells;
  const [across, along] = [cells(width), cells(depth)];
  const more = Math.ceil(round / cell) + 1;
  return {
    window: { i0: more, j0: more, nx: across + 1, ny: along + 1 },
    grid: {
      cell,
      x0: (min[0] + max[0] - across * cell) / 2 - more * cell,
      y0: (min[1] + max[1] - along * cell) / 2 - more * cell,
      nx: across + 1 + 2 * more,
      ny: along + 1 + 2 * more,
    },
  };
}

/** Lowest surfaces over the nodes of a grid, mm; NaN where no master is. */
export interface Roofs {
  readonly own: Float32Array;
  readonly others: Float32Array | undefined;
}

export function roofsOver({ own, others }: LooseInput, grid: Grid): Roofs {
  const near = others.filter((mesh) => comesInto(mesh, grid));
  return {
    own: undersideOf([own], grid),
    others: near.length > 0 ? undersideOf(near, grid) : undefined,
  };
}

/** Lowest surface of all masters over the nodes of a grid, mm; NaN where none is. */
export const roofOver = ({ own, others }: LooseInput, grid: Grid): Float32Array =>
  undersideOf([own, ...others.filter((mesh) => comesInto(mesh, grid))], grid);

function comesInto({ positions }: TriangleMesh, { cell, x0, y0, nx, ny }: Grid): boolean {
  const { min, max } = boundsOf(positions);
  return min[0] <= x0 + nx * cell && max[0] >= x0 && min[1] <= y0 + ny * cell && max[1] >= y0;
}

/** The lower of all roofs at each node. */
export function lowestRoof({ own, others }: Roofs): Float32Array {
  if (!others) return own;
  const roof = own.slice();
  for (let k = 0; k < roof.length; k++) {
    if (others[k] < roof[k] || Number.isNaN(roof[k])) roof[k] = others[k];
  }
  return roof;
}

/** Over the window, mm. */
export interface Ground {
  /** How far from the own master's shadow; 0 in it. */
  readonly toOwn: Float32Array;
  /** How far inside the ground of the own master; negative outside. */
  readonly inside: Float32Array;
}

/**
 * The ground a loose body may stand on: its own master's shadow and `reach` mm round it, up to half way to the
 * nearest other master's, less half the clearance.
 */
export function groundOf(roofs: Roofs, { grid, window }: Nodes, reach: number, clearance: number): Ground {
  const toOwn = nodeDistances(roofs.own, grid, window);
  const toOthers = roofs.others && nodeDistances(roofs.others, grid, window);
  const inside = new Float32Array(toOwn.length);
  for (let k = 0; k < inside.length; k++) {
    inside[k] = reach - toOwn[k];
    if (toOthers && toOwn[k] < reach)
      inside[k] = Math.min(inside[k], (toOthers[k] - toOwn[k] - clearance) / 2);
  }
  return { toOwn, inside };
}
