import { boundsOf, type SolidMeasures, type Vec3 } from '../../geometry/index.ts';

/** Any indexed triangle mesh in mm; float64 positions are taken as they are. */
export interface MeshData {
  readonly positions: Float32Array | Float64Array;
  readonly triangles: Uint32Array;
}

/**
 * Volume, area, centroid and inertia of the solid a mesh bounds, in float64 (mm, mm2, mm3, mm5, the mesh's frame).
 * Each triangle spans a tetrahedron with the middle of the bounds; signed tetrahedra add up to the solid.
 * Tetrahedron 0abc: V = a.(b x c) / 6, integral of x_i x_j = V / 20 (a_i a_j + b_i b_j + c_i c_j + s_i s_j) with
 * s = a + b + c (Tonon, J. Math. Stat. 1 (2004) 8-11; Mirtich, J. Graphics Tools 1 (1996) 31-50).
 * A mesh with open edges gives figures without meaning; one inside out gives a negative volume, and so does a mesh
 * wholly within another's flipped copy. No triangles, or none that enclose anything: centroid in the middle of the
 * bounds, inertia 0; no vertices: NaN centroid and inverted bounds.
 */
export function measureMesh(mesh: MeshData): SolidMeasures {
  const bounds = boundsOf(mesh.positions);
  const middle = [0, 1, 2].map((axis) => (bounds.min[axis] + bounds.max[axis]) / 2) as [
    number,
    number,
    number,
  ];
  const sums = momentsAbout(mesh, middle);
  const { volume, area } = sums;
  if (volume === 0) return { volume, area, centroid: middle, inertia: [0, 0, 0, 0, 0, 0], bounds };
  const [cx, cy, cz] = sums.first.map((moment) => moment / volume) as [number, number, number];
  const [xx, yy, zz, xy, yz, zx] = sums.second;
  // Parallel axes: second moments about the centroid.
  const qxx = xx - volume * cx * cx;
  const qyy = yy - volume * cy * cy;
  const qzz = zz - volume * cz * cz;
  return {
    volume,
    area,
    centroid: [middle[0] + cx, middle[1] + cy, middle[2] + cz],
    inertia: [
      qyy + qzz,
      qzz + qxx,
      qxx + qyy,
      volume * cx * cy - xy,
      volume * cy * cz - yz,
      volume * cz * cx - zx,
    ],
    bounds,
  };
}

interface Moments {
  readonly volume: number;
  readonly area: number;
  /** Integrals of x, y, z. */
  readonly first: Vec3;
  /** Integrals of xx, yy, zz, xy, yz, zx. */
  readonly second: readonly [number, number, number, number, number, number];
}

/** Moments in a frame whose origin is at `origin`: near the solid, so that no digits are lost far from zero. */
function momentsAbout({ positions: p, triangles }: MeshData, [ox, oy, oz]: Vec3): Moments {
  let volume = 0;
  let area = 0;
  let mx = 0;
  let my = 0;
  let mz = 0;
  let xx = 0;
  let yy = 0;
  let zz = 0;
  let xy = 0;
  let yz = 0;
  let zx = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    const ax = p[a] - ox;
    const ay = p[a + 1] - oy;
    const az = p[a + 2] - oz;
    const bx = p[b] - ox;
    const by = p[b + 1] - oy;
    const bz = p[b + 2] - oz;
    const cx = p[c] - ox;
    const cy = p[c + 1] - oy;
    const cz = p[c + 2] - oz;
    area += doubleArea(bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az) / 2;
    const six = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    const sx = ax + bx + cx;
    const sy = ay + by + cy;
    const sz = az + bz + cz;
    volume += six / 6;
    mx += (six * sx) / 24;
    my += (six * sy) / 24;
    mz += (six * sz) / 24;
    xx += (six * (ax * ax + bx * bx + cx * cx + sx * sx)) / 120;
    yy += (six * (ay * ay + by * by + cy * cy + sy * sy)) / 120;
    zz += (six * (az * az + bz * bz + cz * cz + sz * sz)) / 120;
    xy += (six * (ax * ay + bx * by + cx * cy + sx * sy)) / 120;
    yz += (six * (ay * az + by * bz + cy * cz + sy * sz)) / 120;
    zx += (six * (az * ax + bz * bx + cz * cx + sz * sx)) / 120;
  }
  return { volume, area, first: [mx, my, mz], second: [xx, yy, zz, xy, yz, zx] };
}

const doubleArea = (ux: number, uy: number, uz: number, vx: number, vy: number, vz: number): number => {
  const x = uy * vz - uz * vy;
  const y = uz * vx - ux * vz;
  const z = ux * vy - uy * vx;
  return Math.sqrt(x * x + y * y + z * z);
};
