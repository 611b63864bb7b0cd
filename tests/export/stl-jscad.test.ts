import modeling from '@jscad/modeling';
import serializer from '@jscad/stl-serializer';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { writeStl } from '../../src/export/stl.ts';
import { writeSmallStl } from '../../src/export/stl-jscad.ts';
import type { TriangleMesh } from '../../src/geometry/index.ts';
import type { Geom3 } from '../../src/kernel/index.ts';
import { box, cornersOf, cornersOfMesh, tetrahedron, torus } from './shapes.ts';

const { primitives, geometries } = modeling;

/** A JSCAD solid's polygons as a fan of float32 triangles. */
function meshOfGeom(geom: Geom3): TriangleMesh {
  const corners = geometries.geom3
    .toPolygons(geom)
    .flatMap(({ vertices: v }) => v.slice(2).flatMap((c, i) => [...v[0], ...v[i + 1], ...c]));
  return {
    positions: Float32Array.from(corners),
    triangles: Uint32Array.from({ length: corners.length / 3 }, (_, i) => i),
  };
}

const geomOf = ({ positions: p, triangles }: TriangleMesh): Geom3 =>
  geometries.geom3.create(
    Array.from({ length: triangles.length / 3 }, (_, i) =>
      geometries.poly3.create(
        [0, 1, 2].map((k): [number, number, number] => {
          const at = triangles[3 * i + k] * 3;
          return [p[at], p[at + 1], p[at + 2]];
        }),
      ),
    ),
  );

const solids: [string, TriangleMesh][] = [
  ['a tetrahedron', tetrahedron],
  ['a box', box([10.1, 20.37, 3.3])],
  ['a ring', torus(20, 5, 32, 24)],
  ['a disc blank of 250 mm', meshOfGeom(primitives.cylinder({ radius: 125, height: 12.7, segments: 248 }))],
  ['a ball', meshOfGeom(primitives.sphere({ radius: 7, segments: 32 }))],
  [
    'a rounded block',
    meshOfGeom(primitives.roundedCuboid({ size: [9, 8, 7], roundRadius: 2, segments: 16 })),
  ],
];

describe('both writers say the same to a reader', () => {
  test.each(solids)('%s', (_, mesh) => {
    const small = writeSmallStl(mesh, 'x');
    const big = writeStl(mesh, 'x');
    expect(small.subarray(0, 84)).toEqual(big.subarray(0, 84));
    expect(cornersOf(small)).toEqual(cornersOfMesh(mesh));
    expect(cornersOf(small)).toEqual(cornersOf(big));
    // Normals come from float64 sums in a different order.
    const normals = (bytes: Uint8Array) => {
      const view = new DataView(bytes.buffer);
      return Array.from({ length: mesh.triangles.length }, (_, i) =>
        view.getFloat32(84 + 50 * Math.floor(i / 3) + 4 * (i % 3), true),
      );
    };
    const expected = normals(big);
    for (const [i, value] of normals(small).entries()) expect(value).toBeCloseTo(expected[i], 6);
  });

  test('any float32 coordinate comes back', () => {
    fc.assert(
      fc.property(
        fc.array(fc.float({ noNaN: true, noDefaultInfinity: true }), { minLength: 9, maxLength: 90 }),
        (values) => {
          const positions = Float32Array.from(values.slice(0, values.length - (values.length % 9)));
          const mesh = {
            positions,
            triangles: Uint32Array.from({ length: positions.length / 3 }, (_, i) => i),
          };
          expect(cornersOf(writeSmallStl(mesh, 'x'))).toEqual(positions);
        },
      ),
      { seed: 1 },
    );
  });
});

test('why the public entry is not used: it moves corners of a 250 mm disc', () => {
  const mesh = solids[3][1];
  const [, count, body] = serializer.serialize({ binary: true }, geomOf(mesh));
  const bytes = new Uint8Array(84 + body.byteLength);
  bytes.set(new Uint8Array(count), 80);
  bytes.set(new Uint8Array(body), 84);
  const expected = cornersOfMesh(mesh);
  const moved = cornersOf(bytes).map((value, i) => Math.abs(value - expected[i]));
  expect(Math.max(...moved)).toBeGreaterThan(0.0005);
});
