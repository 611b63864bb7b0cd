import { describe, expect, it } from 'vitest';
import { judge } from '../../src/arrange/judge.ts';
import { orbitsOf, type Problem } from '../../src/arrange/problem.ts';
import { randomFrom } from '../../src/arrange/random.ts';
import { type Found, isLegal, search } from '../../src/arrange/search.ts';
import { Strain } from '../../src/arrange/strain.ts';
import { rounded } from '../../src/arrange/tidy.ts';
import type { Point2 } from '../../src/geometry/index.ts';
import { kindOf, ngon } from '../arrange/pieces.ts';

/**
 * Least radius of a circle that holds n unit circles, best known (R. L. Graham, B. D. Lubachevsky, K. J. Nurmela, P. R. J.
 * Ostergard, Dense packings of congruent circles in a circle, Discrete Mathematics 181, 1998; E. Specht, Packomania).
 * Written from memory; n = 2 to 9, 11, 13, 18 and 19 are held to their closed forms below.
 */
const published: Readonly<Record<number, number>> = {
  2: 2,
  3: 2.1547005,
  4: 2.4142136,
  5: 2.7013016,
  6: 3,
  7: 3,
  8: 3.3047649,
  9: 3.6131259,
  10: 3.8130256,
  11: 3.9238044,
  12: 4.0296019,
  13: 4.236068,
  14: 4.3284285,
  15: 4.5213569,
  16: 4.6154256,
  17: 4.7920338,
  18: 4.8637033,
  19: 4.8637033,
  20: 5.1223207,
};

/** n evenly on a ring: 1 + 1 / sin(pi / n). */
const onRing = (n: number): number => 1 + 1 / Math.sin(Math.PI / n);

const closed: Readonly<Record<number, number>> = {
  2: 2,
  3: onRing(3),
  4: onRing(4),
  5: onRing(5),
  6: 3,
  7: 3,
  8: onRing(7),
  9: onRing(8),
  11: onRing(9),
  13: 2 + Math.sqrt(5),
  18: 1 + Math.SQRT2 + Math.sqrt(6),
  19: 1 + Math.SQRT2 + Math.sqrt(6),
};

const effort = { starts: 40, movesEach: 4, moves: 80 };
const bare = { rim: 0, wall: 0, ample: 0, gateGap: 0, leanRad: 0 };

/** A circle of 10 mm; balance is not asked of it. */
const round = kindOf('one', ngon(10, 96), { count: 1, weight: 0, margin: 21 });

/** The same pieces on a bare disc of a radius. */
function packed(count: number, radius: number): Found {
  const kind = { ...round, count };
  const problem: Problem = { ground: { ...bare, radius }, kinds: [kind], fixed: [] };
  return search(new Strain(problem, orbitsOf(kind, count, 1), 0), randomFrom(1), effort);
}

/** By the middles alone: how large a circle they take, in radii of one, when they are as large as they can be. */
function ratioOf({ x }: Found): number {
  const at = Array.from({ length: x.length / 4 }, (_, i) => [x[4 * i], x[4 * i + 1]]);
  const far = Math.max(...at.map(([u, v]) => Math.hypot(u, v)));
  const apart = at.flatMap(([u, v], i) => at.slice(i + 1).map(([p, q]) => Math.hypot(u - p, v - q)));
  return 1 + (2 * far) / Math.min(...apart);
}

describe('equal circles in a circle', () => {
  it('are held to radii whose closed forms are known', () => {
    for (const [n, radius] of Object.entries(closed)) expect(published[Number(n)]).toBeCloseTo(radius, 6);
  });

  it('come within 0.1 % of the best known radii in the mean, 0.3 % at worst', () => {
    const ratios = Object.entries(published).map(
      ([n, radius]) => ratioOf(packed(Number(n), radius * 10 * 1.0006)) / radius,
    );
    expect(ratios.reduce((sum, one) => sum + one, 0) / ratios.length).toBeLessThanOrEqual(1.001);
    expect(Math.max(...ratios)).toBeLessThanOrEqual(1.003);
    // No layout is better than what is known but by what it overlaps.
    expect(Math.min(...ratios)).toBeGreaterThan(0.9999);
  });

  it('find no place in a circle that is too small', () => {
    expect(isLegal(packed(7, 29.8))).toBe(false);
  });
});

describe('rings', () => {
  // n circles of radius r round the axis touch at the radius r / sin(pi / n): it is where a well lets them go, and no nearer.
  it.each([5, 8, 12])('of %d stand at r / sin(pi / n)', (n) => {
    const radius = 10 / Math.sin(Math.PI / n);
    const reach = (share: number) => {
      const kind = { ...round, count: n };
      const ground = {
        ...bare,
        radius: radius * share + 10.02,
        well: { radius: radius * share - 10.02, limit: 0 },
      };
      const orbits = orbitsOf(kind, n, n);
      return search(new Strain({ ground, kinds: [kind], fixed: [] }, orbits, 0), randomFrom(2), effort);
    };
    expect(isLegal(reach(1.003))).toBe(true);
    expect(isLegal(reach(0.99))).toBe(false);
  });
});

describe('squares in a circle', () => {
  // Least radius for n unit squares: 1 / sqrt(2), sqrt(5) / 2, 5 sqrt(17) / 16, sqrt(2), sqrt(10) / 2 (E. Friedman, Packing unit squares in
  // circles, erich-friedman.github.io; from memory; 1, 2, 4 and 5 follow from their pictures by Pythagoras).
  const side = 20;
  const square: Point2[] = [
    [-10, -10],
    [10, -10],
    [10, 10],
    [-10, 10],
  ];
  it.each([
    [1, Math.SQRT1_2],
    [2, Math.sqrt(5) / 2],
    [3, (5 * Math.sqrt(17)) / 16],
    [4, Math.SQRT2],
    [5, Math.sqrt(10) / 2],
  ])('%d find room within six thousandths of the published radius', (count, radius) => {
    const kind = kindOf('one', square, { count, weight: 0 });
    const problem: Problem = {
      ground: { ...bare, radius: radius * side * 1.006 },
      kinds: [kind],
      fixed: [],
    };
    const strain = new Strain(problem, orbitsOf(kind, count, 1), 0);
    const found = search(strain, randomFrom(1), effort);
    expect(isLegal(found)).toBe(true);
    // By the exact outlines they overlap, and reach over the circle, by no more than rounding and the search's own tolerance.
    const lacks = judge(problem, rounded(strain, found)).broken.map(
      ({ measured, limit }) => limit - measured,
    );
    expect(Math.max(0, ...lacks)).toBeLessThan(0.25);
  });
});
