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
  const box = boxToFill(input, skirt * raised + clearance);
  if (!box) return undefined;
  const grid = gridOn(box, Math.max(fine, atLeast));
  const { cell } = grid;
  const near = others.filter((mesh) => overlaps(boundsOf(mesh.positions), box));
  const roofs = [own, ...near].map((mesh) => lowestSurface(mesh, grid, side));
  const edge = distanceInside(roofs, grid, skirt * raised, clearance);
  const ceiling = ceilingOf(edge, grid, surface, side);
  const gap = clearance + betweenNodes * (atLeast > 0 ? fine : cell);
  lowerByBall(ceiling, lowestOf(roofs), grid, gap);
  return trimmed(ceiling, edge) > leastHeight ? { heights: ceiling, grid } : undefined;
}

/** Under this height nothing of a rim is left over `outside`, so the surface need not be asked. */
const lost = leastHeight - (leastHeight - outside) / wallSlope;

/** The parting surface over the nodes where there can be a body; `outside` elsewhere. */
function ceilingOf(
  edge: Float32Array,
  { cell, x0, y0, nx, ny }: Grid,
  surface: PartingSurface,
  side: Side,
): Float32Array {
  const ceiling = new Float32Array(edge.length).fill(outside);
  for (let j = 0, k = 0; j < ny; j++) {
    const y = y0 + j * cell;
    for (let i = 0; i < nx; i++, k++) {
      if (wallSlope * edge[k] <= outside) continue;
      const height = side * heightAt(surface, x0 + i * cell, y);
      if (height > lost) ceiling[k] = height;
    }
  }
  return ceiling;
}

/** Cuts thin rims and side walls down, in place; gives the greatest height left. */
function trimmed(heights: Float32Array, edge: Float32Array): number {
  let most = 0;
  for (let k = 0; k < heights.length; k++) {
    const top = heights[k];
    const rim = top < leastHeight ? leastHeight - wallSlope * (leastHeight - top) : top;
    heights[k] = Math.max(Math.min(rim, wallSlope * edge[k]), outside);
    if (heights[k] > most) most = heights[k];
  }
  return most;
}

type Rectangle = Record<'min' | 'max', readonly [number, number]>;

/**
 * Where the body can be, and so much round it as decides how far it reaches: the master's box and `margin` mm more,
 * but no more than that round where the surface is raised. Undefined where it is raised nowhere.
 */
function boxToFill({ own, surface, side }: LooseInput, margin: number): Rectangle | undefined {
  const { min, max } = boundsOf(own.positions);
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let y = min[1] - margin; y <= max[1] + margin; y += surface.cell) {
    for (let x = min[0] - margin; x <= max[0] + margin; x += surface.cell) {
      if (side * heightAt(surface, x, y) <= lost) continue;
      if (x < low[0]) low[0] = x;
      if (y < low[1]) low[1] = y;
      if (x > high[0]) high[0] = x;
      if (y > high[1]) high[1] = y;
    }
  }
  if (low[0] > high[0]) return undefined;
  // A cell of the surface more, since between its nodes it is raised as well, and a hair round all.
  const round = margin + surface.cell + 1;
  const [left, lower] = [0, 1].map((axis) => Math.max(low[axis] - round, min[axis] - margin - 1));
  const [right, upper] = [0, 1].map((axis) => Math.min(high[axis] + round, max[axis] + margin + 1));
  return { min: [left, lower], max: [right, upper] };
}

const overlaps = (a: { min: readonly number[]; max: readonly number[] }, b: Rectangle): boolean =>
  [0, 1].every((axis) => a.min[axis] <= b.max[axis] && a.max[axis] >= b.min[axis]);

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

function gridOn({ min, max }: Rectangle, wished: number): Grid {
  const [width, depth] = [max[0] - min[0], max[1] - min[1]];
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

/** Lowers heights, where there are any, to what stays under a ball rolled along the underside of a roof. */
function lowerByBall(
  heights: Float32Array,
  roof: Float32Array,
  { nx, ny, cell }: Grid,
  radius: number,
): void {
  const ball = ballOf(Math.floor(radius / cell), radius / cell).map(([i, j, drop]) => ({
    i,
    j,
    drop: drop * cell,
  }));
  const reach = Math.floor(radius / cell);
  const shifts = Int32Array.from(ball, ({ i, j }) => j * nx + i);
  const drops = Float64Array.from(ball, ({ drop }) => drop);
  for (let j = 0, k = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++, k++) {
      if (heights[k] <= lost) continue;
      const inner = i >= reach && j >= reach && i < nx - reach && j < ny - reach;
      let low = heights[k];
      for (let n = 0; n < shifts.length; n++) {
        if (!inner && !isOnGrid(i + ball[n].i, j + ball[n].j, nx, ny)) continue;
        const z = roof[k + shifts[n]] - drops[n];
        if (z < low) low = z;
      }
      heights[k] = low;
    }
  }
}

const isOnGrid = (i: number, j: number, nx: number, ny: number): boolean =>
  i >= 0 && j >= 0 && i < nx && j < ny;

/** Nodes within a ball's radius (in cells) of its middle, and how far its underside is below the middle there. */
function ballOf(reach: number, radius: number): [number, number, number][] {
  const nodes: [number, number, number][] = [];
  for (let j = -reach; j <= reach; j++) {
    for (let i = -reach; i <= reach; i++) {
      const rest = radius * radius - i * i - j * j;
      if (rest >= 0) nodes.push([i, j, Math.sqrt(rest)]);
    }
  }
  return nodes;
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
