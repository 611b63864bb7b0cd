import { cross, type SolidMeasures, type Vec3 } from '../../geometry/index.ts';

type Square = [[number, number, number], [number, number, number], [number, number, number]];

const mostRounds = 50;

/**
 * Unit vectors along the principal axes of inertia, the axis of the least moment first, right-handed. Cyclic Jacobi
 * rotations (Golub and Van Loan, Matrix Computations, 8.5). Where moments are equal any axes in their plane will do.
 */
export function principalAxes({ inertia }: Pick<SolidMeasures, 'inertia'>): readonly [Vec3, Vec3, Vec3] {
  const [xx, yy, zz, xy, yz, zx] = inertia;
  const a: Square = [
    [xx, xy, zx],
    [xy, yy, yz],
    [zx, yz, zz],
  ];
  const v: Square = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const size = Math.hypot(...a.flat());
  for (let round = 0; round < mostRounds; round++) {
    if (Math.hypot(a[0][1], a[1][2], a[0][2]) <= 1e-14 * size) break;
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ]) {
      turn(a, v, p, q);
    }
  }
  const order = [0, 1, 2].sort((i, j) => a[i][i] - a[j][j]);
  const [first, second] = order.map((k): Vec3 => [v[0][k], v[1][k], v[2][k]]);
  return [first, second, cross(first, second)];
}

/** One rotation that makes a[p][q] vanish. */
function turn(a: Square, v: Square, p: number, q: number): void {
  if (a[p][q] === 0) return;
  const theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
  const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < 3; k++) {
    const [kp, kq] = [a[k][p], a[k][q]];
    a[k][p] = c * kp - s * kq;
    a[k][q] = s * kp + c * kq;
  }
  for (let k = 0; k < 3; k++) {
    const [pk, qk] = [a[p][k], a[q][k]];
    a[p][k] = c * pk - s * qk;
    a[q][k] = s * pk + c * qk;
  }
  for (let k = 0; k < 3; k++) {
    const [kp, kq] = [v[k][p], v[k][q]];
    v[k][p] = c * kp - s * kq;
    v[k][q] = s * kp + c * kq;
  }
}
