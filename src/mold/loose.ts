import { boundsOf, type Grid, moveMesh, type Point2, scaling, type TriangleMesh } from '../geometry/index.ts';
import {
  type Ground,
  groundOf,
  type LooseInput,
  lowestRoof,
  type Nodes,
  nodesOver,
  roofOver,
  roofsOver,
  type Side,
} from './loose-ground.ts';
import { gridOf } from './parting/lattice.ts';
import { network } from './parting/network.ts';
import { heightAt, type PartingSurface } from './parting-surface.ts';
import { lowerByBall } from './under-ball.ts';

export type { Side } from './loose-ground.ts';

/** A build-up ends where it is thinner than this, mm: a thinner rim breaks off in the hand. */
export const leastBuildUp = 0.3;
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
const lost = leastBuildUp - (leastBuildUp - outside) / wallSlope;
/** Volumes are summed over cells of this many mm. */
const coarseCell = 0.15;
/** The network keeps this close to the field, mm. */
const tolerance = 0.005;

/**
 * The upper face of a loose build-up as a sheet over a rectangle; where it is above z = 0 there is body. It rises to
 * the parting surface, stays the clearance away from the masters' lowest surface (which is lowered by a ball), is
 * nearer to its own master than to others and ends where it gets thin. On side -1 everything is seen from below: z
 * counts downward. Undefined where there is nothing to hold up.
 */
export function looseSheet(asked: LooseInput): TriangleMesh | undefined {
  const input = seenUpright(asked);
  const coarse = coarseBody(input);
  if (!coarse) return undefined;
  const { box, walled, far } = placeOf(coarse);
  const cell = cellFor(input);
  const ball = input.clearance + betweenNodes * cell;
  const nodes = nodesOver(box, Math.max(ball, walled ? far + input.clearance : 0), cell);
  const roofs = walled && roofsOver(input, nodes.grid);
  const inside = roofs ? groundOf(roofs, nodes, coarse.reach, input.clearance).inside : undefined;
  const roof = roofs ? lowestRoof(roofs) : roofOver(input, nodes.grid);
  const heights = heightsOf(input, nodes, roof, inside, nodes.grid.cell);
  return heights && network(heights, gridOf(nodes.grid, nodes.window), tolerance).sheet;
}

/**
 * Volume (mm3) of that body: its heights summed over coarser cells. Within 2 % of the solids of masters, 4 % where
 * level ground lets it spread wide.
 */
export function looseVolume(input: LooseInput): number {
  const body = coarseBody(seenUpright(input));
  if (!body) return 0;
  return body.heights.reduce((sum, height) => sum + Math.max(0, height), 0) * body.nodes.grid.cell ** 2;
}

/** Where that body stands, seen from above: the middles of the coarse cells it fills. */
export function looseFootprint(input: LooseInput): readonly Point2[] {
  const body = coarseBody(seenUpright(input));
  if (!body) return [];
  const { cell, x0, y0, nx } = gridOf(body.nodes.grid, body.nodes.window);
  const points: Point2[] = [];
  for (const [k, height] of body.heights.entries())
    if (height > 0) points.push([x0 + (k % nx) * cell, y0 + Math.floor(k / nx) * cell]);
  return points;
}

/** On side -1 the masters upside down, so that what is over the body is their underside. */
const seenUpright = (input: LooseInput): LooseInput =>
  input.side === 1
    ? input
    : {
        ...input,
        own: moveMesh(input.own, scaling(1, 1, -1)),
        others: input.others.map((mesh) => moveMesh(mesh, scaling(1, 1, -1))),
      };

const cellFor = ({ clearance }: LooseInput): number =>
  Math.min(Math.max(clearance / cellsInClearance, finestCell), coarsestCell);

/** The body's heights over the window; `cell` is what its clearance is kept for. Undefined where none is high enough. */
function heightsOf(
  input: LooseInput,
  nodes: Nodes,
  roof: Float32Array,
  inside: Float32Array | undefined,
  cell: number,
): Float32Array | undefined {
  const heights = ceilingOf(inside, gridOf(nodes.grid, nodes.window), input.surface, input.side);
  lowerByBall(heights, roof, nodes, input.clearance + betweenNodes * cell, lost);
  return trimmed(heights, inside) > leastBuildUp ? heights : undefined;
}

interface CoarseBody extends Ground {
  readonly nodes: Nodes;
  readonly heights: Float32Array;
  /** How far past its master it may stand, mm. */
  readonly reach: number;
}

