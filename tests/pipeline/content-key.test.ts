import { expect, test } from 'vitest';
import { contentKey } from '../../src/pipeline/content-key.ts';

test('equal content has one key whatever the order of keys', () => {
  expect(contentKey({ a: 1, b: [2, 'x'] })).toBe(contentKey({ b: [2, 'x'], a: 1 }));
  expect(contentKey({ a: 1, b: undefined })).toBe(contentKey({ a: 1 }));
});

test.each([
  [1, '1'],
  [0, -0],
  [Number.NaN, null],
  [[1, 2], [12]],
  [{ a: [] }, { a: {} }],
  [Float32Array.of(1, 2), Float32Array.of(1, 3)],
  [Float32Array.of(0), Uint32Array.of(0)],
  [['a', 'b'], ['a,b']],
])('%o and %o have different keys', (a, b) => {
  expect(contentKey(a)).not.toBe(contentKey(b));
});

test('what is not plain data is refused', () => {
  expect(() => contentKey({ f: () => 1 })).toThrow(TypeError);
  expect(() => contentKey(new Map())).toThrow(TypeError);
});
