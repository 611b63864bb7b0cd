import type { Grid } from '../../geometry/index.ts';
import { type Intervals, levelBand, nodeKind } from './intervals.ts';
import { diffuse } from './smooth.ts';
import { spread } from './sweep.ts';

/** Inside a master nothing is cut: there the surface may turn this steeply to reach the silhouette at its far side. */
const insideSlope = 4;
/** Missing room under this (mm) is left to the smoothing. */
const smallConflict = 0.02;
const steepening = 1.4;
/** No cut is made steeper than 60 degrees. */
const steepestSlope = Math.tan(Math.PI / 3);
const alongSilhouette = 24;
const filleting = 8;

export interface FieldResult {
  /** Heights at the nodes, mm. */
  readonly heights: Float32Array;
  /** By how much (mm) the reachable heights miss each other at each node; empty where they do nowhere. */
  readonly missing: {
    /** At the slope asked for. */
    readonly asked: Float32Array;
    /** After the slope grew where it had to. */
    readonly left: Float32Array;
  };
}

/**
 * The height field nearest to the plane that passes through all intervals and nowhere climbs more than `slope`
 * outside the masters. The upper bound of what is reachable from below is U = max (lo - slope d), the lower bound
 * from above L = min (hi + slope d); median(U, 0, L) is nearest to zero of all fields of that slope (McShane's
 * extension of Lipschitz functions, Bull. AMS 40 (1934) 837-842). Where U > L there is none: there the slope may
 * grow, up to 60 degrees, and what is still missing is shared by both sides.
 */
export function solveField(intervals: Intervals, lattice: Grid, slope: number): FieldResult {
  const slopes = slopesOf(intervals.kind, slope);
  let bounds = boundsOfField(intervals, slopes, lattice);
  const asked = missingRoom(bounds);
  let left = asked;
  for (let time = 0; time < 2 && left.length > 0; time++) {
    if (!steepen(slopes, bounds, intervals.kind, slope)) break;
    bounds = boundsOfField(intervals, slopes, lattice);
    left = missingRoom(bounds);
  }
  const first = between(bounds);
  const reachable = left.length > 0 ? widened(intervals, first) : intervals;
  const held = holdSilhouettes(reachable, first, lattice);
  const heights = between(boundsOfField(held, slopes, lattice));
  if (left.length > 0) keepOffPins(heights, intervals, lattice);
  diffuse(heights, fillets(heights, intervals, lattice), lattice, reachable, filleting);
  for (let k = 0; k < heights.length; k++) {
    if (intervals.kind[k] === nodeKind.free && Math.abs(heights[k]) < levelBand) heights[k] = 0;
  }
  return { heights, missing: { asked, left } };
}

function slopesOf(kind: Uint8Array, slope: number): Float32Array {
  const slopes = new Float32Array(kind.length).fill(slope);
  for (let k = 0; k < slopes.length; k++) {
    if (kind[k] === nodeKind.silhouette || kind[k] === nodeKind.inside) slopes[k] = insideSlope;
  }
  return slopes;
}

interface FieldBounds {
  /** -U: the sweeps lower values, so the bound from below is kept with its sign turned. */
  readonly under: Float32Array;
  readonly over: Float32Array;
}

function boundsOfField({ lo, hi }: Intervals, slopes: Float32Array, lattice: Grid): FieldBounds {
  let highest = 0;
  let lowest = 0;
  const under = new Float32Array(lo.length);
  for (let k = 0; k < lo.length; k++) {
    under[k] = -lo[k];
    if (lo[k] > highest) highest = lo[k];
    if (hi[k] < lowest) lowest = hi[k];
  }
  const over = hi.slice();
  // A bound beyond all that the other side asks for changes nothing and need not be known.
  spread(under, slopes, lattice, -lowest);
  spread(over, slopes, lattice, highest);
  return { under, over };
}

