import { createRequire } from 'node:module';
import createModule from 'manifold-3d/manifold';
import { boundsOf, type TriangleMesh } from '../src/geometry/index.ts';

const bunny: { positions: number[][]; cells: number[][] } = createRequire(import.meta.url)('bunny');

/**
 * The closed Stanford bunny of the `bunny` package (3 674 triangles) rounded and divided to edges of at most `edge`
 * times 25 mm, 25 mm tall, standing with its middle over the origin, its lowest point 10 mm below z = 0. An edge of
 * 0.245 mm gives about 70 000 triangles.
 */
export async function fineBunny(edge = 0.245): Promise<TriangleMesh> {
  const wasm = await createModule();
  wasm.setup();
  const coarse = new wasm.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(bunny.positions.flat()),
    triVerts: Uint32Array.from(bunny.cells.flat()),
  });
  const size = 25 / 9.658;
  const upright = wasm.Manifold.ofMesh(coarse).rotate(90, 0, 0).scale(size);
  const fine = upright.calculateNormals(0, 60).smoothByNormals(0).refineToLength(edge).getMesh();
  // Only positions matter here; the normals split vertices, so those at one place become one again.
  const positions = new Float32Array(fine.numVert * 3);
  for (let v = 0; v < fine.numVert; v++) positions.set(fine.position(v), v * 3);
  const plain = new wasm.Mesh({ numProp: 3, vertProperties: positions, triVerts: fine.triVerts });
  plain.merge();
  const whole = wasm.Manifold.ofMesh(plain);
  const { min, max } = boundsOf(positions);
  const placed = whole.translate(-(min[0] + max[0]) / 2, -(min[1] + max[1]) / 2, -min[2] - 10);
  const mesh = placed.getMesh();
  return { positions: mesh.vertProperties.slice(), triangles: mesh.triVerts.slice() };
}
