import { describe, expect, test } from 'vitest';
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
