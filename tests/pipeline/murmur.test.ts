import { expect, test } from 'vitest';
import { murmur } from '../../src/pipeline/murmur.ts';

// Test vectors as published in the encyclopedia article on MurmurHash and by implementers; from memory, and they agree.
test.each([
  ['', 0, 0],
  ['', 1, 0x514e28b7],
  ['', 0xffffffff, 0x81f16f39],
  ['test', 0, 0xba6bd213],
  ['test', 0x9747b28c, 0x704b81dc],
  ['Hello, world!', 0, 0xc0363e43],
  ['Hello, world!', 0x9747b28c, 0x24884cba],
  ['The quick brown fox jumps over the lazy dog', 0, 0x2e4ff723],
  ['The quick brown fox jumps over the lazy dog', 0x9747b28c, 0x2fa826cd],
])('MurmurHash3 of %j with seed %d', (text, seed, hash) => {
  const bytes = new TextEncoder().encode(text);
  expect(murmur(bytes, [seed, 5])[0]).toBe(hash);
  expect(murmur(bytes, [5, seed])[1]).toBe(hash);
  // Not on a word boundary.
  const shifted = new Uint8Array(bytes.length + 1);
  shifted.set(bytes, 1);
  expect(murmur(shifted.subarray(1), [seed, seed])).toEqual([hash, hash]);
});
