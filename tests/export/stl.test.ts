import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stlHeader, writeStl } from '../../src/export/stl.ts';
import { box, cornersOf, meshOf, tetrahedron } from './shapes.ts';

test('any float32 coordinate comes back bit for bit', () => {
  const corner = fc.float({ noNaN: true });
  fc.assert(
    fc.property(fc.array(corner, { minLength: 9, maxLength: 90 }), (values) => {
      const positions = Float32Array.from(values.slice(0, values.length - (values.length % 9)));
      const triangles = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
      expect(cornersOf(writeStl({ positions, triangles }, 'x'))).toEqual(positions);
    }),
    { seed: 1 },
  );
});

test('the same mesh gives the same bytes', () => {
  expect(writeStl(box([1, 2, 3]), 'x')).toEqual(writeStl(box([1, 2, 3]), 'x'));
});

test('a facet without area has the normal (0, 0, 0), never a number that is none', () => {
  const flat = meshOf(
    [
      [0, 0, 0],
      [1, 1, 1],
      [2, 2, 2],
    ],
    [[0, 1, 2]],
  );
  const view = new DataView(writeStl(flat, 'x').buffer);
  expect([84, 88, 92].map((at) => view.getFloat32(at, true))).toEqual([0, 0, 0]);
});

test('a header that readers would take for the text variant is refused', () => {
  expect(() => stlHeader('solid oak button')).toThrow(RangeError);
  expect(() => stlHeader('  SOLID')).toThrow(RangeError);
});

test('a header keeps to 80 ASCII bytes', () => {
  const header = stlHeader(`discwright Schlüssel ${'x'.repeat(200)}`);
  expect(header.length).toBe(80);
  expect(String.fromCharCode(...header.subarray(0, 21))).toBe('discwright Schl?ssel ');
});

test('an index that is not in the mesh is a programmer error', () => {
  expect(() => writeStl({ ...tetrahedron, triangles: Uint32Array.from([0, 1, 4]) }, 'x')).toThrow(RangeError);
});
