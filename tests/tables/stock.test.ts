import { describe, expect, it } from 'vitest';
import { nextStock, stockDiscs, stockThicknesses } from '../../src/tables/index.ts';

// Common practice, no published source: halves from 1/4 to 1 in by 1/8 in, discs of 6 to 18 in. 1 in = 25.4 mm exactly.
describe('stock', () => {
  it('has halves from 1/4 to 1 in by eighths', () => {
    const millimetres = [6.35, 9.525, 12.7, 15.875, 19.05, 22.225, 25.4];
    expect(stockThicknesses).toHaveLength(millimetres.length);
    for (const [i, row] of stockThicknesses.entries()) expect(row.thickness).toBeCloseTo(millimetres[i], 12);
  });

  it('takes the thinnest that is thick enough', () => {
    expect(nextStock(12.7)?.name).toBe('1/2 in');
    expect(nextStock(12.71)?.name).toBe('5/8 in');
    expect(nextStock(1)?.name).toBe('1/4 in');
    expect(nextStock(25.5)).toBeUndefined();
  });

  it('says that its rows are common practice', () => {
    for (const row of [...stockThicknesses, ...stockDiscs]) expect(row.source.kind).toBe('choice');
  });
});
