import { expect, test } from 'vitest';
import { guessUnit, mmPer } from '../../../src/mesh/repair/guess-unit.ts';

// International yard and pound agreement of 1959: 1 in = 25.4 mm, 1 ft = 12 in. SI prefixes for the rest.
test('units in millimeters', () => {
  expect(mmPer).toEqual({ micron: 1e-3, mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 });
});

test.each([
  [25, 'mm'],
  [2, 'mm'],
  [1000, 'mm'],
  [1.5, 'in'],
  [0.2, 'in'],
  [0.155, 'm'],
  [0.002, 'm'],
  [25_000, 'micron'],
  [1e-5, 'mm'],
  [1e9, 'mm'],
] as const)('a longest side of %f is taken as %s', (longest, unit) => {
  expect(guessUnit(longest)).toBe(unit);
});

test('a guessed size is always one of a part where there is such a unit', () => {
  for (let exponent = -2.6; exponent < 5.9; exponent += 0.01) {
    const longest = 10 ** exponent;
    const size = longest * mmPer[guessUnit(longest)];
    expect(size).toBeGreaterThanOrEqual(1);
    expect(size).toBeLessThanOrEqual(1000);
  }
});
