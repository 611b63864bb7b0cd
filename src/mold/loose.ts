import type { TriangleMesh } from '../kernel/index.ts';
import { boundsOf } from '../kernel/index.ts';
import type { Grid } from '../mesh/index.ts';
import { type Ground, groundOver, type LooseInput, type Place, type Side } from './loose-ground.ts';
import { gridOf } from './parting/lattice.ts';
import { network } from './parting/network.ts';
import { heightAt, type PartingSurface } from './parting-surface.ts';

export type { Side } from './loose-ground.ts';

/** The body ends where it is thinner than this, mm: a thinner rim breaks off in the hand. */
const leastHeight = 0.3;
/** It reaches at most this many times its greatest height past the master: slopes over 27 degrees run out by then. */
const skirt = 2;
/** Cells across the clearance, and their bounds in mm. */
const cellsInClearance = 6;
const finestCell = 0.03;
const coarsestCell = 0.06;
/** What lies between the nodes may be this many cells nearer than the nodes say. */
const betweenNodes = 1.3;
/** Side walls are this steep (83 degrees). */
const wallSlope = 8;
/** Everything outside the body is this far below its foot, mm. */
const outside = -0.5;
/** Under this height nothing of a rim is left over `outside`, so the surface need not be asked. */
const lost = leastHeight - (leastHeight - outside) / wallSlope;
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
  const coarse = coarseField(input);
  if (!coarse) return undefined;
  const ground = groundOver(input, placeOf(coarse, input), coarse.ground.reach, cellFor(input));
  const field = fieldOn(ground, input, ground.grid.cell);
  return field && network(field.heights, field.grid, tolerance).sheet;
}

/**
 * Volume (mm3) of that body: its heights summed over coarser cells. Within 2 % of the solids of masters, 4 % where
 * level ground lets it spread wide.
 */
export function looseVolume(input: LooseInput): number {
  const field = coarseField(input);
  if (!field) return 0;
  return field.heights.reduce((sum, height) => sum + Math.max(0, height), 0) * field.grid.cell ** 2;
}

const cellFor = ({ clearance }: LooseInput): number =>
  Math.min(Math.max(clearance / cellsInClearance, finestCell), coarsestCell);

interface LooseField {
  readonly ground: Ground;
  /** The window of the ground alone, and the body's heights there. */
  readonly grid: Grid;
  readonly heights: Float32Array;
}

/** The body's heights; `cell` is what its clearance is kept for. Undefined where nothing is high enough. */
function fieldOn(ground: Ground, input: LooseInput, cell: number): LooseField | undefined {
  const grid = gridOf(ground.grid, ground.window);
  const heights = ceilingOf(ground.inside, grid, input.surface, input.side);
  lowerByBall(heights, ground, input.clearance + betweenNodes * cell);
  return trimmed(heights, ground.inside) > leastHeight ? { ground, grid, heights } : undefined;
}

/** The body in coarse cells, wherever in reach of its master the parting surface is raised. */
function coarseField(input: LooseInput): LooseField | undefined {
  const { own, surface, side, clearance } = input;
  const raised = surface.flat ? 0 : highest(own, surface, side);
  if (raised <= leastHeight) return undefined;
  const reach = skirt * raised;
  const { min, max } = boundsOf(own.positions);
  const box = new Box();
  for (let y = min[1] - reach; y <= max[1] + reach; y += surface.cell) {
    for (let x = min[0] - reach; x <= max[0] + reach; x += surface.cell) {
      if (side * heightAt(surface, x, y) > lost) box.take(x, y);
    }
  }
  // Between its nodes the surface is raised as well.
  const place = box.grown(surface.cell);
  if (!place) return undefined;
  const ground = groundOver(input, { ...place, round: 2 * reach + clearance }, reach, volumeCell);
  return fieldOn(ground, input, cellFor(input));
}

/** The box round a body known in coarse cells, and round what of it lies between them. */
function placeOf({ ground, grid, heights }: LooseField, { clearance }: LooseInput): Place {
  const { cell, x0, y0, nx } = grid;
  const box = new Box();
  let far = 0;
  let top = 0;
  for (let k = 0; k < heights.length; k++) {
    if (heights[k] <= 0) continue;
    box.take(x0 + (k % nx) * cell, y0 + Math.floor(k / nx) * cell);
    far = Math.max(far, ground.toOwn[k]);
    top = Math.max(top, heights[k]);
  }
  const spare = 2 * cell;
  // Beside another master that is farther than the own one by this a wall is as high as the body.
  const round = far + clearance + (2 * top) / wallSlope + 2 * spare;
  return { min: [0, 0], max: [0, 0], ...box.grown(spare), round };
}

/** The least box round points. */
class Box {
  private readonly low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  private readonly high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];

  take(x: number, y: number): void {
    const { low, high } = this;
    if (x < low[0]) low[0] = x;
    if (y < low[1]) low[1] = y;
    if (x > high[0]) high[0] = x;
    if (y > high[1]) high[1] = y;
  }

  /** With `by` mm more on each side; undefined where no point was taken. */
  grown(by: number): Pick<Place, 'min' | 'max'> | undefined {
    const { low, high } = this;
    if (low[0] > high[0]) return undefined;
    return { min: [low[0] - by, low[1] - by], max: [high[0] + by, high[1] + by] };
  }
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

/** The parting surface over the nodes where there can be a body; `outside` elsewhere. */
function ceilingOf(
  inside: Float32Array,
  { cell, x0, y0, nx, ny }: Grid,
  surface: PartingSurface,
  side: Side,
): Float32Array {
  const ceiling = new Float32Array(inside.length).fill(outside);
  for (let j = 0, k = 0; j < ny; j++) {
    const y = y0 + j * cell;
    for (let i = 0; i < nx; i++, k++) {
      if (wallSlope * inside[k] <= outside) continue;
      const height = side * heightAt(surface, x0 + i * cell, y);
      if (height > lost) ceiling[k] = height;
    }
  }
  return ceiling;
}

/** Lowers heights, where there are any, to what stays under a ball rolled along the underside of the masters. */
function lowerByBall(heights: Float32Array, { grid, window, roof, toAny }: Ground, radius: number): void {
  const ball = ballOf(radius, grid);
  for (let j = 0, k = 0; j < window.ny; j++) {
    const row = (window.j0 + j) * grid.nx + window.i0;
    for (let i = 0; i < window.nx; i++, k++) {
      if (heights[k] <= lost || toAny[k] > radius) continue;
      let low = heights[k];
      for (let n = 0; n < ball.steps.length; n++) {
        const z = roof[row + i + ball.steps[n]] - ball.drops[n];
        if (!(z < low)) continue;
        low = z;
        if (low <= lost) break;
      }
      heights[k] = low;
    }
  }
}

/** Steps to the nodes within a ball's radius (mm) of its middle, and how far its underside is below the middle there. */
function ballOf(
  radius: number,
  { nx, cell }: Grid,
): { readonly steps: Int32Array; readonly drops: Float64Array } {
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
    steps: Int32Array.from(nodes, ({ step }) => step),
    drops: Float64Array.from(nodes, ({ drop }) => drop),
  };
}

/** Cuts thin rims and side walls down, in place; gives the greatest height left. */
function trimmed(heights: Float32Array, inside: Float32Array): number {
  let most = 0;
  for (let k = 0; k < heights.length; k++) {
    const top = heights[k];
    const rim = top < leastHeight ? leastHeight - wallSlope * (leastHeight - top) : top;
    heights[k] = Math.max(Math.min(rim, wallSlope * inside[k]), outside);
    if (heights[k] > most) most = heights[k];
  }
  return most;
}
