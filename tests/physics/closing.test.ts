import { expect, it } from 'vitest';
import { lockPressure } from '../../src/physics/index.ts';

// K dV / V, and what leaves room presses on nothing.
it('a pack is pressed by what is too much of it alone', () => {
  expect(lockPressure(2e9, 5, 1000)).toBe(1e7);
  expect(lockPressure(2e9, -5, 1000)).toBe(0);
});
