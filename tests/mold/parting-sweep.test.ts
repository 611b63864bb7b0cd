import { describe, expect, test } from 'vitest';
import { spread } from '../../src/mold/parting/sweep.ts';

const rows = { nx: 161, ny: 121, cell: 0.1 };
const blank = (): Float32Array => new Float32Array(rows.nx * rows.ny).fill(Number.POSITIVE_INFINITY);
const even = (slope: number): Float32Array => new Float32Array(rows.nx * rows.ny).fill(slope);

describe('spreading at a slope', () => {
  test('from one node: slope times the distance, to the first order in the cell', () => {
    const field = blank();
    field[60 * rows.nx + 80] = -1;
    spread(field, even(2), rows, 100);
    for (let j = 1; j < rows.ny - 1; j++) {
      for (let i = 1; i < rows.nx - 1; i++) {
        const distance = 0.1 * Math.hypot(i - 80, j - 60);
        const off = field[j * rows.nx + i] - (-1 + 2 * distance);
        // Godunov's scheme overestimates near a point by about h |ln h|; never underestimates.
        expect(off).toBeGreaterThan(-1e-4);
        expect(off).toBeLessThan(2 * 0.25);
      }
    }
  });

  test('from a straight line it is exact', () => {
    const field = blank();
    for (let j = 0; j < rows.ny; j++) field[j * rows.nx + 40] = 0.5;
    spread(field, even(1), rows, 100);
    for (let i = 1; i < rows.nx - 1; i++) {
      expect(field[50 * rows.nx + i]).toBeCloseTo(0.5 + 0.1 * Math.abs(i - 40), 4);
    }
  });

  test('round a wall of steep ground, as light goes round a corner', () => {
    // A wall at i = 80 up to j = 100 that cannot be crossed; the way leads round its end.
    const field = blank();
    const slope = even(1);
    for (let j = 0; j < 100; j++) slope[j * rows.nx + 80] = 1e6;
    field[20 * rows.nx + 60] = 0;
    spread(field, slope, rows, 1000);
    const straight = 0.1 * (Math.hypot(20, 80) + Math.hypot(20, 80));
    const found = field[20 * rows.nx + 100];
    expect(found).toBeGreaterThan(straight - 0.05);
    expect(found).toBeLessThan(straight + 0.8);
  });

  test('does not pass the ceiling', () => {
    const field = blank();
    field[60 * rows.nx + 80] = 0;
    spread(field, even(1), rows, 2);
    expect(field[60 * rows.nx + 80 + 15]).toBeCloseTo(1.5, 4);
    expect(field[60 * rows.nx + 80 + 25]).toBe(Number.POSITIVE_INFINITY);
  });
});
