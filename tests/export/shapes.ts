import type { TriangleMesh } from '../../src/geometry/index.ts';
import type { Solid } from '../../src/mold/index.ts';

export type Corner = readonly [number, number, number];

export const meshOf = (vertices: readonly Corner[], faces: readonly Corner[]): TriangleMesh => ({
  positions: Float32Array.from(vertices.flat()),
  triangles: Uint32Array.from(faces.flat()),
});

/** The corner tetrahedron 0, e1, e2, e3: volume 1/6, Euler characteristic 2. */
export const tetrahedron = meshOf(
  [
    [0, 0, 0],
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  [
    [0, 2, 1],
    [0, 1, 3],
    [0, 3, 2],
    [1, 2, 3],
  ],
);

/** An axis-parallel box, faces outward, two triangles a side; the first two are the bottom. */
export function box(size: Corner, [x, y, z]: Corner = [0, 0, 0]): TriangleMesh {
  const [a, b, c] = size;
  return meshOf(
    [
      [x, y, z],
      [x + a, y, z],
      [x + a, y + b, z],
      [x, y + b, z],
      [x, y, z + c],
      [x + a, y, z + c],
      [x + a, y + b, z + c],
      [x, y + b, z + c],
    ],
    [
      [0, 2, 1],
      [0, 3, 2],
      [4, 5, 6],
      [4, 6, 7],
      [0, 1, 5],
      [0, 5, 4],
      [1, 2, 6],
      [1, 6, 5],
      [2, 3, 7],
      [2, 7, 6],
      [3, 0, 4],
      [3, 4, 7],
    ],
  );
}

/** A ring of `around` x `across` quads: Euler characteristic 0. Radii to the tube's middle and of the tube. */
export function torus(radius: number, tube: number, around: number, across: number): TriangleMesh {
  const vertices: Corner[] = [];
  const faces: Corner[] = [];
  for (let i = 0; i < around; i++) {
    for (let j = 0; j < across; j++) {
      const u = (2 * Math.PI * i) / around;
      const v = (2 * Math.PI * j) / across;
      const r = radius + tube * Math.cos(v);
      vertices.push([r * Math.cos(u), r * Math.sin(u), tube * Math.sin(v)]);
      const at = (di: number, dj: number) => ((i + di) % around) * across + ((j + dj) % across);
      faces.push([at(0, 0), at(1, 0), at(1, 1)], [at(0, 0), at(1, 1), at(0, 1)]);
    }
  }
  return meshOf(vertices, faces);
}

export const withFaces = (mesh: TriangleMesh, faces: readonly Corner[]): TriangleMesh => ({
  positions: mesh.positions,
  triangles: Uint32Array.from(faces.flat()),
});

export const facesOf = (mesh: TriangleMesh): Corner[] =>
  Array.from({ length: mesh.triangles.length / 3 }, (_, i) => [
    mesh.triangles[3 * i],
    mesh.triangles[3 * i + 1],
    mesh.triangles[3 * i + 2],
  ]);

/** The corners of a binary STL, nine float32 a facet. */
export function cornersOf(bytes: Uint8Array): Float32Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const count = view.getUint32(80, true);
  return Float32Array.from({ length: count * 9 }, (_, i) =>
    view.getFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), true),
  );
}

export const cornersOfMesh = ({ positions, triangles }: TriangleMesh): Float32Array =>
  Float32Array.from(
    { length: triangles.length * 3 },
    (_, i) => positions[triangles[Math.floor(i / 3)] * 3 + (i % 3)],
  );

/** All faces turned over. */
export const insideOut = (mesh: TriangleMesh): TriangleMesh =>
  withFaces(
    mesh,
    facesOf(mesh).map(([a, b, c]) => [b, a, c]),
  );

export const openBox = (): TriangleMesh => withFaces(box([10, 20, 30]), facesOf(box([10, 20, 30])).slice(1));

export const flippedFaceBox = (): TriangleMesh => {
  const whole = box([10, 20, 30]);
  return withFaces(whole, [
    ...facesOf(whole).slice(1),
    ...facesOf(whole)
      .slice(0, 1)
      .map(([a, b, c]): Corner => [b, a, c]),
  ]);
};

export const solidOf = (id: string, mesh: TriangleMesh, more: Partial<Solid> = {}): Solid => ({
  id,
  title: id,
  role: 'half',
  subjects: [],
  mesh,
  toMold: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1],
  estimated: false,
  ...more,
});
