import { type Matrix4, moveMesh, type TriangleMesh, type Vec3 } from '../geometry/index.ts';
import { fitCamera, type View } from './picture/camera.ts';
import { cornerNormals } from './picture/corner-normals.ts';
import { drawMesh, emptyRaster, type Raster } from './picture/raster.ts';
import { lightOf } from './picture/shade.ts';
import { encodePng } from './png.ts';

export type { View } from './picture/camera.ts';

/** Red, green, blue from 0 to 1, sRGB. */
export type Color = Vec3;

interface PictureItem {
  readonly mesh: TriangleMesh;
  readonly color: Color;
  /** Where to stand it; as it is where left out. */
  readonly matrix?: Matrix4;
}

export interface Picture {
  readonly items: readonly PictureItem[];
  readonly view: View;
  readonly width: number;
  readonly height: number;
  readonly background: Color;
}

/** Pixels are drawn this many times finer each way and averaged. */
const supersampling = 2;

/**
 * A PNG of the items in parallel projection, filling the picture but for a margin. Software only: a depth buffer, one
 * shadowing key light, a fill light, sky light less what hides it, and thin edge lines. Same input, same bytes.
 * An empty list gives the bare background.
 */
export function renderPicture({ items, view, width, height, background }: Picture): Uint8Array {
  const meshes = items.map(({ mesh, matrix }) => (matrix ? moveMesh(mesh, matrix) : mesh));
  const points = meshes.map(({ positions }) => positions);
  const camera = fitCamera(view, points, width * supersampling, height * supersampling, 0.04);
  const raster = emptyRaster(camera);
  for (const [i, mesh] of meshes.entries()) drawMesh(raster, mesh, i, cornerNormals(mesh));
  const colors = items.map(({ color }) => linear(color));
  const rgb = average(raster, lightOf(raster, meshes), colors, linear(background), width, height);
  return encodePng(rgb, width, height);
}

function average(
  { camera, item }: Raster,
  light: Float32Array,
  colors: readonly Color[],
  background: Color,
  width: number,
  height: number,
): Uint8Array {
  const rgb = new Uint8Array(width * height * 3);
  const sum = new Float64Array(3);
  for (let y = 0, to = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      sum.fill(0);
      for (let k = 0; k < supersampling ** 2; k++) {
        const row = y * supersampling + Math.floor(k / supersampling);
        const at = row * camera.width + x * supersampling + (k % supersampling);
        const color = item[at] === 0 ? background : colors[item[at] - 1];
        const brightness = item[at] === 0 ? 1 : light[at];
        for (let c = 0; c < 3; c++) sum[c] += color[c] * brightness;
      }
      for (let c = 0; c < 3; c++) rgb[to++] = Math.round(255 * encoded(sum[c] / supersampling ** 2));
    }
  }
  return rgb;
}

/** sRGB to linear light and back (IEC 61966-2-1). */
const linear = (color: Color): Color => {
  const one = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
  return [one(color[0]), one(color[1]), one(color[2])];
};

const encoded = (v: number): number =>
  Math.min(1, v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);
