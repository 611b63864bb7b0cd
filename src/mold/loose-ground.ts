import { boundsOf, type TriangleMesh } from '../kernel/index.ts';
import { type Grid, nodeDistances, surfaceFrom, type Window } from '../mesh/index.ts';
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

/** Where a loose body may stand. Lengths in mm; on side -1 heights count downward. */
export interface Ground {
  /** How far past its master the body may reach. */
  readonly reach: number;
  readonly grid: Grid;
  /** The nodes the body has to do with, whole blocks of them; the grid reaches farther, for what bounds it. */
  readonly window: Window;
  /** Lowest surface of all masters over the grid, NaN where none is. */
  readonly roof: Float32Array;
  /** Over the window: how far from the shadow of the own master, and of any; 0 in it. */
  readonly toOwn: Float32Array;
  readonly toAny: Float32Array;
  /** Over the window: how far inside the own master's ground; negative outside. */
  readonly inside: Float32Array;
}

/** What part of the ground is looked at. */
export interface Place extends Record<'min' | 'max', readonly [number, number]> {
  /** Masters farther than this from it bound nothing in it. */
  readonly round: number;
}

const mostNodes = 4e6;

/**
 * The ground of a loose body: its own master's shadow and `reach` mm round it, up to half way to the nearest other
 * master's, less half the clearance.
 */
export function groundOver(input: LooseInput, place: Place, reach: number, wishedCell: number): Ground {
  const { side, own, others, clearance } = input;
  const { grid, window } = gridsOver(place, wishedCell);
  const ownRoof = lowestSurface([own], grid, side);
  const near = others.filter((mesh) => comesInto(mesh, grid));
  const toOwn = nodeDistances(ownRoof, grid, window);
  const inside = new Float32Array(toOwn.length);
  for (let k = 0; k < inside.length; k++) inside[k] = reach - toOwn[k];
  if (near.length === 0) return { reach, grid, window, roof: ownRoof, toOwn, toAny: toOwn, inside };
  const otherRoof = lowestSurface(near, grid, side);
  const toAny = nodeDistances(otherRoof, grid, window);
  for (let k = 0; k < toAny.length; k++) {
    const far = toOwn[k];
    const other = toAny[k];
    if (far < reach) inside[k] = Math.min(inside[k], (other - far - clearance) / 2);
    if (far < other) toAny[k] = far;
  }
  return { reach, grid, window, roof: lower(ownRoof, otherRoof), toOwn, toAny, inside };
}

/** A window of whole blocks over a place, and a grid that goes on round it. */
function gridsOver({ min, max, round }: Place, wished: number): Pick<Ground, 'grid' | 'window'> {
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

function comesInto({ positions }: TriangleMesh, { cell, x0, y0, nx, ny }: Grid): boolean {
  const { min, max } = boundsOf(positions);
  return min[0] <= x0 + nx * cell && max[0] >= x0 && min[1] <= y0 + ny * cell && max[1] >= y0;
}

/** Lowest surface over each node, seen from the body's side; NaN where no master is. */
function lowestSurface(meshes: readonly TriangleMesh[], grid: Grid, side: Side): Float32Array {
  const seen = surfaceFrom(meshes, grid, side === 1 ? 'below' : 'above');
  if (side === -1) for (let k = 0; k < seen.length; k++) seen[k] = -seen[k];
  return seen;
}

/** The lower of two at each node, in place of the first. */
function lower(roof: Float32Array, other: Float32Array): Float32Array {
  for (let k = 0; k < roof.length; k++) {
    if (other[k] < roof[k] || Number.isNaN(roof[k])) roof[k] = other[k];
  }
  return roof;
}
