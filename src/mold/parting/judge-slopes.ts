import { type Finding, finding } from '../../findings/index.ts';
import { type Grid, toDegrees } from '../../geometry/index.ts';
import { nodeKind } from './intervals.ts';

/** Below this slope the surface counts as level. */
const level = 0.05;
/** A little over the slope asked for is the grid's doing. */
const tooSteep = 1.1;
/** Share of the sloped area that may be steeper. */
const mayBeSteep = 0.05;

interface SlopeMeasures {
  /** mm2 seen from above, outside the masters. */
  readonly sloped: number;
  readonly steep: number;
  readonly steepest: number;
  readonly node: number;
}

/** Slopes (central differences) at the nodes outside masters and pins whose four neighbors are outside as well. */
function measureSlopes(
  heights: Float32Array,
  kind: Uint8Array,
  { nx, ny, cell }: Grid,
  slope: number,
): SlopeMeasures {
  let sloped = 0;
  let steep = 0;
  let steepest = 0;
  let node = -1;
  for (let k = nx; k < nx * (ny - 1); k++) {
    if (kind[k] + kind[k - 1] + kind[k + 1] + kind[k - nx] + kind[k + nx] !== nodeKind.free) continue;
    const here = Math.hypot(heights[k + 1] - heights[k - 1], heights[k + nx] - heights[k - nx]) / (2 * cell);
    if (here <= level) continue;
    sloped++;
    if (here > tooSteep * slope) steep++;
    if (here > steepest) {
      steepest = here;
      node = k;
    }
  }
  return { sloped: sloped * cell * cell, steep: steep * cell * cell, steepest, node };
}

/** Says where the surface came out steeper than asked for over more than 5 % of its sloped area. */
export function judgeSlopes(
  heights: Float32Array,
  kind: Uint8Array,
  lattice: Grid,
  slope: number,
): Finding[] {
  const { sloped, steep, steepest, node } = measureSlopes(heights, kind, lattice, slope);
  if (steep <= mayBeSteep * sloped) return [];
  const degrees = (value: number): number => toDegrees(Math.atan(value));
  const i = node % lattice.nx;
  return [
    finding('mold.parting-steep', {
      subject: 'mold',
      place: [
        lattice.x0 + i * lattice.cell,
        lattice.y0 + ((node - i) / lattice.nx) * lattice.cell,
        heights[node],
      ],
      values: { measured: degrees(steepest), limit: degrees(slope), share: steep / sloped },
    }),
  ];
}
