import type { TriangleMesh, Vec3 } from './triangles.ts';

/** A 4 x 4 affine matrix, 16 numbers, column-major (translation in 12, 13, 14), as three and glTF store it. */
export type Matrix4 = readonly number[];

export const identity: Matrix4 = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

export const translation = (x: number, y: number, z: number): Matrix4 => [
  ...identity.slice(0, 12),
  x,
  y,
  z,
  1,
];

export const scaling = (x: number, y = x, z = x): Matrix4 => [x, 0, 0, 0, 0, y, 0, 0, 0, 0, z, 0, 0, 0, 0, 1];

/** Right-handed turn about one axis by an angle in rad. */
export function rotation(axis: 'x' | 'y' | 'z', angleRad: number): Matrix4 {
  const c = Math.cos(angleRad);
  const s = Math.sin(angleRad);
  if (axis === 'x') return [1, 0, 0, 0, 0, c, s, 0, 0, -s, c, 0, 0, 0, 0, 1];
  if (axis === 'y') return [c, 0, -s, 0, 0, 1, 0, 0, s, 0, c, 0, 0, 0, 0, 1];
  return [c, s, 0, 0, -s, c, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];
}

/** Matrices applied from right to left: `compose(a, b)` does b first. */
export function compose(...matrices: readonly Matrix4[]): Matrix4 {
  return matrices.reduce((a, b) => {
    const out: number[] = new Array(16).fill(0);
    for (let column = 0; column < 4; column++) {
      for (let row = 0; row < 4; row++) {
        for (let k = 0; k < 4; k++) {
          out[column * 4 + row] = out[column * 4 + row] + a[k * 4 + row] * b[column * 4 + k];
        }
      }
    }
    return out;
  }, identity);
}

export const movePoint = (m: Matrix4, [x, y, z]: Vec3): Vec3 => [
  movedAlong(0, m, x, y, z),
  movedAlong(1, m, x, y, z),
  movedAlong(2, m, x, y, z),
];

/** One coordinate (0, 1, 2) of a moved point: nothing is made, for where it is asked for each of many vertices. */
export const movedAlong = (axis: number, m: Matrix4, x: number, y: number, z: number): number =>
  m[axis] * x + m[4 + axis] * y + m[8 + axis] * z + m[12 + axis];

/** Determinant of the linear part: negative for a mirror. */
export const determinant = (m: Matrix4): number => {
  const [a, b, c, , d, e, f, , g, h, i] = m as number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return a * (e * i - f * h) - d * (b * i - c * h) + g * (b * f - c * e);
};

/** Moves a mesh; a mirroring matrix also turns the faces over, so that they stay counter-clockwise outside. */
export function moveMesh(mesh: TriangleMesh, m: Matrix4): TriangleMesh {
  const from = mesh.positions;
  const positions = new Float32Array(from.length);
  const n = m as number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  for (let i = 0; i < from.length; i += 3) {
    const x = from[i];
    const y = from[i + 1];
    const z = from[i + 2];
    positions[i] = n[0] * x + n[4] * y + n[8] * z + n[12];
    positions[i + 1] = n[1] * x + n[5] * y + n[9] * z + n[13];
    positions[i + 2] = n[2] * x + n[6] * y + n[10] * z + n[14];
  }
  if (determinant(m) >= 0) return { positions, triangles: mesh.triangles };
  const triangles = mesh.triangles.slice();
  for (let i = 0; i < triangles.length; i += 3) {
    triangles[i] = mesh.triangles[i + 1];
    triangles[i + 1] = mesh.triangles[i];
  }
  return { positions, triangles };
}

/** Half a turn about the x axis, in whole numbers, so that z levels stay exact: y and z change sign. */
export const upsideDown: Matrix4 = [1, 0, 0, 0, 0, -1, 0, 0, 0, 0, -1, 0, 0, 0, 0, 1];

/** Undoes an affine matrix. Throws RangeError where it flattens space. */
export function inverse(m: Matrix4): Matrix4 {
  const det = determinant(m);
  if (!(Math.abs(det) > 0)) throw new RangeError('inverse: the matrix flattens space');
  const cofactor = (row: number, column: number): number => {
    const at = (r: number, c: number): number => m[((column + c) % 3) * 4 + ((row + r) % 3)];
    return at(1, 1) * at(2, 2) - at(1, 2) * at(2, 1);
  };
  // + 0 turns -0 into 0, so that equal matrices are written alike.
  const linear = (row: number, column: number): number => cofactor(column, row) / det + 0;
  const shift = (row: number): number =>
    -(linear(row, 0) * m[12] + linear(row, 1) * m[13] + linear(row, 2) * m[14]) + 0;
  const columns = [0, 1, 2].flatMap((column) => [linear(0, column), linear(1, column), linear(2, column), 0]);
  return [...columns, shift(0), shift(1), shift(2), 1];
}
