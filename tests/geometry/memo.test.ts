import { expect, it } from 'vitest';
import { memoPerMesh, memoPerObject } from '../../src/geometry/index.ts';

it('makes once for each object', () => {
  let made = 0;
  const numbered = memoPerObject((_key: object) => `no. ${++made}`);
  const [one, other] = [{}, {}];
  expect([numbered(one), numbered(other), numbered(one)]).toEqual(['no. 1', 'no. 2', 'no. 1']);
});

it('knows a mesh again by both of its arrays', () => {
  let made = 0;
  const numbered = memoPerMesh(() => `no. ${++made}`);
  const [positions, triangles] = [new Float32Array(9), Uint32Array.of(0, 1, 2)];
  expect(numbered({ positions, triangles })).toBe('no. 1');
  expect(numbered({ positions: positions.slice(), triangles })).toBe('no. 2');
  expect(numbered({ positions, triangles: triangles.slice() })).toBe('no. 3');
  expect(numbered({ positions, triangles })).toBe('no. 1');
});
