import { describe, expect, test } from 'vitest';
import type { Point2 } from '../../src/geometry/index.ts';
import { arcWay, rounded } from '../../src/mold/channel-ways/bend.ts';
import { type EntryTarget, entryOn } from '../../src/mold/channel-ways/entry.ts';
import { piecesApart, spansIn } from '../../src/mold/channel-ways/ring.ts';
import { route } from '../../src/mold/channel-ways/route.ts';

const lengthOf = (points: readonly Point2[]): number =>
  points.reduce(
    (sum, [x, y], i) => (i === 0 ? 0 : sum + Math.hypot(x - points[i - 1][0], y - points[i - 1][1])),
    0,
  );
const apart = (path: readonly Point2[], outline: readonly Point2[]): number =>
  Math.min(
    ...path
      .slice(1)
      .flatMap((b, i) =>
        outline.map((c, k) => piecesApart(path[i], b, c, outline[(k + 1) % outline.length])),
      ),
  );
const square = (x: number, y: number, half: number): Point2[] => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
];

describe('bends', () => {
  // A right angle with a fillet of radius r saves 2 r - pi r / 2.
  test('a right angle is rounded by one width: its length by the quarter circle', () => {
    const line = rounded(
      [
        [0, 0],
        [20, 0],
        [20, 20],
      ],
      3,
    );
    if ('radius' in line) throw new Error('tight');
    expect(lengthOf(line)).toBeCloseTo(40 - 2 * 3 + (Math.PI / 2) * 3, 1);
    expect(lengthOf(line)).toBeLessThan(40 - 2 * 3 + (Math.PI / 2) * 3);
  });
  test('without room for 0.6 widths it is told, with the radius there is room for', () => {
    expect(
      rounded(
        [
          [0, 0],
          [1.2, 0],
          [1.2, 20],
        ],
        3,
      ),
    ).toEqual({
      at: [1.2, 0],
      radius: expect.closeTo(1.2, 9),
      least: expect.closeTo(1.8, 9),
    });
  });
  // Chord c of an arc that turns by t: length c (t / 2) / sin(t / 2).
  test('an arc is as long as its chord and its turn say, and bulges to the right where it turns to the left', () => {
    const line = arcWay([0, 0], [30, 0], Math.PI / 2);
    expect(lengthOf(line)).toBeCloseTo((30 * (Math.PI / 4)) / Math.sin(Math.PI / 4), 1);
    const lowest = Math.min(...line.map(([, y]) => y));
    expect(lowest).toBeCloseTo(-15 * Math.tan(Math.PI / 8), 1);
  });
});

describe('entries on an outline', () => {
  const turned = 0.4;
  /** A square of side 10 at radius 50, turned by its own turn only. */
  const target = (turnRad: number): EntryTarget => {
    const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
    const outline = square(0, 0, 5).map(([u, v]): Point2 => [50 + c * u - s * v, s * u + c * v]);
    const positions = Float32Array.from(outline.flatMap(([x, y]) => [x, y, 0]));
    const mesh = { positions, triangles: Uint32Array.from([0, 1, 2, 0, 2, 3]) };
    return { id: 'one', x: 50, y: 0, turnRad, scale: 1, outline, mesh };
  };
  test.each([0, turned])('an angle and a place go with the master: turned by %s', (turn) => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const byAngle = entryOn(target(turn), { angleRad: Math.PI / 2 }, 2);
    const byPlace = entryOn(target(turn), { x: 0, y: 5 }, 2);
    for (const entry of [byAngle, byPlace]) {
      expect(entry?.at[0]).toBeCloseTo(50 - s * 5, 6);
      expect(entry?.at[1]).toBeCloseTo(c * 5, 6);
      expect(entry?.outward[0]).toBeCloseTo(-s, 6);
      expect(entry?.outward[1]).toBeCloseTo(c, 6);
      expect(entry?.off).toBeCloseTo(0, 9);
    }
  });
  test('a place off the outline goes to its nearest point and says how far', () => {
    expect(entryOn(target(0), { x: 8, y: 1 }, 2)).toMatchObject({ at: [55, 1], off: expect.closeTo(3, 9) });
  });
  test('ends and sides are seen from the axis', () => {
    expect(entryOn(target(0), { end: 'inner' }, 2)?.at[0]).toBeCloseTo(45, 6);
    expect(entryOn(target(0), { end: 'outer' }, 2)?.at[0]).toBeCloseTo(55, 6);
    expect(entryOn(target(0), { end: 'left' }, 2)?.at).toEqual([50, 5]);
    expect(entryOn(target(0), { end: 'right' }, 2)?.at).toEqual([50, -5]);
  });
  test('how much of a path lies in an outline', () => {
    expect(
      spansIn(
        [
          [0, 0],
          [50, 0],
          [50, 20],
        ],
        square(50, 0, 5),
      ),
    ).toEqual([[45, 55]]);
    expect(
      spansIn(
        [
          [40, 1],
          [60, 1],
        ],
        square(50, 0, 5),
      ),
    ).toEqual([[5, 15]]);
  });
});

describe('a way that is looked for', () => {
  const gap = 4;
  const course = (outlines: readonly (readonly Point2[])[]) => ({
    from: [60, 0] as const,
    left: ([x, y]: Point2) => Math.max(0, Math.hypot(x, y) - 15),
    between: [0, 80] as const,
    obstacles: outlines.map((outline) => ({ outline, gap })),
  });
  test('is straight where nothing stands in it', () => {
    const way = route(course([]));
    expect(way && lengthOf(way)).toBeLessThan(45.5);
  });
  // The taut thread round a square with the gap kept at its corner cannot be shorter than the straight legs by that corner.
  test('goes round a square, keeps the gap, and is little longer than a taut thread', () => {
    const outline = square(40, 1, 6);
    const way = route(course([outline]));
    if (!way) throw new Error('no way');
    expect(apart(way, outline)).toBeGreaterThanOrEqual(gap - 0.05);
    const corner = [34, -5 - gap] as const;
    const thread = Math.hypot(60 - 46, 5 + gap) + 12 + (Math.hypot(corner[0], corner[1]) - 15);
    expect(lengthOf(way)).toBeLessThan(1.04 * thread);
    expect(lengthOf(way)).toBeGreaterThan(45);
    expect(route(course([outline]))).toEqual(way);
  });
  test('is none where all round is closed', () => {
    const walls = Array.from({ length: 24 }, (_, k) => {
      const angle = (k * Math.PI) / 12;
      return square(30 * Math.cos(angle), 30 * Math.sin(angle), 2);
    });
    expect(route(course(walls))).toBeUndefined();
  });
});
