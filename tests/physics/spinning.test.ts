import { expect, it } from 'vitest';
import { speedForRim } from '../../src/physics/index.ts';

// 20 m/s at 125 mm: 160 rad/s, 160 x 30 / pi rpm.
it('the speed for a rim of 20 m/s at 125 mm', () => {
  expect(speedForRim(20, 125)).toBeCloseTo(1527.887, 3);
});
