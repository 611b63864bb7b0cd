import { boundsOf, joinMeshes, type TriangleMesh } from '../kernel/index.ts';
import { type Grid, heightMap, nodeDistances, type Window } from '../mesh/index.ts';
import { blockCells } from './parting/lattice.ts';
import { heightAt, type PartingSurface } from './parting-surface.ts';

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
  readonly grid: Grid;
  /** The nodes the body has to do with, whole blocks of them; the grid reaches farther, for what bounds it. */
  readonly window: Window;
  /** Lowest surface of all masters over the grid, NaN where none is. */
  readonly roof: Float32Array;
  /** Over the window: how far from any master's shadow; 0 in it. */
  readonly toMaster: Float32Array;
  /** Over the window: how far inside the ground of the own master; negative outside. */
  readonly inside: Float32Array;
}

/** What is raised by no more than this gives no body. */
export interface GroundWish {
  readonly lost: number;
  /** How far the body may reach past its master. */
  readonly reach: number;
  /** Its side walls rise so much on their way in. */
  readonly wallSlope: number;
  readonly cell: number;
}

const mostNodes = 4e6;

/**
 * The ground of a loose body: its own master's shadow and `reach` round it, up to half way to the nearest other
 * master's, less half the clearance. Undefined where the parting surface is raised nowhere there.
 */
export function groundOf(input: LooseInput, wish: GroundWish): Ground | undefined {
  const { side, own, others, clearance } = input;
  const raised = raisedBox(input, wish);
  if (!raised) return undefined;
  // A master farther off than this bounds nothing: where it does, walls are as high as the surface.
  const round = wish.reach + clearance + (2 * raised.height) / wish.wallSlope;
  const { grid, window } = gridsOver(raised, round, wish.cell);
  const ownRoof = lowestSurface(own, grid, side);
  const near = others.filter((mesh) => reachesInto(mesh, grid));
  const otherRoof = near.length > 0 ? lowestSurface(joinMeshes(near), grid, side) : undefined;
  const toOwn = nodeDistances(ownRoof, grid, window);
  const toOther = otherRoof && nodeDistances(otherRoof, grid, window);
  return {
    grid,
    window,
    roof: otherRoof ? lower(ownRoof, otherRoof) : ownRoof,
    inside: toOwn.map((far, k) => insideBy(far, toOther ? toOther[k] : Infinity, wish.reach, clearance)),
    toMaster: toOther ? toOwn.map((far, k) => Math.min(far, toOther[k])) : toOwn,
  };
}

const insideBy = (toOwn: number, toOther: number, reach: number, clearance: number): number =>
  toOwn >= reach ? reach - toOwn : Math.min(reach - toOwn, (toOther - toOwn - clearance) / 2);

interface Raised extends Record<'min' | 'max', readonly [number, number]> {
  readonly height: number;
}

/** Where the surface is raised within the reach of the master, with a rim where it is not, and how high it is there. */
function raisedBox({ own, surface, side }: LooseInput, { lost, reach }: GroundWish): Raised | undefined {
  const { min, max } = boundsOf(own.positions);
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  let height = 0;
  for (let y = min[1] - reach; y <= max[1] + reach; y += surface.cell) {
    for (let x = min[0] - reach; x <= max[0] + reach; x += surface.cell) {
      const here = side * heightAt(surface, x, y);
      if (here <= lost) continue;
      if (here > height) height = here;
      if (x < low[0]) low[0] = x;
      if (y < low[1]) low[1] = y;
      if (x > high[0]) high[0] = x;
      if (y > high[1]) high[1] = y;
    }
  }
  if (low[0] > high[0]) return undefined;
  // A cell of the surface more, since between its nodes it is raised as well, and a hair round all.
  const rim = surface.cell + 1;
  const [left, lower] = [0, 1].map((axis) => Math.max(low[axis] - rim, min[axis] - reach - 1));
  const [right, upper] = [0, 1].map((axis) => Math.min(high[axis] + rim, max[axis] + reach + 1));
  return { min: [left, lower], max: [right, upper], height };
}

/** A window of whole blocks over a box, and a grid that goes on `round` mm past it. */
function gridsOver({ min, max }: Raised, round: number, wished: number): { grid: Grid; window: Window } {
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

function reachesInto({ positions }: TriangleMesh, { cell, x0, y0, nx, ny }: Grid): boolean {
  const { min, max } = boundsOf(positions);
  return min[0] <= x0 + nx * cell && max[0] >= x0 && min[1] <= y0 + ny * cell && max[1] >= y0;
}

/** Lowest surface over each node, seen from the body's side; NaN where the master is not. */
function lowestSurface(mesh: TriangleMesh, grid: Grid, side: Side): Float32Array {
  const { bottom, top } = heightMap(mesh, grid);
  if (side === 1) return bottom;
  for (let k = 0; k < top.length; k++) top[k] = -top[k];
  return top;
}

/** The lower of two at each node, in place of the first. */
function lower(roof: Float32Array, other: Float32Array): Float32Array {
  for (let k = 0; k < roof.length; k++) if (other[k] < roof[k] || Number.isNaN(roof[k])) roof[k] = other[k];
  return roof;
}
