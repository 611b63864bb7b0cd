import { beforeAll, describe, expect, it } from 'vitest';
import { compose, rotation, translation } from '../../src/geometry/index.ts';
import { type Kernel, loadKernel } from '../../src/kernel/index.ts';
import { type Boss, bossOutline, pegsOf, seatsAt, slackIn, socketOutline } from '../../src/mold/index.ts';
import { clashDepth, Pattern, type Standing } from '../../src/physics/index.ts';

const degrees = Math.PI / 180;

/** Half a ball: a chord of 0.3 degrees is off the arc by 3.4e-6 of its radius. */
const ball = (x: number, radius: number): Standing => ({
  x,
  y: 0,
  outline: Array.from({ length: 301 }, (_, i) => {
    const angle = i * 0.3 * degrees;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  }),
});
const cylinder = (x: number, radius: number, height: number): Standing => ({
  x,
  y: 0,
  outline: [
    [radius, 0],
    [radius, height],
    [0, height],
  ],
});
const cone = (x: number, radius: number, height: number): Standing => ({
  x,
  y: 0,
  outline: [
    [radius, 0],
    [0, height],
  ],
});

describe('how deep a head reaches into the other half', () => {
  it.each([0, 1.5, 5.99])('half a ball of 6 mm under a plane %d mm up: the rest of its radius', (lift) => {
    expect(clashDepth(ball(0, 6), [], lift)).toBeCloseTo(6 - lift, 9);
  });

  it.each([6, 7])('is 0 once the plane is %d mm up', (lift) => {
    expect(clashDepth(ball(0, 6), [], lift)).toBe(0);
  });

  it.each([0, 2])('a cylinder 5 mm high under a plane %d mm up', (lift) => {
    expect(clashDepth(cylinder(0, 4, 5), [cylinder(20, 4, 5)], lift)).toBeCloseTo(5 - lift, 9);
  });

  // Over the edge of its socket the ball is as high as half the chord at that depth: h^2 = d (2 R - d) (Euclid III.35).
  it.each([0.2, 1, 3, 6])('a ball %d mm off a socket of its own size', (off) => {
    expect(clashDepth(ball(off, 6), [ball(0, 6)], 0)).toBeCloseTo(Math.sqrt(off * (12 - off)), 3);
  });

  // Two equal cones side by side: everywhere on the far side one is higher by the slope times the way between them.
  it.each([0.5, 2, 4.9])('a cone %d mm off a socket of its own size: the slope times that', (off) => {
    expect(clashDepth(cone(off, 5, 8), [cone(0, 5, 8)], 0)).toBeCloseTo((8 / 5) * off, 6);
  });

  it('a pin in a hole wider by 0.3 mm all round is clear to 0.3 mm and stands as high as it is beyond', () => {
    expect(clashDepth(cylinder(0.29, 4, 5), [cylinder(0, 4.3, 6)], 0)).toBe(0);
    expect(clashDepth(cylinder(0.31, 4, 5), [cylinder(0, 4.3, 6)], 0)).toBe(5);
    expect(clashDepth(cylinder(0.2, 4, 5), [cylinder(0, 4.3, 4.2)], 0)).toBeCloseTo(0.8, 9);
  });

  it('a head over two hollows is as deep as in the shallower one where it reaches that far', () => {
    const wide = [cylinder(-3, 10, 2), cylinder(3, 10, 4)];
    // Only the left third of the head is under the shallow one alone.
    expect(clashDepth(cylinder(-5, 4, 5), wide, 0)).toBeCloseTo(3, 9);
    expect(clashDepth(cylinder(0, 4, 5), wide, 0)).toBeCloseTo(1, 9);
  });

  it('fits exactly in a socket of its own shape', () => {
    expect(clashDepth(ball(17.3, 6), [ball(17.3, 6)], 0)).toBe(0);
  });
});

const hexagon = (x: number, half: number, height: number, cornerRad: number): Standing => ({
  ...cylinder(x, half, height),
  cornerRad,
});

