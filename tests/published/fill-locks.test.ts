import { describe, expect, it } from 'vitest';
import { emptyRoom } from '../../src/fill/empty-room.ts';
import { airLeft, assumptions, fillRoom } from '../../src/fill/forecast.ts';
import { lockLimits, mostBond } from '../../src/fill/lock.ts';
import { halfWidthAt } from '../../src/physics/index.ts';
import { type Box, cut, portIn, roomOf, turning } from '../fill/shapes.ts';
import { metal } from './fill/runs.ts';

/** Limits of the Bond number at 145 degrees, solved from Young and Laplace: round tube; a mouth's edge holds twice that. */
const tube = 2.226;
const usual = assumptions[0].lock;
const halfAt = (bond: number, r: number): number =>
  halfWidthAt(bond, metal.densityKgM3, (140 / 0.07) * r * 1e-3, metal.tensionNM);

const chamber: Box = [
  [60, -6, -4],
  [72, 6, 4],
];
const inner: Box = [
  [59, -1.5, -9],
  [60.5, 1.5, 9],
];
const left = (boxes: readonly Box[], gate: Box, vent?: Box, lock = usual) => {
  const cells = cut(roomOf(boxes), 0.25);
  const ports = [portIn(cells, 'gate', gate), ...(vent ? [portIn(cells, 'vent', vent)] : [])];
  return airLeft(fillRoom(emptyRoom(cells, turning), ports), lock).map(({ where, shutIn, clear }) => ({
    where,
    shutIn,
    clear,
  }));
};

describe('narrow places by the section metal meets', () => {
  const blade: Box = [
    [71, -3, -0.75],
    [82, 3, 0.75],
  ];
  const pin: Box = [
    [81, -0.5, -0.5],
    [87, 0.5, 0.5],
  ];

  it('a blade that ends in a pin: it passes by its width of 6 mm, and the pin of 5 mm3 alone is locked', () => {
    expect(halfAt(2 * tube, 82)).toBeLessThan(3);
    expect(halfAt(tube, 82)).toBeGreaterThan(0.5);
    const [only, ...more] = left([chamber, blade, pin], inner);
    expect(more).toEqual([]);
    expect(only.where).toBe('leg');
    expect(only.shutIn).toBeGreaterThan(4.5);
    expect(only.shutIn).toBeLessThan(6);
    expect(only.clear?.map((width) => Math.round(10 * width) / 10)).toEqual([1, 1]);
  });

  it('a blade behind a pin is locked with it: 5 and 99 mm3', () => {
    const neck: Box = [
      [71, -0.5, -0.5],
      [78, 0.5, 0.5],
    ];
    const behind: Box = [
      [77, -3, -0.75],
      [88, 3, 0.75],
    ];
    const found = left([chamber, neck, behind], inner);
    expect(found.reduce((sum, one) => sum + one.shutIn, 0)).toBeCloseTo(104, -1);
  });
});

describe('a cavity that is narrow all over', () => {
  /** A plate 2 mm thick and 14 mm wide, which metal and air pass along its width, with a leg outward. */
  const plate = (half: number): Box[] => [
    [
      [60, -7, -1],
      [76, 7, 1],
    ],
    [
      [75, -half, -half],
      [84, half, half],
    ],
  ];

  it('locks its legs as any other: 8 mm3 of a pin 1 mm square', () => {
    expect(halfAt(2 * tube, 76)).toBeGreaterThan(1);
    expect(halfAt(tube, 80)).toBeGreaterThan(0.5);
    const [only, ...more] = left(plate(0.5), inner);
    expect(more).toEqual([]);
    expect(only.where).toBe('leg');
    // Within the two cells along the way that a stretch is.
    expect(only.shutIn).toBeGreaterThan(8 - 0.6);
    expect(only.shutIn).toBeLessThan(8 + 0.5);
  });

  it('a bar gated at its inner end stays full of air where it is narrower than the limit, unless it is vented at the other', () => {
    const bar = (half: number): Box[] => [
      [
        [60, -half, -half],
        [76, half, half],
      ],
    ];
    const air = (half: number, vent?: Box): number =>
      left(bar(half), inner, vent).reduce((sum, one) => sum + one.shutIn, 0) / (16 * (2 * half) ** 2);
    const limit = halfAt(usual.bond, 60);
    expect(air(1.1 * limit)).toBe(0);
    // Less the cells of the gate itself.
    expect(air(0.9 * limit)).toBeGreaterThan(0.88);
    const outer: Box = [
      [75, -9, -9],
      [77, 9, 9],
    ];
    expect(air(0.9 * limit, outer)).toBe(0);
  });

  it('a bar gated at its inner end holds metal off by what a leg holds, not by the sharp edge of a mouth: half of that', () => {
    // Runs of square legs: locked on the edge at 4.01, not at 5.77; a bar of 4.01 gated at its inner end fills to 91 %.
    const strict = { bond: mostBond, angle: 145 };
    expect(lockLimits(strict, 1)).toEqual({ leg: mostBond / 2, edge: mostBond });
    const bar = (bond: number, lock = usual): number => {
      const half = halfAt(bond, 60);
      const found = left(
        [
          [
            [60, -half, -half],
            [76, half, half],
          ],
        ],
        inner,
        undefined,
        lock,
      );
      return found.reduce((sum, one) => sum + one.shutIn, 0) / (16 * (2 * half) ** 2);
    };
    const shares = [2.4, 4.01].map((bond) => [bar(bond), bar(bond, strict)]);
    console.log(`bars of Bond number 2.4 and 4.0, usual and strict: ${JSON.stringify(shares)}`);
    expect(shares[0][0]).toBe(0);
    expect(shares[0][1]).toBeGreaterThan(0.88);
    expect(shares[1]).toEqual([0, 0]);
  });
});
