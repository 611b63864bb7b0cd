import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { auditStl, isClosed } from '../../src/export/audit.ts';
import { writeStl } from '../../src/export/stl.ts';
import { writeSmallStl } from '../../src/export/stl-jscad.ts';
import { box, meshOf, tetrahedron } from '../export/shapes.ts';

/**
 * Binary STL as published (Paul Bourke, "STL format", paulbourke.net/dataformats/stl; kaitai stl.ksy): 80-byte
 * header, uint32 count, 50 bytes a facet = normal and three corners as 12 float32, then a uint16 that is 0; all
 * little-endian; normals by the right-hand rule. No code of the project reads here.
 */
const writers = [
  ['typed arrays', writeStl],
  ['the JSCAD serializer', writeSmallStl],
] as const;

describe.each(writers)('binary STL layout, written by %s', (_, write) => {
  test('84 + 50 n bytes, the count at 80', () => {
    const bytes = Buffer.from(write(box([1, 2, 3]), 'discwright box'));
    expect(bytes.length).toBe(84 + 50 * 12);
    expect(bytes.readUInt32LE(80)).toBe(12);
    expect(bytes.toString('latin1', 0, 80)).toBe('discwright box'.padEnd(80, ' '));
  });

  test('the bytes of one facet, written down by hand', () => {
    const facet = meshOf(
      [
        [1, 0, 0],
        [0, 2, 0],
        [0, 0, -0.5],
      ],
      [[0, 1, 2]],
    );
    const bytes = Buffer.from(write(facet, 'x'));
    // IEEE 754 single, little-endian: 1 = 00 00 80 3f, 2 = 00 00 00 40, -0.5 = 00 00 00 bf, 0 = four zeros.
    expect(bytes.toString('hex', 84 + 12, 84 + 50)).toBe(
      `${'0000803f'}${'00000000'}${'00000000'}${'00000000'}${'00000040'}${'00000000'}${'00000000'}${'00000000'}${'000000bf'}0000`,
    );
    // (b - a) x (c - a) = (-1, 2, 0) x (-1, 0, -0.5) = (-1, -0.5, 2); its length is sqrt(5.25).
    const length = Math.sqrt(5.25);
    for (const [i, value] of [-1, -0.5, 2].entries()) {
      expect(bytes.readFloatLE(84 + 4 * i)).toBeCloseTo(value / length, 6);
    }
  });

  test('normals of a tetrahedron point outward', () => {
    const bytes = Buffer.from(write(tetrahedron, 'x'));
    const normal = (facet: number) => [0, 4, 8].map((k) => bytes.readFloatLE(84 + 50 * facet + k));
    expect(normal(0).map((v) => v + 0)).toEqual([0, 0, -1]);
    for (const v of normal(3)) expect(v).toBeCloseTo(1 / Math.sqrt(3), 6);
  });

  test('no facets', () => {
    expect(write(meshOf([], []), 'x').length).toBe(84);
  });
});

/**
 * Meshes that others made and published as packages. Expected: vertices, edges, faces and boundary edges as
 * `gtscheck -v` counts them (GTS 0.7.6), volumes as admesh 0.98.4 gives them (it sums in float32, hence the bound).
 */
describe('the audit agrees with independent programs on meshes made by others', () => {
  const require = createRequire(import.meta.url);
  const cases = [
    [
      'stl-models/objects/bunny.bin.stl',
      { vertices: 34834, edges: 104288, triangles: 69451, openEdges: 223 },
      0,
    ],
    [
      'stl-models/objects/gearwheel.bin.stl',
      { vertices: 1222, edges: 3666, triangles: 2444, openEdges: 0 },
      8922.649414,
    ],
    [
      'node-stl/test/test_data/RasPiCaseLight.stl',
      { vertices: 126, edges: 372, triangles: 248, openEdges: 0 },
      1091.930054,
    ],
    ['stl-models/polytopes/cube.bin.stl', { vertices: 8, edges: 18, triangles: 12, openEdges: 0 }, 8],
    [
      'stl-models/polytopes/tetrahedronMinusZero.bin.stl',
      { vertices: 4, edges: 6, triangles: 4, openEdges: 0 },
      1 / 6,
    ],
  ] as const;
  test.each(cases)('%s', (path, counts, volume) => {
    const found = auditStl(readFileSync(require.resolve(path)));
    expect(found).toMatchObject({ ...counts, euler: counts.vertices - counts.edges + counts.triangles });
    expect(isClosed(found)).toBe(counts.openEdges === 0);
    // An open mesh has no volume that does not depend on where it is summed about.
    if (counts.openEdges === 0) expect(Math.abs(found.volume / volume - 1)).toBeLessThan(5e-6);
  });

  test('a file with faces without area: two, as admesh says', () => {
    const found = auditStl(readFileSync(require.resolve('node-stl/test/test_data/Pterosaur_FDM.stl')));
    expect(found).toMatchObject({ triangles: 201_286, openEdges: 0, degenerate: 2 });
    expect(isClosed(found)).toBe(false);
  });

  test('the Stanford rabbit of package bunny: closed, 3 674 faces on 1 839 vertices, a ball', () => {
    const bunny: { positions: number[][]; cells: number[][] } = require('bunny');
    const mesh = {
      positions: Float32Array.from(bunny.positions.flat()),
      triangles: Uint32Array.from(bunny.cells.flat()),
    };
    const found = auditStl(writeStl(mesh, 'bunny'));
    expect(found).toMatchObject({ triangles: 3674, vertices: 1839, euler: 2 });
    // 194.288372 by an independent count over the package's float64 coordinates; ours are float32.
    expect(found.volume).toBeCloseTo(194.288372, 3);
    expect(isClosed(found)).toBe(true);
  });
});