describe('a hexagon, 10 mm across flats', () => {
  it('fits a hollow of its own shape, turned by any number of sixths', () => {
    for (const turn of [0, 60, 300]) {
      expect(clashDepth(hexagon(3, 5, 4, turn * degrees), [hexagon(3, 5, 4, 0)], 0)).toBe(0);
    }
    expect(clashDepth(hexagon(3, 5, 4, 30 * degrees), [hexagon(3, 5, 4, 0)], 0)).toBeCloseTo(4, 9);
  });

  // A corner, s / sqrt 3 out, turned by a, meets a flat c farther out where (s / sqrt 3) cos(30 - a) = s / 2 + c.
  it.each([0.1, 0.3])('turns in a hollow wider by %d mm until its corners meet the flats', (gap) => {
    const most = 30 - Math.acos((5 + gap) / (10 / Math.sqrt(3))) / degrees;
    const hollow = [hexagon(0, 5 + gap, 6, 0)];
    expect(clashDepth(hexagon(0, 5, 4, (most - 0.01) * degrees), hollow, 0)).toBe(0);
    expect(clashDepth(hexagon(0, 5, 4, (most + 0.01) * degrees), hollow, 0)).toBeCloseTo(4, 9);
  });

  it('enters a round hollow by its corners, and takes a round head by its flats', () => {
    const corner = 10 / Math.sqrt(3);
    expect(clashDepth(hexagon(0, 5, 4, 0.3), [cylinder(0, corner + 1e-4, 5)], 0)).toBe(0);
    expect(clashDepth(hexagon(0, 5, 4, 0.3), [cylinder(0, corner - 1e-4, 5)], 0)).toBeCloseTo(4, 9);
    expect(clashDepth(cylinder(0, 4.999, 4), [hexagon(0, 5, 4, 0.3)], 0)).toBe(0);
    expect(clashDepth(cylinder(0, 5.001, 4), [hexagon(0, 5, 4, 0.3)], 0)).toBeCloseTo(4, 9);
  });

  // Flats that lean by a tenth: moved by d square to a flat, the far flat is higher by ten times that.
  it('with leaning flats, moved square to a flat', () => {
    const leaning = (x: number): Standing => ({
      x,
      y: 0,
      cornerRad: Math.PI / 6,
      outline: [
        [5, 0],
        [4.5, 5],
        [0, 5],
      ],
    });
    expect(clashDepth(leaning(0.2), [leaning(0)], 0)).toBeCloseTo(2, 6);
  });
});

// A cone 5 mm wide and 8 high stands out of a hollow the most where the way out is shortest: 8 (1 - way / 5), by hand.
describe('a cone in a hollow with upright walls', () => {
  const depthAt = (x: number, y: number, cornerRad: number): number =>
    clashDepth({ ...cone(x, 5, 8), y }, [hexagon(0, 3, 10, cornerRad)], 0);
  it.each([
    ['in the middle: 3 mm to each flat', 0, 0, 0.2, 3.2],
    ['1 mm toward the flat at 0 degrees: 2', 1, 0, Math.PI / 6, 4.8],
    ['1 mm toward the flat at 90 degrees: 2', 0, 1, 0, 4.8],
    ['1 mm toward (3, 4): 3 - 0.6 cos 30 - 0.8 sin 30 to the flat at 30 degrees', 0.6, 0.8, 0, 4.67138],
  ])('with six sides, %s', (_, x, y, cornerRad, depth) => {
    expect(depthAt(x, y, cornerRad)).toBeCloseTo(depth, 5);
  });
  // Two circles of 3 mm about x = +-2 cross at y = sqrt(9 - 4), nearer than the far edge of either.
  it('of two hollows that meet, at their crossing', () => {
    const hollows = [cylinder(-2, 3, 10), cylinder(2, 3, 10)];
    expect(clashDepth(cone(0, 5, 8), hollows, 0)).toBeCloseTo(8 * (1 - Math.sqrt(5) / 5), 5);
  });
});

