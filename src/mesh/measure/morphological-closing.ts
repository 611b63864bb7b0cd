import type { Grid } from '../../geometry/index.ts';
import type { HeightMap } from './height-map.ts';

/** An end mill seen from the side: its end square, or half a ball. Radius in mm. */
export interface MillEnd {
  readonly radius: number;
  readonly kind: 'flat' | 'ball';
}

/**
 * What an upright mill leaves of a surface seen from above when it takes off all it can without cutting into it:
 * the closing of the height field by the mill's end (dilation, then erosion by the same shape; Serra, Image Analysis
 * and Mathematical Morphology, 1982). Heights in mm, NaN off the mesh, where the mill may go freely. The end is taken
 * as the nodes under it, so a width is known to within a cell either way.
 */
export function closedByMill({ top, ...grid }: Grid & Pick<HeightMap, 'top'>, end: MillEnd): Float32Array {
  const shape = nodesUnder(grid, end);
  const reach = Math.ceil(end.radius / grid.cell);
  const wide = padded(top, grid, reach);
  const steps = Int32Array.from(shape, ({ dx, dy }) => dy * wide.nx + dx);
  const rises = Float64Array.from(shape, ({ rise }) => rise);
  const tips = tipHeights(wide, reach, steps, rises);
  const left = new Float32Array(top.length).fill(Number.NaN);
  for (let j = 0; j < grid.ny; j++) {
    for (let i = 0; i < grid.nx; i++) {
      const height = top[j * grid.nx + i];
      if (Number.isNaN(height)) continue;
      const node = (j + 2 * reach) * wide.nx + i + 2 * reach;
      let z = Number.POSITIVE_INFINITY;
      // Nothing lower than the surface itself is to be found.
      for (let k = 0; k < steps.length && z > height; k++) z = Math.min(z, tips[node - steps[k]] + rises[k]);
      left[j * grid.nx + i] = z;
    }
  }
  return left;
}

/** The lowest the mill's tip can go over each node. */
function tipHeights(wide: Wide, reach: number, steps: Int32Array, rises: Float64Array): Float32Array {
  const { nx, ny, z } = wide;
  const ceiling = z.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const tips = new Float32Array(z.length).fill(Number.NEGATIVE_INFINITY);
  for (let j = reach; j < ny - reach; j++) {
    for (let node = j * nx + reach; node < (j + 1) * nx - reach; node++) {
      let lowest = Number.NEGATIVE_INFINITY;
      for (let k = 0; k < steps.length && lowest < ceiling; k++)
        lowest = Math.max(lowest, z[node + steps[k]] - rises[k]);
      tips[node] = lowest;
    }
  }
  return tips;
}

interface Wide {
  readonly nx: number;
  readonly ny: number;
  readonly z: Float32Array;
}

/** The field with twice the mill's reach of nothing round it; off the mesh is minus infinity. */
function padded(top: Float32Array, { nx, ny }: Grid, reach: number): Wide {
  const wide = nx + 4 * reach;
  const z = new Float32Array(wide * (ny + 4 * reach)).fill(Number.NEGATIVE_INFINITY);
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const height = top[j * nx + i];
      if (!Number.isNaN(height)) z[(j + 2 * reach) * wide + i + 2 * reach] = height;
    }
  return { nx: wide, ny: ny + 4 * reach, z };
}

/** Steps (in nodes) to what stands under the mill's end, nearest first, and how far over its tip the end is there. */
function nodesUnder({ cell }: Grid, { radius, kind }: MillEnd) {
  const reach = Math.ceil(radius / cell);
  const along = Array.from({ length: 2 * reach + 1 }, (_, k) => k - reach);
  const steps = along.flatMap((dy) =>
    along.flatMap((dx) => {
      const far = Math.hypot(dx, dy) * cell;
      if (far > radius) return [];
      const rise = kind === 'flat' ? 0 : radius - Math.sqrt(radius * radius - far * far);
      return [{ dx, dy, far, rise }];
    }),
  );
  return steps.sort((a, b) => a.far - b.far);
}
