import type { Grid } from '../../geometry/index.ts';
import { type Intervals, nodeKind } from './intervals.ts';
import { gridOf, windowOver } from './lattice.ts';

/** A place where the parting surface stays on the plane: a circle, or all that is outside a radius. mm. */
export type Pin =
  | { readonly x: number; readonly y: number; readonly radius: number }
  | { readonly outside: number };

/** Puts the intervals of all nodes within the pins to zero, whatever was there. */
export function pinDown(intervals: Intervals, lattice: Grid, pins: readonly Pin[]): void {
  for (const pin of pins) {
    if ('outside' in pin) pinOutside(intervals, lattice, pin.outside);
    else pinCircle(intervals, lattice, pin);
  }
}

function pinOutside(intervals: Intervals, { cell, x0, y0, nx, ny }: Grid, radius: number): void {
  for (let j = 0; j < ny; j++) {
    const y = y0 + j * cell;
    for (let i = 0; i < nx; i++) {
      const x = x0 + i * cell;
      if (x * x + y * y >= radius * radius) pinNode(intervals, j * nx + i);
    }
  }
}

function pinCircle(
  intervals: Intervals,
  lattice: Grid,
  { x, y, radius }: { readonly x: number; readonly y: number; readonly radius: number },
): void {
  const box = { min: [x - radius, y - radius], max: [x + radius, y + radius] };
  const window = windowOver(lattice, box);
  const { x0, y0, nx, ny, cell } = gridOf(lattice, window);
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      if ((x0 + i * cell - x) ** 2 + (y0 + j * cell - y) ** 2 > radius * radius) continue;
      pinNode(intervals, (window.j0 + j) * lattice.nx + window.i0 + i);
    }
  }
}

function pinNode({ lo, hi, kind }: Intervals, node: number): void {
  lo[node] = 0;
  hi[node] = 0;
  kind[node] = nodeKind.pin;
}
