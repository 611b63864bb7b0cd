import { describe, expect, it } from 'vitest';
import { compose, rotation, scaling, translation } from '../../../src/geometry/index.ts';
import { type Distance, distanceTree, isInside, meshDistance } from '../../../src/mesh/measure/distance.ts';
import { ball, box, revolved, single, tetrahedron, together } from '../../revolved-solids.ts';

const far = 1e6;

const found = (
  answer: Distance,
): { distance: number; pointA: readonly number[]; pointB: readonly number[] } => {
  if ('beyond' in answer) throw new Error(`beyond ${answer.beyond}`);
  return answer;
};

const unit = single(box([0, 0, 0], [1, 1, 1]));
const sphere = single(ball(5, [0, 0, 0]));

describe('mesh distance', () => {
  // Two boxes: the corner to corner diagonal; edge to edge; face to face.
  it.each([
    [[3, 0, 0], 2],
    [[3, 3, 0], Math.hypot(2, 2)],
    [[3, 3, -4], Math.hypot(2, 2, 3)],
    [[0.5, 0.5, 1.25], 0.25],
  ] as const)('of unit boxes shifted by %j', ([x, y, z], wanted) => {
    const answer = found(meshDistance(distanceTree(unit), distanceTree(unit, translation(x, y, z)), far));
    expect(answer.distance).toBeCloseTo(wanted, 9);
    const [a, b] = [answer.pointA, answer.pointB];
    expect(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])).toBeCloseTo(wanted, 9);
    for (const value of a) expect(value === 0 || value === 1 || (value > 0 && value < 1)).toBe(true);
  });

  // Balls of radius r and s, d apart: d - r - s. The poles are vertices, so along z it is exact.
  it('of balls, through poles exactly, across to the chord', () => {
    const along = meshDistance(distanceTree(sphere), distanceTree(sphere, translation(0, 0, 13)), far);
    expect(found(along).distance).toBeCloseTo(3, 9);
    expect(found(along).pointA[2]).toBeCloseTo(5, 6);
    expect(found(along).pointB[2]).toBeCloseTo(8, 6);
    const sloping = meshDistance(distanceTree(sphere), distanceTree(sphere, translation(7, 8, 9)), far);
    const round = Math.hypot(7, 8, 9) - 10;
    expect(found(sloping).distance).toBeGreaterThanOrEqual(round - 1e-6);
    expect(found(sloping).distance - round).toBeLessThan(2 * 5 * (1 - Math.cos(Math.PI / 48)));
  });

  // Four faces fit in one leaf of a tree: the tip of a pyramid on its side, 2 mm from the middle of a face.
  it('of a body of very few faces', () => {
    const pyramid = single(
      tetrahedron([
        [0, 0, 0],
        [4, -1, -1],
        [4, 1, -1],
        [4, 0, 1],
      ]),
    );
    for (let k = 0; k < 8; k++) {
      const turn = rotation('x', 0.3 + k);
      const other = compose(turn, translation(-3, -0.5, -0.5));
      meshDistance(distanceTree(sphere), distanceTree(unit, translation(20 * k, 9, 0)), far);
      const answer = meshDistance(distanceTree(pyramid, turn), distanceTree(unit, other), far);
      expect(found(answer).distance).toBeCloseTo(2, 6);
    }
  });

  it('does not change when both are moved together, or change places', () => {
    const a = compose(translation(1, 2, 3), rotation('x', 0.7));
    const b = compose(translation(9, -3, 12), rotation('z', 1.1));
    const together = compose(translation(-40, 7, 5), rotation('y', 2.2), rotation('z', 0.4));
    const plain = found(meshDistance(distanceTree(unit, a), distanceTree(sphere, b), far));
    const moved = found(
      meshDistance(distanceTree(unit, compose(together, a)), distanceTree(sphere, compose(together, b)), far),
    );
    const swapped = found(meshDistance(distanceTree(sphere, b), distanceTree(unit, a), far));
    expect(moved.distance).toBeCloseTo(plain.distance, 9);
    expect(swapped.distance).toBeCloseTo(plain.distance, 9);
  });

  it('scales with a scaled pair', () => {
    const grown = compose(scaling(2.5), translation(3, 3, 0));
    const answer = meshDistance(distanceTree(unit, scaling(2.5)), distanceTree(unit, grown), far);
    expect(found(answer).distance).toBeCloseTo(2.5 * Math.hypot(2, 2), 9);
    expect(() => distanceTree(unit, scaling(1, 2, 1))).toThrow(RangeError);
  });

  it('is 0 where they overlap, and where one is nested without touching, either way round', () => {
    const small = distanceTree(unit, translation(-0.5, -0.5, -0.5));
    const big = distanceTree(sphere);
    expect(found(meshDistance(small, big, 1)).distance).toBe(0);
    expect(found(meshDistance(big, small, 1)).distance).toBe(0);
    expect(found(meshDistance(big, distanceTree(sphere, translation(6, 1, 0)), 1)).distance).toBe(0);
  });

  it('finds one nested piece among several', () => {
    const pair = single(together(box([20, 0, 0], [21, 1, 1]), box([0, 0, 0], [1, 1, 1])));
    expect(found(meshDistance(distanceTree(sphere), distanceTree(pair), 100)).distance).toBe(0);
  });

  it('inside the hole of a ring is outside it: R - r - s', () => {
    const circle = Array.from({ length: 64 }, (_, i): [number, number] => [
      20 + 5 * Math.cos((Math.PI * i) / 32),
      5 * Math.sin((Math.PI * i) / 32),
    ]);
    const ring = distanceTree(single(revolved(circle, 180)));
    const answer = found(meshDistance(ring, distanceTree(sphere), 100));
    // The hole is a polygon of 180 sides: it comes in as far as its apothem; the ball comes out to its corners.
    expect(answer.distance).toBeGreaterThan(15 * Math.cos(Math.PI / 180) - 5 - 1e-5);
    expect(answer.distance).toBeLessThan(10.001);
    expect(isInside(ring, [20.1, 0.2, 0.3])).toBe(true);
    expect(isInside(ring, [0.1, 0.2, 0.3])).toBe(false);
  });

  it('says beyond the limit, keeps a distance of exactly the limit, and one close to it', () => {
    const shifted = distanceTree(unit, translation(3, 0, 0));
    expect(meshDistance(distanceTree(unit), shifted, 1.999)).toEqual({ beyond: 1.999 });
    expect(found(meshDistance(distanceTree(unit), shifted, 2)).distance).toBeCloseTo(2, 9);
    // Boxes of the two overlap, the solids are apart: the diagonal neighbour of a turned box.
    const turned = distanceTree(unit, compose(translation(1.5, 1.5, 0), rotation('z', Math.PI / 4)));
    expect(meshDistance(distanceTree(unit), turned, 0.05)).toEqual({ beyond: 0.05 });
  });

  it('refuses an empty mesh', () => {
    expect(() => distanceTree({ positions: new Float32Array(), triangles: new Uint32Array() })).toThrow(
      RangeError,
    );
  });
});