/** The body in coarse cells, wherever in reach of its master the parting surface is raised. */
function coarseBody(input: LooseInput): CoarseBody | undefined {
  const { own, surface, side, clearance } = input;
  const raised = surface.flat ? 0 : highest(own, surface, side);
  if (raised <= leastBuildUp) return undefined;
  const reach = skirt * raised;
  const { min, max } = boundsOf(own.positions);
  const box = new Box();
  let top = 0;
  for (let y = min[1] - reach; y <= max[1] + reach; y += surface.cell) {
    for (let x = min[0] - reach; x <= max[0] + reach; x += surface.cell) {
      const height = side * heightAt(surface, x, y);
      if (height > lost) box.take(x, y);
      if (height > top) top = height;
    }
  }
  if (box.empty) return undefined;
  // Between its nodes the surface is raised as well.
  const nodes = nodesOver(box.grown(surface.cell), reach + clearance + besideWall(top), coarseCell);
  const roofs = roofsOver(input, nodes.grid);
  const ground = groundOf(roofs, nodes, reach, clearance);
  const heights = heightsOf(input, nodes, lowestRoof(roofs), ground.inside, cellFor(input));
  return heights && { ...ground, nodes, heights, reach };
}

/** Where a body known in coarse cells is, with what of it lies between them. */
function placeOf({ nodes: { grid, window }, heights, toOwn, inside }: CoarseBody) {
  const { cell } = grid;
  const { x0, y0, nx } = gridOf(grid, window);
  const spare = 2 * cell;
  const box = new Box();
  let [far, top, walled] = [0, 0, false];
  for (let k = 0; k < heights.length; k++) {
    if (heights[k] <= 0) continue;
    box.take(x0 + (k % nx) * cell, y0 + Math.floor(k / nx) * cell);
    if (toOwn[k] > far) far = toOwn[k];
    if (heights[k] > top) top = heights[k];
    // A wall within reach may cut the body down here or beside it.
    if (wallSlope * (inside[k] - spare) < heights[k] + spare) walled = true;
  }
  return { box: box.grown(spare), walled, far: far + besideWall(top) + 2 * spare };
}

/** By so much (and the clearance) another master has to be farther than the own one for walls as high as this. */
const besideWall = (height: number): number => (2 * height) / wallSlope;

/** The least box round points. */
class Box {
  private readonly low: [number, number] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  private readonly high: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];

  get empty(): boolean {
    return this.low[0] > this.high[0];
  }

  take(x: number, y: number): void {
    const { low, high } = this;
    if (x < low[0]) low[0] = x;
    if (y < low[1]) low[1] = y;
    if (x > high[0]) high[0] = x;
    if (y > high[1]) high[1] = y;
  }

  /** With `by` mm more on each side. */
  grown(by: number): Record<'min' | 'max', readonly [number, number]> {
    const { low, high } = this;
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

/** The parting surface (`heightAt`, row by row) over the nodes where there can be a body; `outside` elsewhere. */
function ceilingOf(
  inside: Float32Array | undefined,
  { cell, x0, y0, nx, ny }: Grid,
  surface: PartingSurface,
  side: Side,
): Float32Array {
  const ceiling = new Float32Array(nx * ny).fill(outside);
  const { heights, nx: across, ny: along } = surface;
  for (let j = 0; j < ny; j++) {
    const v = (y0 + j * cell - surface.y0) / surface.cell;
    const row = Math.floor(v);
    if (row < 0 || row >= along - 1) continue;
    const t = v - row;
    const height = (column: number): number =>
      side * (heights[row * across + column] * (1 - t) + heights[(row + 1) * across + column] * t);
    let right = Number.NaN;
    let [column, left] = [-1, 0];
    for (let i = 0, k = j * nx; i < nx; i++, k++) {
      const u = (x0 + i * cell - surface.x0) / surface.cell;
      const now = Math.floor(u);
      if (now < 0 || now >= across - 1) continue;
      if (now !== column) {
        left = now === column + 1 ? right : height(now);
        right = height(now + 1);
        column = now;
      }
      if (left <= lost && right <= lost) continue;
      if (inside && wallSlope * inside[k] <= outside) continue;
      const here = left + (right - left) * (u - now);
      if (here > lost) ceiling[k] = here;
    }
  }
  return ceiling;
}

/** Cuts thin rims and side walls down, in place; gives the greatest height left. */
function trimmed(heights: Float32Array, inside: Float32Array | undefined): number {
  let most = 0;
  for (let k = 0; k < heights.length; k++) {
    const top = heights[k];
    const rim = top < leastBuildUp ? leastBuildUp - wallSlope * (leastBuildUp - top) : top;
    heights[k] = Math.max(inside ? Math.min(rim, wallSlope * inside[k]) : rim, outside);
    if (heights[k] > most) most = heights[k];
  }
  return most;
}
