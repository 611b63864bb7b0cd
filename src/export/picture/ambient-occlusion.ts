import { dot, type Vec3 } from '../../geometry/index.ts';
import type { Raster } from './raster.ts';

const directions = 6;
/** Steps outward, as shares of the reach. */
const steps = [0.06, 0.16, 0.34, 0.62, 1];

/**
 * Ambient occlusion: the share of the sky each pixel sees: in a few directions the highest neighbour above its tangent plane is looked for.
 * The directions turn from pixel to pixel in a pattern of 2 x 2, which the supersampling averages: no noise.
 */
export function ambientOcclusion(raster: Raster): Float32Array {
  const { camera, item, normals } = raster;
  const { width, height, right, up, forward } = camera;
  const reach = 0.035 * Math.min(width, height);
  const turns = offsetTable(reach);
  const open = new Float32Array(width * height).fill(1);
  for (let y = 0, at = 0; y < height; y++) {
    for (let x = 0; x < width; x++, at++) {
      if (item[at] === 0) continue;
      const n: Vec3 = [normals[at * 3], normals[at * 3 + 1], normals[at * 3 + 2]];
      const side = dot(n, forward) > 0 ? -1 : 1;
      const tilt: Vec3 = [side * dot(n, right), side * dot(n, up), side * dot(n, forward)];
      const hidden = hiddenFrom(raster, x, y, tilt, turns[(y & 1) * 2 + (x & 1)], reach);
      open[at] = Math.max(0.15, 1 - (1.5 * hidden) / directions);
    }
  }
  return open;
}

/** Sum over the directions of how high the neighbours stand; `tilt` is the normal by right, up and forward. */
function hiddenFrom(
  { camera, depth }: Raster,
  x: number,
  y: number,
  tilt: Vec3,
  offsets: Int32Array,
  reach: number,
): number {
  const { width, height, mmPerPixel } = camera;
  // Something far in front (another part) hides less than a wall close by.
  const farthest = 2 * reach * mmPerPixel;
  const own = depth[y * width + x];
  let hidden = 0;
  for (let o = 0, k = 0; k < directions; k++) {
    let highest = 0;
    for (let step = 0; step < steps.length; step++, o += 2) {
      const qx = x + offsets[o];
      const qy = y + offsets[o + 1];
      if (qx < 0 || qy < 0 || qx >= width || qy >= height) continue;
      const dr = offsets[o] * mmPerPixel;
      const du = -offsets[o + 1] * mmPerPixel;
      const df = depth[qy * width + qx] - own;
      const distance = Math.sqrt(dr * dr + du * du + df * df);
      if (distance === 0 || !(distance < farthest)) continue;
      const rise = (tilt[0] * dr + tilt[1] * du + tilt[2] * df) / distance - 0.08;
      highest = Math.max(highest, rise * (1 - distance / farthest));
    }
    hidden += highest;
  }
  return hidden;
}

/** Steps in whole pixels, x and y, for each of the four turns of the pattern. */
const offsetTable = (reach: number): Int32Array[] =>
  [0, 1, 2, 3].map((turn) => {
    const table: number[] = [];
    for (let k = 0; k < directions; k++) {
      const angle = (2 * Math.PI * (k + turn / 4)) / directions;
      for (const share of steps) {
        table.push(Math.round(Math.cos(angle) * reach * share), Math.round(Math.sin(angle) * reach * share));
      }
    }
    return Int32Array.from(table);
  });
