import { describe, expect, it } from 'vitest';
import { fisherFewer, wilson } from '../../src/trials/index.ts';

describe('Wilson', () => {
  it.each([
    // R. G. Newcombe, Statistics in Medicine 17 (1998) 857, table I, method 3 (score, no continuity correction).
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i lie between %f and %f', (hits, of, low, high) => {
    const found = wilson(hits, of);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
    const other = wilson(of - hits, of);
    expect(other.low).toBeCloseTo(1 - found.high, 12);
  });
  it('knows nothing from nothing, and refuses what is no share', () => {
    expect(wilson(0, 0)).toMatchObject({ low: 0, high: 1 });
    expect(() => wilson(3, 2)).toThrow(RangeError);
  });
});

describe('Fisher', () => {
  it('gives 17/70 for the lady who tastes tea (Fisher 1935, chapter II)', () => {
    expect(fisherFewer({ bad: 3, of: 4 }, { bad: 1, of: 4 })).toBeCloseTo(17 / 70, 12);
  });
  it('gives 0.0004652 for the convictions of twins (Fisher 1962; worked in the manual of R, fisher.test)', () => {
    // 10 of 13 and 2 of 17.
    expect(fisherFewer({ bad: 10, of: 13 }, { bad: 2, of: 17 })).toBeCloseTo(0.0004652, 7);
  });
  it('adds up to one, and is sure of nothing where nothing was bad', () => {
    expect(fisherFewer({ bad: 0, of: 9 }, { bad: 0, of: 7 })).toBe(1);
    expect(fisherFewer({ bad: 2, of: 6 }, { bad: 6, of: 6 })).toBeCloseTo(1, 12);
    expect(fisherFewer({ bad: 2, of: 2 }, { bad: 0, of: 0 })).toBe(1);
    expect(() => fisherFewer({ bad: 2, of: 1 }, { bad: 0, of: 0 })).toThrow(RangeError);
  });
});
