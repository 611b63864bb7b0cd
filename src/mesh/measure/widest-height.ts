import { boundsOf } from '../../geometry/index.ts';
import { heightMap } from './height-map.ts';
import type { MeshData } from './measure.ts';

/** Columns across the longer side: fine enough that one column weighs under 0.01 % of the shadow. */
const across = 200;
/** Levels compared where many are equally good. */
const levels = 64;

/**
 * Height z (mesh frame, mm) of the widest contour: where a flat parting plane leaves the least undercut. A column
 * from b to t adds |z - [b, t]| of undercut air, and gaps within a column count the same wherever z is, so the best
 * z has as much shadow area wholly above it as wholly below: the median of all b and t. Where a range of heights
 * is equally good, the widest slice in it, or the middle of a straight wall; a level within a thousandth of the
 * height of either end (a flat back) is that end exactly. An empty mesh or one without thickness from above: the middle of its height.
 */
export function widestHeight(mesh: MeshData): number {
  const { min, max } = boundsOf(mesh.positions);
  const cell = Math.max(max[0] - min[0], max[1] - min[1]) / across;
  if (!(cell > 0) || !(max[2] > min[2])) return (min[2] + max[2]) / 2;
  const [low, high] = leastUndercut(mesh, cell, [min[2], max[2]]);
  const level = high > low ? widestSlice(mesh, low, high) : low;
  // A flat back is meant to lie on the plane, not a hair beside it.
  const hair = 1e-3 * (max[2] - min[2]);
  if (level - min[2] < hair) return min[2];
  return max[2] - level < hair ? max[2] : level;
}

function leastUndercut(
  mesh: MeshData,
  cell: number,
  whole: readonly [number, number],
): readonly [number, number] {
  const { bottom, top } = heightMap(mesh, { cell });
  const ends = new Float32Array(bottom.length * 2);
  let count = 0;
  for (let k = 0; k < bottom.length; k++) {
    if (Number.isNaN(bottom[k])) continue;
    ends[count++] = bottom[k];
    ends[count++] = top[k];
  }
  if (count === 0) return whole;
  const sorted = ends.subarray(0, count).sort();
  return [sorted[count / 2 - 1], sorted[count / 2]];
}

function widestSlice(mesh: MeshData, low: number, high: number): number {
  const step = (high - low) / levels;
  const areas = sliceAreas(mesh, low + step / 2, step, levels);
  const most = Math.max(...areas);
  const wide = Array.from(areas, (area) => area >= most * (1 - 1e-5));
  const first = wide.indexOf(true);
  const last = wide.lastIndexOf(true);
  if (first === last && first === 0) return low;
  if (first === last && last === levels - 1) return high;
  return low + ((first + last + 1) / 2) * step;
}

/**
 * Areas (mm2) of a closed mesh's slices at z = first, first + step, ... by Green's theorem over the cut edges:
 * half the integral of x dy - y dx.
 */
function sliceAreas(
  { positions: p, triangles }: MeshData,
  first: number,
  step: number,
  count: number,
): Float64Array {
  const areas = new Float64Array(count);
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    const za = p[a + 2];
    const zb = p[b + 2];
    const zc = p[c + 2];
    const from = Math.max(0, Math.floor((Math.min(za, zb, zc) - first) / step));
    const to = Math.min(count - 1, Math.ceil((Math.max(za, zb, zc) - first) / step));
    for (let level = from; level <= to; level++) {
      const z = first + level * step;
      const above = (za > z ? 1 : 0) + (zb > z ? 1 : 0) + (zc > z ? 1 : 0);
      if (above === 0 || above === 3) continue;
      const lone = above === 1;
      if (za > z === lone) areas[level] += corner(p, a, b, c, z);
      else if (zb > z === lone) areas[level] += corner(p, b, c, a, z);
      else areas[level] += corner(p, c, a, b, z);
    }
  }
  return areas;
}

/** The cut of a face whose corner `a` alone is on its side of z; counter-clockwise faces give outlines that are so too. */
function corner(p: ArrayLike<number>, a: number, b: number, c: number, z: number): number {
  const s = (z - p[a + 2]) / (p[b + 2] - p[a + 2]);
  const t = (z - p[a + 2]) / (p[c + 2] - p[a + 2]);
  const sx = p[a] + s * (p[b] - p[a]);
  const sy = p[a + 1] + s * (p[b + 1] - p[a + 1]);
  const tx = p[a] + t * (p[c] - p[a]);
  const ty = p[a + 1] + t * (p[c + 1] - p[a + 1]);
  const twice = sx * ty - sy * tx;
  return (p[a + 2] > z ? twice : -twice) / 2;
}
