import { expect, it } from 'vitest';
import { bestSwap, type Swappable } from '../../../src/checks/turning/best-swap.ts';

const one = (id: string, master: string, x: number, y: number, mass: Swappable['mass']): Swappable => ({
  id,
  master,
  x,
  y,
  mass,
});

// 10 g at (2, 1) from its place, 4 g at (3, -1) from its own: turned by -90 and 90 degrees they come to (0, -60) + (1, -2)
// and (90, 0) + (1, 3); 10 (1, -62) + 4 (91, 3) = (374, -608), 713.82 g.mm.
it('what a swap leaves, each turned with its place', () => {
  const a = one('a', 'large', 90, 0, { x: 92, y: 1, z: 0, massG: 10 });
  const b = one('b', 'small', 0, -60, { x: 3, y: -61, z: 0, massG: 4 });
  expect(bestSwap([a, b], [a.mass, b.mass])).toEqual({ a: 'a', b: 'b', size: expect.closeTo(713.82, 2) });
  // 100 g.mm of a fitting beside them stay: (474, -608), 770.93 g.mm.
  const fitting = { x: 100, y: 0, z: 0, massG: 1 };
  expect(bestSwap([a, b], [a.mass, b.mass, fitting])?.size).toBeCloseTo(770.93, 2);
});

it('alike ones are not swapped', () => {
  const mass = { x: 90, y: 0, z: 0, massG: 10 };
  expect(bestSwap([one('a', 'same', 90, 0, mass), one('b', 'same', -60, 0, mass)], [mass])).toBeUndefined();
});
