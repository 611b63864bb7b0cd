import type { Grid } from '../../geometry/index.ts';
import { type MasterColumns, silhouetteCells } from './columns.ts';

/** What a node of the lattice is to the parting surface. */
export const nodeKind = { free: 0, silhouette: 1, inside: 2, pin: 3 } as const;

/** Heights nearer to the plane than this (mm) count as on it: no step that small is worth cutting or printing. */
export const levelBand = 0.03;
/** A back as flat as this (mm) lies on the plane exactly, so that the cut through it is one plane. */
const exactly = 1e-4;
/** The sheet keeps this far inside a master at its silhouette, mm, so that its triangles do not come out of it. */
const leastMargin = 0.02;
/** Share of the thickness that round edges are narrowed by from each side: what is left is about the widest contour. */
const narrowing = 0.42;
const mostMargin = 1;

/** Where the parting surface has to pass at each node (mm): between `lo` and `hi`, -Infinity and Infinity where free. */
export interface Intervals {
  readonly lo: Float32Array;
  readonly hi: Float32Array;
  readonly kind: Uint8Array;
}

export function freeIntervals({ nx, ny }: Grid): Intervals {
  return {
    lo: new Float32Array(nx * ny).fill(Number.NEGATIVE_INFINITY),
    hi: new Float32Array(nx * ny).fill(Number.POSITIVE_INFINITY),
    kind: new Uint8Array(nx * ny),
  };
}

/**
 * Narrows the intervals by one master. At its silhouette the surface keeps to the middle of the thickness where the
 * faces run steeply toward the outline (round edges), and may lie anywhere where they do not (flat backs, upright
 * walls). Deeper inside it only has to stay in the master. Zero stays allowed wherever the plane is good enough.
 */
export function narrow(intervals: Intervals, lattice: Grid, columns: MasterColumns): void {
  const { depth, i0, j0, nx, ny } = columns;
  for (let j = 1; j < ny - 1; j++) {
    for (let i = 1; i < nx - 1; i++) {
      const k = j * nx + i;
      if (depth[k] === 0) continue;
      const atOutline = depth[k] <= silhouetteCells;
      const [lo, hi] = atOutline ? atSilhouette(columns, k, lattice.cell) : deepInside(columns, k);
      meet(intervals, (j0 + j) * lattice.nx + i0 + i, lo, hi, atOutline);
    }
  }
}

function atSilhouette(
  { bottom, top, nx }: MasterColumns,
  k: number,
  cell: number,
): readonly [number, number] {
  const thick = top[k] - bottom[k];
  const lo = bottom[k] + outlineMargin(thick, steepness(bottom, k, nx, cell));
  const hi = top[k] - outlineMargin(thick, steepness(top, k, nx, cell));
  return [lo > 0 && lo <= levelBand ? 0 : lo, hi < 0 && hi >= -levelBand ? 0 : hi];
}

function deepInside({ bottom, top }: MasterColumns, k: number): readonly [number, number] {
  const margin = Math.min(narrowing * (top[k] - bottom[k]), mostMargin);
  const lo = bottom[k] + margin;
  const hi = top[k] - margin;
  return [lo > 0 && mayBeLevel(-bottom[k]) ? 0 : lo, hi < 0 && mayBeLevel(top[k]) ? 0 : hi];
}

/** The plane may run through the master `inside` mm within its surface: exactly on it, or clear of it. */
const mayBeLevel = (inside: number): boolean => inside >= levelBand || Math.abs(inside) <= exactly;

const outlineMargin = (thick: number, steep: number): number =>
  Math.max(Math.min(leastMargin, 0.45 * thick), narrowing * thick * Math.min(1, steep));

/** Slope of a surface at a node: the steeper of the steps to both sides, along x and y. Steps to nothing are left out. */
function steepness(z: Float32Array, k: number, nx: number, cell: number): number {
  const step = (to: number): number => {
    const difference = Math.abs(z[to] - z[k]);
    return Number.isNaN(difference) ? 0 : difference;
  };
  return Math.hypot(Math.max(step(k - 1), step(k + 1)), Math.max(step(k - nx), step(k + nx))) / cell;
}

/**
 * Intersects with the interval already there. Where two masters lie over each other without a common height, any
 * height between them leaves the same undercut.
 */
function meet(
  { lo, hi, kind }: Intervals,
  node: number,
  low: number,
  high: number,
  atOutline: boolean,
): void {
  const from = Math.max(lo[node], low);
  const to = Math.min(hi[node], high);
  lo[node] = Math.min(from, to);
  hi[node] = Math.max(from, to);
  if (kind[node] !== nodeKind.silhouette) kind[node] = atOutline ? nodeKind.silhouette : nodeKind.inside;
}

/** Keeps all intervals within the limits, mm above (up) and below (down) the plane. */
export function withinLimits({ lo, hi }: Intervals, up: number, down: number): void {
  for (let k = 0; k < lo.length; k++) {
    if (lo[k] > up) lo[k] = up;
    if (hi[k] < -down) hi[k] = -down;
  }
}
