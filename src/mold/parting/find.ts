import type { Finding } from '../../findings/index.ts';
import type { TriangleMesh } from '../../geometry/index.ts';
import { flatPartingSurface, type PartingSurface } from '../parting-surface.ts';
import { masterColumns } from './columns.ts';
import { solveField } from './field.ts';
import { freeIntervals, type Intervals, levelBand, narrow, withinLimits } from './intervals.ts';
import { judgeMaster } from './judge-master.ts';
import { judgeSlopes } from './judge-slopes.ts';
import { latticeOver } from './lattice.ts';
import { network } from './network.ts';
import { type Pin, pinDown } from './pins.ts';

/** A master in its place: closed, oriented outward, mold frame, mm. `id` is the placement's. */
interface PlacedMaster {
  readonly id: string;
  readonly mesh: TriangleMesh;
}

/**
 * `slopeRad`: steepest slope of the surface outside the masters. `limitUp`, `limitDown`: how far (mm, both positive)
 * it may leave the plane. `cell`: step of the grid, mm. `pins`: where it stays on the plane besides outside the rim.
 */
export interface PartingInput {
  readonly discRadius: number;
  readonly masters: readonly PlacedMaster[];
  readonly pins: readonly Pin[];
  readonly slopeRad: number;
  readonly limitUp: number;
  readonly limitDown: number;
  readonly cell: number;
}

/** The sheet keeps this close to the heights, mm: below what a casting shows, above what the columns know. */
const sheetTolerance = 0.01;

export interface PartingOutcome {
  readonly surface: PartingSurface;
  readonly findings: readonly Finding[];
}

/**
 * Finds the surface both halves are trimmed by: through each master's widest contour, running out to the plane at
 * the given slope, flat at pins. Pure; the same input gives the same bytes. Flat where nothing leaves the plane by
 * more than 0.03 mm. What cannot be done well is a finding with its place; a cell, slope or radius not above 0 or
 * more than 40 million nodes throw RangeError.
 */
export function findPartingSurface(input: PartingInput): PartingOutcome {
  const { discRadius, masters, pins, slopeRad, limitUp, limitDown } = input;
  if (!(slopeRad > 0 && slopeRad < Math.PI / 2))
    throw new RangeError(`slopeRad ${slopeRad}: from 0 to pi / 2`);
  const lattice = latticeOver(discRadius, input.cell);
  const columns = masters.map(({ id, mesh }) => masterColumns(id, mesh, lattice));
  const intervals = freeIntervals(lattice);
  for (const master of columns) narrow(intervals, lattice, master);
  withinLimits(intervals, limitUp, limitDown);
  pinDown(intervals, lattice, [...pins, { outside: discRadius }]);
  const slope = Math.tan(slopeRad);
  const field = levelEverywhere(intervals) ? undefined : solveField(intervals, lattice, slope);
  const findings = [
    ...columns.flatMap((master, i) => judgeMaster({ master, mesh: masters[i].mesh, lattice, field, input })),
    ...(field ? judgeSlopes(field.heights, intervals.kind, lattice, slope) : []),
  ];
  if (!field || field.heights.every((height) => Math.abs(height) < levelBand)) {
    return { surface: flatPartingSurface(discRadius), findings };
  }
  const { heights } = field;
  const { sheet, error } = network(heights, lattice, sheetTolerance);
  return { surface: { flat: false, ...lattice, heights, sheet, error }, findings };
}

function levelEverywhere({ lo, hi }: Intervals): boolean {
  for (let k = 0; k < lo.length; k++) if (lo[k] > 0 || hi[k] < 0) return false;
  return true;
}