const boss = (id: string, angle: number, kind: 'dome' | 'hexagon' = 'dome'): Boss => ({
  id,
  kind,
  x: 40 * Math.cos(angle * degrees),
  y: 40 * Math.sin(angle * degrees),
  turnRad: 0,
  size: '12',
  acrossFlats: 0,
  rootDepth: 6,
  headRadius: 6,
  headHeight: 5,
  clearance: 0.2,
  ...(kind === 'hexagon' && { headDraftRad: 0.1 }),
});

describe('bosses while the upper half stands turned', () => {
  const bosses = [boss('a', 0), boss('b', 100), boss('c', 215)];
  const at = (process: 'rubber' | 'rigid', turn: number, lift: number) => {
    const mold = { bosses, process, flex: 0.15 };
    return seatsAt(mold, new Pattern(pegsOf(mold), slackIn(mold)), turn * degrees, lift);
  };
  let kernel: Kernel;
  beforeAll(async () => {
    kernel = await loadKernel();
  });

  it.each(['rubber', 'rigid'] as const)('%s: in their sockets when closed, clear when lifted', (process) => {
    expect(at(process, 0, 0).map(({ state, clash }) => [state, clash])).toEqual(
      Array(3).fill(['in its socket', 0]),
    );
    expect(at(process, 0, 5).map(({ state }) => state)).toEqual(Array(3).fill('clear'));
    expect(at(process, 30, 5).map(({ state }) => state)).toEqual(Array(3).fill('clear'));
    expect(at(process, 30, 2).map(({ state, clash }) => [state, clash])).toEqual(Array(3).fill(['clash', 3]));
  });

  it('tenths of a degree tell: 0.1 degree at 40 mm is 0.07 mm, within the flex; 0.3 is not', () => {
    expect(at('rubber', 0.1, 0)[0].off).toBeCloseTo(80 * Math.sin(0.05 * degrees), 6);
    expect(at('rubber', 0.1, 0)[0].state).toBe('in its socket');
    expect(at('rubber', 0.3, 0)[0].state).toBe('clash');
  });

  // The boolean of the two bodies knows nothing of this formula: raised by the depth they are clear, by a little less not.
  it.each([
    ['dome', 'rubber', 0.5],
    ['dome', 'rubber', 3],
    ['dome', 'rubber', 8],
    ['dome', 'rigid', 3],
    ['hexagon', 'rubber', 3],
    ['hexagon', 'rubber', 8],
    ['hexagon', 'rigid', 4],
  ] as const)('%s, %s, turned by %d degrees: as deep as the kernel finds', (kind, process, turn) => {
    const lift = 0.5;
    const bosses = [0, 100, 215].map((angle) => boss(`b${angle}`, angle, kind));
    const [one] = bosses;
    const mold = { bosses, process, flex: 0.15 };
    const [{ clash }] = seatsAt(mold, new Pattern(pegsOf(mold), slackIn(mold)), turn * degrees, lift);
    const common = (raised: number): number =>
      kernel.scope((scope) => {
        // Six sides drawn round the outline of a hexagon; many drawn round that of a round one.
        const sides = kind === 'hexagon' ? 6 : 720;
        const around = (outline: readonly (readonly [number, number])[]) =>
          scope.revolve(
            outline.map(([r, z]) => [r / Math.cos(Math.PI / sides), z] as const),
            sides,
            'body',
          );
        const outline = process === 'rigid' ? socketOutline(one, -1) : bossOutline(one, -1);
        const socket = scope.move(around(outline), translation(one.x, one.y, lift + raised));
        const square = [
          [20, -20],
          [60, -20],
          [60, 40],
          [20, 40],
        ] as const;
        const plate = scope.extrude([square], lift + raised, 20, 'plate');
        const headAt = compose(rotation('z', turn * degrees), translation(one.x, one.y, 0));
        const head = scope.move(around(bossOutline(one, -1)), headAt);
        return scope.intersect([scope.subtract(plate, [socket], 'half'), head], 'both').volume();
      });
    expect(clash).toBeGreaterThan(0.5);
    expect(common(clash + 0.005)).toBeLessThan(1e-6);
    expect(common(clash - 0.03)).toBeGreaterThan(1e-6);
  });
});
