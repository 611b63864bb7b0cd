import { describe, expect, test } from 'vitest';
import { type Body, loadKernel, type Scope } from '../../src/kernel/index.ts';
import { joinLooseComponents } from '../../src/mold/index.ts';

const kernel = await loadKernel();

const box = (
  scope: Scope,
  from: readonly [number, number, number],
  to: readonly [number, number, number],
): Body =>
  scope.extrude(
    [
      [
        [from[0], from[1]],
        [to[0], from[1]],
        [to[0], to[1]],
        [from[0], to[1]],
      ],
    ],
    from[2],
    to[2],
    'box',
  );

describe('small components', () => {
  test('a block of one half within the other goes over to it', () => {
    kernel.scope((scope) => {
      const block = box(scope, [2, 2, 2], [3, 4, 3]);
      const lower = scope.unite([box(scope, [0, 0, -5], [10, 10, 0]), block], 'lower');
      const upper = scope.subtract(box(scope, [0, 0, 0], [10, 10, 5]), [block], 'upper');
      const { joined, dropped, stuck, ...halves } = joinLooseComponents(scope, lower, upper);
      expect({ joined, dropped, stuck }).toEqual({ joined: 1, dropped: 0, stuck: [] });
      expect(halves.lower.volume()).toBeCloseTo(500, 4);
      expect(halves.upper.volume()).toBeCloseTo(500, 4);
      expect(scope.pieces(halves.upper, 'upper')).toHaveLength(1);
    });
  });

  test('a crumb is left out, a piece that hangs on nothing is told', () => {
    kernel.scope((scope) => {
      const crumb = box(scope, [8, 8, 1], [8.1, 8.1, 1.1]);
      const loose = box(scope, [2, 2, 2], [3, 4, 3]);
      const room = box(scope, [1, 1, 1], [9, 9, 4]);
      const lower = scope.unite([box(scope, [0, 0, -5], [10, 10, 0]), crumb, loose], 'lower');
      const upper = scope.subtract(box(scope, [0, 0, 0], [10, 10, 5]), [room], 'upper');
      const found = joinLooseComponents(scope, lower, upper);
      expect(found.joined).toBe(0);
      expect(found.dropped).toBeCloseTo(0.001, 5);
      expect(found.stuck).toHaveLength(1);
      expect(found.stuck[0].volume).toBeCloseTo(2, 4);
      expect(found.stuck[0].place).toEqual([2.5, 3, 2.5]);
      expect(found.lower.volume()).toBeCloseTo(500, 4);
    });
  });
});
