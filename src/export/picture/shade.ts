import { dot, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { ambientOcclusion } from './ambient-occlusion.ts';
import { fitCamera, unit } from './camera.ts';
import { drawMesh, emptyRaster, type Raster } from './raster.ts';

/** How much light each pixel of a raster gets, 0 to about 1, per pixel; undefined content where nothing is. */
export function lightOf(raster: Raster, meshes: readonly TriangleMesh[]): Float32Array {
  const { camera, depth, item, normals } = raster;
  const { width, height, right, up, forward } = camera;
  // The key light stands at the viewer's upper left, so that hollows show their shadow at the upper left.
  const toKey = unit(along(right, -0.8, up, 0.6, forward, -0.85));
  const toFill = unit(along(right, 0.8, up, 0.1, forward, -0.7));
  const shadows = shadowMap(meshes, toKey);
  const openness = ambientOcclusion(raster);
  const light = new Float32Array(width * height);
  for (let at = 0; at < light.length; at++) {
    if (item[at] === 0) continue;
    let n: Vec3 = [normals[at * 3], normals[at * 3 + 1], normals[at * 3 + 2]];
    if (dot(n, forward) > 0) n = [-n[0], -n[1], -n[2]];
    const key = Math.max(0, dot(n, toKey));
    const fill = Math.max(0, dot(n, toFill));
    const place = pointAt(raster, at, depth[at]);
    const lit = key > 0 ? litShare(shadows, place, n) : 0;
    light[at] = 0.68 * key * lit + (0.14 * fill + 0.34) * openness[at];
  }
  darkenEdges(raster, light);
  return light;
}

const along = (a: Vec3, ka: number, b: Vec3, kb: number, c: Vec3, kc: number): Vec3 => [
  a[0] * ka + b[0] * kb + c[0] * kc,
  a[1] * ka + b[1] * kb + c[1] * kc,
  a[2] * ka + b[2] * kb + c[2] * kc,
];

function pointAt({ camera: c }: Raster, at: number, depth: number): Vec3 {
  const x = ((at % c.width) + 0.5 - c.originX) * c.mmPerPixel;
  const y = (c.originY - Math.floor(at / c.width) - 0.5) * c.mmPerPixel;
  return along(c.right, x, c.up, y, c.forward, depth);
}

const shadowPixels = 2048;

/** What the light sees. */
function shadowMap(meshes: readonly TriangleMesh[], toLight: Vec3): Raster {
  const direction: Vec3 = [-toLight[0], -toLight[1], -toLight[2]];
  const up: Vec3 = Math.abs(direction[2]) < 0.9 ? [0, 0, 1] : [0, 1, 0];
  const points = meshes.map(({ positions }) => positions);
  const raster = emptyRaster(fitCamera({ direction, up }, points, shadowPixels, shadowPixels, 0.01));
  for (const [i, mesh] of meshes.entries()) drawMesh(raster, mesh, i);
  return raster;
}

/** Share of a 5 x 5 patch of the shadow map that is not nearer to the light than the place: a soft edge. */
function litShare({ camera: c, depth }: Raster, place: Vec3, normal: Vec3): number {
  // Lifted off its own face by two texels, so that a face does not shade itself.
  const lift = 2 * c.mmPerPixel;
  const lifted = along(place, 1, normal, lift, normal, 0);
  const x = Math.floor(c.originX + dot(lifted, c.right) / c.mmPerPixel);
  const y = Math.floor(c.originY - dot(lifted, c.up) / c.mmPerPixel);
  const d = dot(lifted, c.forward) - lift;
  let lit = 0;
  for (let dy = -2; dy <= 2; dy++) {
    for (let dx = -2; dx <= 2; dx++) {
      const tx = Math.min(Math.max(x + dx, 0), c.width - 1);
      const ty = Math.min(Math.max(y + dy, 0), c.height - 1);
      if (depth[ty * c.width + tx] >= d) lit++;
    }
  }
  return lit / 25;
}

/** Thin dark lines where the surface breaks off (depth) or bends sharply (normal), as in a drawing. */
function darkenEdges({ camera, depth, item, normals }: Raster, light: Float32Array): void {
  const { width, height, mmPerPixel } = camera;
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const at = y * width + x;
      if (item[at] === 0) continue;
      if (bends(normals, at, 1) || bends(normals, at, width)) light[at] *= 0.72;
      if (breaks(depth, at, 1, mmPerPixel) || breaks(depth, at, width, mmPerPixel)) light[at] *= 0.62;
    }
  }
}

const bends = (n: Float32Array, at: number, step: number): boolean => {
  const a = (at - step) * 3;
  const b = (at + step) * 3;
  return n[a] * n[b] + n[a + 1] * n[b + 1] + n[a + 2] * n[b + 2] < 0.75;
};

const breaks = (depth: Float32Array, at: number, step: number, mmPerPixel: number): boolean =>
  !(Math.abs(depth[at - step] + depth[at + step] - 2 * depth[at]) < 5 * mmPerPixel);
