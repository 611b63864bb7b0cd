import { expect, test } from 'vitest';
import { readMesh } from '../../src/mesh/index.ts';

/**
 * Binary STL as published (M. Burns, "Automated Fabrication", 1993, section 6.5; Library of Congress, Sustainability
 * of Digital Formats, fdd000504; P. Bourke, "STL format"): 80-byte header, uint32 count, 50 bytes a facet = normal
 * and three corners as 12 float32, then a uint16; all little-endian; size 84 + 50 n. Bytes below written by hand:
 * IEEE 754 single of 1 = 3f800000, 2 = 40000000, -0.5 = bf000000, 0.1 = 3dcccccd.
 */
const hex = (text: string): number[] => (text.match(/../g) ?? []).map((pair) => Number.parseInt(pair, 16));

test('a binary STL file of two facets, byte by byte', () => {
  const zero = '00000000';
  const [one, two, minusHalf, tenth] = ['0000803f', '00000040', '000000bf', 'cdcccc3d'];
  const bytes = Uint8Array.from([
    ...new TextEncoder().encode('solid is not what this is'.padEnd(80, ' ')),
    ...hex('02000000'),
    ...hex(zero + zero + one + one + zero + zero + zero + two + zero + zero + zero + minusHalf),
    ...hex('0000'),
    // A normal that is not a number and an attribute that is not zero, as color dialects write, change nothing.
    ...hex(`0000c07f0000c07f0000c07f${tenth}${tenth}${tenth}${one}${two}${one}${two}${one}${two}`),
    ...hex('ff7f'),
  ]);
  expect(bytes.length).toBe(84 + 50 * 2);
  const { mesh, findings } = readMesh(bytes, 'button.stl');
  expect(findings).toEqual([]);
  const t = Math.fround(0.1);
  expect([...(mesh?.positions ?? [])]).toEqual([1, 0, 0, 0, 2, 0, 0, 0, -0.5, t, t, t, 1, 2, 1, 2, 1, 2]);
  expect([...(mesh?.triangles ?? [])]).toEqual([0, 1, 2, 3, 4, 5]);
});
