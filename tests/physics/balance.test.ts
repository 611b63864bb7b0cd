import { expect, it } from 'vitest';
import { angleOf, planeShares } from '../../src/physics/index.ts';

// Lever rule (ISO 21940-11): planes at -10 and 30, center at 8: (30 - 8) / 40 and (8 + 10) / 40.
it('shares between planes either side of zero', () => {
  expect(planeShares(8, -10, 30).a).toBeCloseTo(0.55, 12);
  expect(planeShares(8, -10, 30).b).toBeCloseTo(0.45, 12);
});

it('angles run from 0 to 360', () => {
  expect(angleOf([0, -2])).toBeCloseTo(270, 12);
  expect(angleOf([1, -1])).toBeCloseTo(315, 12);
  expect(Object.is(angleOf([3, -0]), 0)).toBe(true);
});
