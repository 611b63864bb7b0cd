// Small solids made without any kernel, so that tests rest on plain geometry alone. Positions are float64.

export interface TestMesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

export interface KernelMesh {
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
}

export const single = ({ positions, triangles }: TestMesh): KernelMesh => ({
  positions: Float32Array.from(positions),
  triangles,
});

type Point = readonly [number, number, number];

/** Four corners in any order; faces look outward. */
export function tetrahedron(corners: readonly [Point, Point, Point, Point]): TestMesh {
  const [a, b, c, d] = corners;
  const [u, v, w] = [b, c, d].map((p) => p.map((value, i) => value - a[i])) as [number[], number[], number[]];
  const six =
    u[0] * (v[1] * w[2] - v[2] * w[1]) +
    u[1] * (v[2] * w[0] - v[0] * w[2]) +
    u[2] * (v[0] * w[1] - v[1] * w[0]);
  const faces = [0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3];
  if (six < 0) faces.reverse();
  return { positions: Float64Array.from(corners.flat()), triangles: Uint32Array.from(faces) };
}

/** Turns a closed (r, z) outline, counter-clockwise with r to the right, about the z axis. Points on r = 0 are shared. */
export function revolved(outline: readonly (readonly [number, number])[], n: number): TestMesh {
  const positions: number[] = [];
  const firstOf = outline.map(([r, z]) => {
    const first = positions.length / 3;
    for (let k = 0; k < (r === 0 ? 1 : n); k++) {
      const angle = (2 * Math.PI * k) / n;
      positions.push(r * Math.cos(angle), r * Math.sin(angle), z);
    }
    return first;
  });
  const triangles: number[] = [];
  for (let i = 0; i < outline.length; i++) {
    const j = (i + 1) % outline.length;
    const at = (row: number, k: number): number => firstOf[row] + (outline[row][0] === 0 ? 0 : k % n);
    for (let k = 0; k < n; k++) {
      if (outline[i][0] !== 0) triangles.push(at(i, k), at(i, k + 1), at(j, k));
      if (outline[j][0] !== 0) triangles.push(at(i, k + 1), at(j, k + 1), at(j, k));
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** From radius `low` at z = 0 to `high` at z = height. */
export const coneFrustum = (low: number, high: number, height: number, n: number): TestMesh =>
  revolved(
    high === 0
      ? [
          [0, 0],
          [low, 0],
          [0, height],
        ]
      : [
          [0, 0],
          [low, 0],
          [high, height],
          [0, height],
        ],
    n,
  );

/** A ball of radius r about (x, y, z): rings of latitude, a vertex on each pole. */
export function ball(r: number, [x, y, z]: Point, rings = 48, n = 96): TestMesh {
  const outline = Array.from({ length: rings + 1 }, (_, i): [number, number] => {
    const angle = -Math.PI / 2 + (Math.PI * i) / rings;
    return [i === 0 || i === rings ? 0 : r * Math.cos(angle), r * Math.sin(angle)];
  });
  return shifted(revolved(outline, n), [x, y, z]);
}

/** An upright box from `min` to `max`. */
export function box([x0, y0, z0]: Point, [x1, y1, z1]: Point): TestMesh {
  const positions = Float64Array.from([
    x0,
    y0,
    z0,
    x1,
    y0,
    z0,
    x1,
    y1,
    z0,
    x0,
    y1,
    z0,
    x0,
    y0,
    z1,
    x1,
    y0,
    z1,
    x1,
    y1,
    z1,
    x0,
    y1,
    z1,
  ]);
  const triangles = Uint32Array.from([
    0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4,
    7,
  ]);
  return { positions, triangles };
}

export function shifted({ positions, triangles }: TestMesh, by: Point): TestMesh {
  return { positions: positions.map((value, i) => value + by[i % 3]), triangles };
}

export function together(...meshes: readonly TestMesh[]): TestMesh {
  let at = 0;
  const triangles: number[] = [];
  for (const mesh of meshes) {
    for (const index of mesh.triangles) triangles.push(index + at);
    at += mesh.positions.length / 3;
  }
  return {
    positions: Float64Array.from(meshes.flatMap((mesh) => [...mesh.positions])),
    triangles: Uint32Array.from(triangles),
  };
}