function between({ under, over }: FieldBounds): Float32Array {
  const heights = new Float32Array(under.length);
  for (let k = 0; k < heights.length; k++) {
    const [low, high] = [-under[k], over[k]];
    heights[k] = low > high ? (low + high) / 2 : Math.min(Math.max(low, 0), high);
  }
  return heights;
}

function missingRoom({ under, over }: FieldBounds): Float32Array {
  const missing = new Float32Array(under.length);
  let any = false;
  for (let k = 0; k < missing.length; k++) {
    const room = -under[k] - over[k];
    if (!(room > smallConflict)) continue;
    missing[k] = room;
    any = true;
  }
  return any ? missing : new Float32Array();
}

/** Lets the slope grow where bounds miss each other outside the masters; false where none do. */
function steepen(
  slopes: Float32Array,
  { under, over }: FieldBounds,
  kind: Uint8Array,
  slope: number,
): boolean {
  const most = Math.max(slope, steepestSlope);
  let any = false;
  for (let k = 0; k < slopes.length; k++) {
    if (-under[k] - over[k] <= smallConflict || slopes[k] >= most || kind[k] !== nodeKind.free) continue;
    slopes[k] = Math.min(most, slopes[k] * steepening);
    any = true;
  }
  return any;
}

/** Intervals that hold what was reached: what is shared between two sides is not taken back at the silhouettes. */
function widened({ lo, hi, kind }: Intervals, reached: Float32Array): Intervals {
  const [low, high] = [lo.slice(), hi.slice()];
  for (let k = 0; k < reached.length; k++) {
    if (kind[k] === nodeKind.pin) continue;
    low[k] = Math.min(low[k], reached[k]);
    high[k] = Math.max(high[k], reached[k]);
  }
  return { lo: low, hi: high, kind };
}

/** Evens the heights along the silhouettes, within their intervals, and asks for exactly these there. */
function holdSilhouettes({ lo, hi, kind }: Intervals, heights: Float32Array, lattice: Grid): Intervals {
  const nodes: number[] = [];
  for (let k = 0; k < kind.length; k++) if (kind[k] === nodeKind.silhouette) nodes.push(k);
  diffuse(heights, nodes, lattice, { lo, hi, kind }, alongSilhouette, true);
  const held = { lo: lo.slice(), hi: hi.slice(), kind };
  for (const k of nodes) {
    held.lo[k] = heights[k];
    held.hi[k] = heights[k];
  }
  return held;
}

/** Where a master asked for more than a pin leaves, the pin stays on the plane and the surface climbs from it at 60 degrees. */
function keepOffPins(heights: Float32Array, { kind }: Intervals, lattice: Grid): void {
  const reach = new Float32Array(kind.length).fill(Number.POSITIVE_INFINITY);
  for (let k = 0; k < reach.length; k++) if (kind[k] === nodeKind.pin) reach[k] = 0;
  const slopes = new Float32Array(kind.length).fill(steepestSlope);
  let highest = 0;
  for (const height of heights) highest = Math.max(highest, Math.abs(height));
  spread(reach, slopes, lattice, highest);
  for (let k = 0; k < heights.length; k++) {
    heights[k] = Math.min(Math.max(heights[k], -reach[k]), reach[k]);
  }
}

/** Nodes that are off the plane or next to one that is, without pins and the lattice's edge. */
function fillets(heights: Float32Array, { kind }: Intervals, { nx, ny }: Grid): number[] {
  const near = new Uint8Array(heights.length);
  for (let k = nx; k < heights.length - nx; k++) {
    if (heights[k] === 0) continue;
    near[k] = 1;
    near[k - 1] = 1;
    near[k + 1] = 1;
    near[k - nx] = 1;
    near[k + nx] = 1;
  }
  const nodes: number[] = [];
  for (let j = 1; j < ny - 1; j++) {
    for (let k = j * nx + 1; k < (j + 1) * nx - 1; k++) {
      if (near[k] && kind[k] !== nodeKind.pin) nodes.push(k);
    }
  }
  return nodes;
}
