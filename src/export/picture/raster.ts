import type { TriangleMesh } from '../../geometry/index.ts';
import type { Camera } from './camera.ts';

/** What a camera sees: for each pixel the depth (mm, +Infinity where nothing is), and of the nearest face its item and normal. */
export interface Raster {
  readonly camera: Camera;
  readonly depth: Float32Array;
  /** Number of the item + 1; 0 where nothing is. */
  readonly item: Uint16Array;
  readonly normals: Float32Array;
}

export const emptyRaster = (camera: Camera): Raster => {
  const pixels = camera.width * camera.height;
  return {
    camera,
    depth: new Float32Array(pixels).fill(Number.POSITIVE_INFINITY),
    item: new Uint16Array(pixels),
    normals: new Float32Array(pixels * 3),
  };
};

/**
 * Draws a mesh into the depth buffer. `normals` holds three per face's corner (see `cornerNormals`); without them only
 * depth is drawn, as for shadows. A pixel belongs to a face when its center lies in it.
 */
export function drawMesh(raster: Raster, mesh: TriangleMesh, item: number, normals?: Float32Array): void {
  const screen = project(raster.camera, mesh.positions);
  const { triangles } = mesh;
  for (let i = 0; i < triangles.length; i += 3) {
    drawFace(
      raster,
      screen,
      triangles[i] * 3,
      triangles[i + 1] * 3,
      triangles[i + 2] * 3,
      item,
      normals,
      i * 3,
    );
  }
}

function project(camera: Camera, p: Float32Array): Float64Array {
  const { right, up, forward, mmPerPixel, originX, originY } = camera;
  const out = new Float64Array(p.length);
  for (let i = 0; i < p.length; i += 3) {
    const x = p[i];
    const y = p[i + 1];
    const z = p[i + 2];
    out[i] = originX + (x * right[0] + y * right[1] + z * right[2]) / mmPerPixel;
    out[i + 1] = originY - (x * up[0] + y * up[1] + z * up[2]) / mmPerPixel;
    out[i + 2] = x * forward[0] + y * forward[1] + z * forward[2];
  }
  return out;
}

function drawFace(
  { camera, depth, item: items, normals: seen }: Raster,
  s: Float64Array,
  a: number,
  b: number,
  c: number,
  item: number,
  normals: Float32Array | undefined,
  n: number,
): void {
  const ax = s[a];
  const ay = s[a + 1];
  const bx = s[b];
  const by = s[b + 1];
  const cx = s[c];
  const cy = s[c + 1];
  const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  if (area === 0) return;
  const x0 = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5));
  const x1 = Math.min(camera.width - 1, Math.floor(Math.max(ax, bx, cx) - 0.5));
  const y0 = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
  const y1 = Math.min(camera.height - 1, Math.floor(Math.max(ay, by, cy) - 0.5));
  for (let y = y0; y <= y1; y++) {
    for (let x = x0; x <= x1; x++) {
      const px = x + 0.5;
      const py = y + 0.5;
      const wb = ((px - ax) * (cy - ay) - (py - ay) * (cx - ax)) / area;
      const wc = ((bx - ax) * (py - ay) - (by - ay) * (px - ax)) / area;
      const wa = 1 - wb - wc;
      if (wa < 0 || wb < 0 || wc < 0) continue;
      const d = wa * s[a + 2] + wb * s[b + 2] + wc * s[c + 2];
      const at = y * camera.width + x;
      if (d >= depth[at]) continue;
      depth[at] = d;
      items[at] = item + 1;
      if (!normals) continue;
      for (let k = 0; k < 3; k++) {
        seen[at * 3 + k] = wa * normals[n + k] + wb * normals[n + 3 + k] + wc * normals[n + 6 + k];
      }
    }
  }
}
