import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arc,
  areaOf,
  boundsOfOutline,
  circle,
  hole,
  type Outline,
  type Point2,
  placed,
  pointsOf,
  polygon,
  polygonsOf,
  reversed,
  type Track,
} from '../../src/geometry/index.ts';

/** A slot 20 long over its half-round ends of radius 5: two straight sides, two half circles (bulge 1). */
const slot: Track = {
  kind: 'track',
  closed: true,
  corners: [{ at: [-10, -5] }, { at: [10, -5], bulge: 1 }, { at: [10, 5] }, { at: [-10, 5], bulge: 1 }],
};
const slotArea = 20 * 10 + Math.PI * 25;

const shoelace = (ring: readonly Point2[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);
const total = (rings: readonly (readonly Point2[])[]): number =>
  rings.reduce((sum, ring) => sum + shoelace(ring), 0);

describe('an outline, against closed forms', () => {
  test('area: ring, slot, hexagon 2 sqrt(3) r2', () => {
    expect(areaOf([circle([3, 4], 10), hole([3, 4], 6)])).toBeCloseTo(Math.PI * 64, 10);
    expect(areaOf([slot])).toBeCloseTo(slotArea, 10);
    expect(areaOf([reversed(slot)])).toBeCloseTo(-slotArea, 10);
    const hexagon = polygon(
      Array.from(
        { length: 6 },
        (_, i): Point2 => [
          (10 / Math.sqrt(3)) * Math.cos((i * Math.PI) / 3),
          (10 / Math.sqrt(3)) * Math.sin((i * Math.PI) / 3),
        ],
      ),
    );
    expect(areaOf([hexagon])).toBeCloseTo(86.6025404, 6);
  });

  test('bounds reach past the ends of arcs, and with them turned', () => {
    expect(boundsOfOutline([slot])).toEqual({ min: [-15, -5], max: [15, 5] });
    const { min, max } = boundsOfOutline([placed(slot, Math.PI / 4, [100, 0])]);
    // The ends' middles are at 10 cos 45; from there 5 farther in every direction.
    const far = 10 * Math.SQRT1_2 + 5;
    expect([min[0], min[1], max[0], max[1]].map((v) => Number(v.toFixed(9)))).toEqual(
      [100 - far, -far, 100 + far, far].map((v) => Number(v.toFixed(9))),
    );
    expect(boundsOfOutline([arc([0, 0], 10, -0.5, 0.5)]).max[0]).toBeCloseTo(10, 12);
  });

  test.each(['pin', 'hole'] as const)(
    'as a %s the polygons stay on their side, within the chord error',
    (as) => {
      const washer: Outline = [slot, hole([0, 0], 3)];
      const exact = areaOf(washer);
      let before = Number.POSITIVE_INFINITY;
      for (const error of [0.1, 0.01, 0.001]) {
        const off = (total(polygonsOf(washer, as, error)) - exact) * (as === 'pin' ? -1 : 1);
        const length = 2 * Math.PI * 8;
        expect(off).toBeGreaterThan(0);
        expect(off).toBeLessThan(length * error);
        expect(off).toBeLessThan(before);
        before = off;
      }
      for (const [x, y] of polygonsOf([circle([0, 0], 7)], as, 0.01)[0]) {
        if (as === 'pin') expect(Math.hypot(x, y)).toBeLessThanOrEqual(7 + 1e-12);
        else expect(Math.hypot(x, y)).toBeLessThanOrEqual(7.01 + 1e-9);
      }
    },
  );

  test('a concave arc of a pin keeps off the hollow', () => {
    // A square 20 with a half round hollow of radius 5 in its upper side.
    const hollow: Track = {
      kind: 'track',
      closed: true,
      corners: [
        { at: [-10, -10] },
        { at: [10, -10] },
        { at: [10, 10] },
        { at: [5, 10], bulge: -1 },
        { at: [-5, 10] },
        { at: [-10, 10] },
      ],
    };
    expect(areaOf([hollow])).toBeCloseTo(400 - (Math.PI * 25) / 2, 10);
    const near = polygonsOf([hollow], 'pin', 0.05)[0].filter(([x, y]) => Math.abs(x) < 5 && y > 0 && y < 10);
    expect(near.length).toBeGreaterThan(3);
    for (const [x, y] of near) expect(Math.hypot(x, y - 10)).toBeGreaterThanOrEqual(5);
  });

  test('drawn points lie on the arc; turning a path about twice gives it back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 6.1, noNaN: true }),
        (from, radius, sweep) => {
          const path = arc([1, 2], radius, from, from + sweep);
          for (const [x, y] of pointsOf(path)) expect(Math.hypot(x - 1, y - 2)).toBeCloseTo(radius, 6);
          expect(reversed(reversed(path))).toEqual(path);
        },
      ),
    );
  });

  test('nonsense is a programmer error', () => {
    expect(() => circle([0, 0], 0)).toThrow(RangeError);
    expect(() => polygonsOf([arc([0, 0], 1, 0, 1)], 'pin')).toThrow(RangeError);
    expect(() => boundsOfOutline([])).toThrow(RangeError);
  });
});
