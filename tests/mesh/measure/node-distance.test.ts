import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nodeDistances, type Window } from '../../../src/mesh/index.ts';

const gridOf = (nx: number, ny: number) => ({ nx, ny, cell: 0.5, x0: -3, y0: 7 });
const whole = ({ nx, ny }: { nx: number; ny: number }): Window => ({ i0: 0, j0: 0, nx, ny });
const blank = ({ nx, ny }: { nx: number; ny: number }) => new Float32Array(nx * ny).fill(Number.NaN);

describe('distances to marked nodes', () => {
  test('of one node: as the crow flies', () => {
    const grid = gridOf(40, 30);
    const marks = blank(grid);
    marks[12 * 40 + 25] = 0;
    const found = nodeDistances(marks, grid, whole(grid));
    for (const [k, distance] of found.entries())
      expect(distance).toBeCloseTo(0.5 * Math.hypot((k % 40) - 25, Math.floor(k / 40) - 12), 5);
  });

  test('of none: infinite; of all: 0', () => {
    const grid = gridOf(9, 5);
    expect(new Set(nodeDistances(blank(grid), grid, whole(grid)))).toEqual(new Set([Infinity]));
    expect(new Set(nodeDistances(blank(grid).fill(-1), grid, whole(grid)))).toEqual(new Set([0]));
  });

  test('of any marks, over any window: the least of the distances to each', () => {
    const share = fc.integer({ min: 0, max: 100 });
    fc.assert(
      fc.property(
        fc.record({
          nx: fc.integer({ min: 1, max: 23 }),
          ny: fc.integer({ min: 1, max: 19 }),
          seeds: fc.array(fc.nat(), { maxLength: 12 }),
          cut: fc.tuple(share, share, share, share),
        }),
        ({ nx, ny, seeds, cut }) => {
          const grid = gridOf(nx, ny);
          const marks = blank(grid);
          for (const seed of seeds) marks[seed % marks.length] = 1;
          const along = (count: number, a: number, b: number): [number, number] => {
            const first = Math.floor((a / 101) * count);
            return [first, 1 + Math.floor((b / 101) * (count - first))];
          };
          const [[i0, width], [j0, depth]] = [along(nx, cut[0], cut[1]), along(ny, cut[2], cut[3])];
          const found = nodeDistances(marks, grid, { i0, j0, nx: width, ny: depth });
          expect(found.length).toBe(width * depth);
          for (const [k, distance] of found.entries()) {
            const [i, j] = [i0 + (k % width), j0 + Math.floor(k / width)];
            const each = seeds.map((seed) => {
              const node = seed % marks.length;
              return 0.5 * Math.hypot((node % nx) - i, Math.floor(node / nx) - j);
            });
            const least = Math.min(...each);
            if (least < Infinity) expect(distance).toBeCloseTo(least, 5);
            else expect(distance).toBe(Infinity);
          }
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
