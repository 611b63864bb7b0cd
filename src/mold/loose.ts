import { boundsOf, type TriangleMesh } from '../kernel/index.ts';
import { type Grid, heightMap } from '../mesh/index.ts';
import { blockCells } from './parting/lattice.ts';
import { network } from './parting/network.ts';
import { spread } from './parting/sweep.ts';
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

/** The body ends where it is thinner than this, mm: a thinner rim breaks off in the hand. */
const leastHeight = 0.3;
/** It reaches at most this many times its greatest height past the master: slopes over 27 degrees run out by then. */
const skirt = 2;
/** Cells across the clearance, and their bounds in mm. */
const cellsInClearance = 6;
const finestCell = 0.03;
const coarsestCell = 0.06;
const mostNodes = 4e6;
/** What lies between the nodes may be this many cells nearer than the nodes say. */
const betweenNodes = 1.3;
/** Side walls are this steep (83 degrees). */
const wallSlope = 8;
/** Everything outside the body is this far below its foot, mm. */
const outside = -0.5;
/** Volumes are summed over cells of this many mm. */
const volumeCell = 0.15;
/** The network keeps this close to the field, mm. */
const tolerance = 0.005;

/**
 * The upper face of a loose build-up as a sheet over a rectangle; where it is above z = 0 there is body. It rises to
 * the parting surface, stays the clearance away from the masters' lowest surface (which is lowered by a ball), is
 * nearer to its own master than to others and ends where it gets thin. On side -1 everything is seen from below: z
 * counts downward. Undefined where there is nothing to hold up.
 */
export function looseSheet(input: LooseInput): TriangleMesh | undefined {
  const field = looseField(input);
  return field && network(field.heights, field.grid, tolerance).sheet;
}

/**
 * Volume (mm3) of that body: its heights summed over coarser cells. Within 2 % of the solids of masters, 4 % where
 * level ground lets it spread wide.
 */
export function looseVolume(input: LooseInput): number {
  const field = looseField(input, volumeCell);
  if (!field) return 0;
  return field.heights.reduce((sum, height) => sum + Math.max(0, height), 0) * field.grid.cell ** 2;
}

interface LooseField {
  readonly heights: Float32Array;
  readonly grid: Grid;
}

function looseField(input: LooseInput, atLeast = 0): LooseField | undefined {
  const { side, surface, own, others, clearance } = input;
  const raised = surface.flat ? 0 : highest(own, surface, side);
  if (raised <= leastHeight) return undefined;
  const fine = Math.min(Math.max(clearance / cellsInClearance, finestCell), coarsestCell);
  const grid = gridRound(own, skirt * raised + clearance, Math.max(fine, atLeast));
  const { cell, x0, y0, nx } = grid;
  const roofs = [own, ...others].map((mesh) => lowestSurface(mesh, grid, side));
  const heights = loweredByBall(
    lowestOf(roofs),
    grid,
    clearance + betweenNodes * (atLeast > 0 ? fine : cell),
  );
  const edge = distanceInside(roofs, grid, skirt * raised, clearance);
  let most = 0;
  for (let k = 0; k < heights.length; k++) {
    const i = k % nx;
    const top = Math.min(heights[k], side * heightAt(surface, x0 + i * cell, y0 + ((k - i) / nx) * cell));
    const rim = top < leastHeight ? leastHeight - wallSlope * (leastHeight - top) : top;
    heights[k] = Math.max(Math.min(rim, wallSlope * edge[k]), outside);
    most = Math.max(most, heights[k]);
  }
  return most > leastHeight ? { heights, grid } : undefined;
}

/** Greatest height of the parting surface over the master's box, away from the plane. */
function highest({ positions }: TriangleMesh, surface: PartingSurface, side: Side): number {
  const { min, max } = boundsOf(positions);
  let most = 0;
  for (let y = min[1]; y <= max[1]; y += surface.cell) {
    for (let x = min[0]; x <= max[0]; x += surface.cell)
      most = Math.max(most, side * heightAt(surface, x, y));
  }
  return most;
}

function gridRound({ positions }: TriangleMesh, margin: number, wished: number): Grid {
  const { min, max } = boundsOf(positions);
  const [width, depth] = [0, 1].map((axis) => max[axis] - min[axis] + 2 * (margin + 1));
  const cell = Math.max(wished, Math.sqrt((width * depth) / mostNodes));
  const cells = (length: number): number => Math.ceil(length / cell / blockCells) * blockCells;
  const [across, along] = [cells(width), cells(depth)];
  return {
    cell,
    x0: (min[0] + max[0] - across * cell) / 2,
    y0: (min[1] + max[1] - along * cell) / 2,
    nx: across + 1,
    ny: along + 1,
  };
}

/** Lowest surface over each node, seen from the body's side; Infinity where the master is not. */
function lowestSurface(mesh: TriangleMesh, grid: Grid, side: Side): Float32Array {
  const { bottom, top } = heightMap(mesh, grid);
  const seen = side === 1 ? bottom : top;
  for (let k = 0; k < seen.length; k++)
    seen[k] = Number.isNaN(seen[k]) ? Number.POSITIVE_INFINITY : side * seen[k];
  return seen;
}

function lowestOf(roofs: readonly Float32Array[]): Float32Array {
  const lowest = roofs[0].slice();
  for (const roof of roofs.slice(1)) {
    for (let k = 0; k < lowest.length; k++) if (roof[k] < lowest[k]) lowest[k] = roof[k];
  }
  return lowest;
}

/** What stays under a ball of the given radius rolled along the underside of a roof. */
function loweredByBall(roof: Float32Array, { nx, ny, cell }: Grid, radius: number): Float32Array {
  const lowered = new Float32Array(roof.length).fill(Number.POSITIVE_INFINITY);
  const reach = Math.floor(radius / cell);
  for (let dj = -reach; dj <= reach; dj++) {
    for (let di = -reach; di <= reach; di++) {
      const rest = radius * radius - (di * di + dj * dj) * cell * cell;
      if (rest < 0) continue;
      const drop = Math.sqrt(rest);
      const from = Math.max(0, -di);
      const to = Math.min(nx, nx - di);
      for (let j = Math.max(0, -dj); j < Math.min(ny, ny - dj); j++) {
        const shift = dj * nx + di;
        for (let k = j * nx + from; k < j * nx + to; k++) {
          const z = roof[k + shift] - drop;
          if (z < lowered[k]) lowered[k] = z;
        }
      }
    }
  }
  return lowered;
}

/**
 * How far (mm) each node is inside the ground of the first roof: half way to the nearest other one, less half the
 * clearance, and at most `most` from its own.
 */
function distanceInside(
  roofs: readonly Float32Array[],
  grid: Grid,
  most: number,
  clearance: number,
): Float32Array {
  const slope = new Float32Array(grid.nx * grid.ny).fill(1);
  const distanceTo = (roof: Float32Array): Float32Array => {
    const distance = new Float32Array(roof.length);
    for (let k = 0; k < roof.length; k++) distance[k] = roof[k] < Infinity ? 0 : Infinity;
    spread(distance, slope, grid, 2 * most + clearance);
    return distance;
  };
  const own = distanceTo(roofs[0]);
  const other = roofs.length > 1 ? distanceTo(lowestOf(roofs.slice(1))) : undefined;
  for (let k = 0; k < own.length; k++) {
    const half = other ? (other[k] - own[k] - clearance) / 2 : Infinity;
    // Both unknown: far from everything.
    own[k] = Number.isNaN(half) ? -most : Math.min(most - own[k], half);
  }
  return own;
}
