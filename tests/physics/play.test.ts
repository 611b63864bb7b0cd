import fc from 'fast-check';
import { expect, test } from 'vitest';
import { largestMismatch, largestTurn, type Pin } from '../../src/physics/play.ts';

const pin = (x: number, y: number, clearance: number): Pin => ({ x, y, clearance });

const distanceAt = (pins: readonly Pin[], x: number, y: number): number => {
  const found = largestMismatch(pins, [[x, y]]);
  if (!found) throw new Error('no bound');
  return found.distance;
};

test('without any clearance nothing moves', () => {
  const pins = [pin(80, 0, 0), pin(-70, 10, 0)];
  expect(largestTurn(pins)).toBe(0);
  expect(distanceAt(pins, 30, 30)).toBe(0);
});

test('pins at one place hold no turn', () => {
  expect(largestTurn([pin(50, 0, 0.2), pin(50, 0, 0.1)])).toBe(Number.POSITIVE_INFINITY);
  expect(largestMismatch([pin(50, 0, 0.2)], [[0, 0]])).toBeUndefined();
});

test('a clearance below nothing is a programmer\u2019s error', () => {
  expect(() => largestTurn([pin(0, 0, -0.1), pin(1, 0, 0)])).toThrow(RangeError);
  expect(() => largestTurn([])).toThrow(RangeError);
});

// At a pin the mismatch is at most its clearance, and reaches it where no other pin is tighter.
test('at a pin the mismatch is its own clearance', () => {
  expect(distanceAt([pin(90, 0, 0.2), pin(-90, 0, 0.2)], 90, 0)).toBeCloseTo(0.2, 6);
  expect(distanceAt([pin(90, 0, 0.1), pin(-90, 0, 0.3)], 90, 0)).toBeCloseTo(0.1, 6);
});

// Two equal pins at +-R: pure shift by c moves the middle by c; no more, since c bounds both and the middle is their mean.
test('the middle between two equal pins shifts by their clearance', () => {
  expect(distanceAt([pin(90, 0, 0.2), pin(-90, 0, 0.2)], 0, 0)).toBeCloseTo(0.2, 6);
});

// Beyond the pins along their line: both pins at their limits to opposite sides, q at L: c L / R.
test('beyond two pins the mismatch grows with the distance from their middle', () => {
  expect(distanceAt([pin(60, 0, 0.15), pin(-60, 0, 0.15)], 100, 0)).toBeCloseTo((0.15 * 100) / 60, 6);
});

// Square to the line of two pins at +-60 the worst is shift and turn together: c cos f + c (h / R) sin f, at most
// c sqrt(1 + (h / R)^2), where two circles cross: 0.15 x 100 / 60 for h 80.
test.each([0, 37, 101, 208, 300])('beside two pins at %d degrees', (degrees) => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = (x: number, y: number): readonly [number, number] => [c * x - s * y, s * x + c * y];
  const pins = [at(60, 0), at(-60, 0)].map(([x, y]) => pin(x, y, 0.15));
  for (const h of [80, -80]) expect(distanceAt(pins, ...at(0, h))).toBeCloseTo(0.25, 5);
  // A third pin far looser than both binds nothing.
  expect(distanceAt([pin(...at(9, 4), 5), ...pins], ...at(0, 80))).toBeCloseTo(0.25, 5);
});

// Three pins of 0.2 at R 90 turn by c / R, wherever the plan is turned and in whatever order they come.
test.each([10, 75, 190])('three pins turned by %d degrees', (degrees) => {
  const at = (angle: number): Pin => {
    const rad = ((angle + degrees) * Math.PI) / 180;
    return pin(90 * Math.cos(rad), 90 * Math.sin(rad), 0.2);
  };
  expect(largestTurn([at(0), at(120), at(240)])).toBeCloseTo(0.2 / 90, 8);
  expect(largestTurn([at(240), at(120), at(0)])).toBeCloseTo(0.2 / 90, 8);
});

const arrangements = fc.array(
  fc.record({
    x: fc.integer({ min: -110, max: 110 }),
    y: fc.integer({ min: -110, max: 110 }),
    clearance: fc.integer({ min: 1, max: 40 }).map((value) => value / 100),
  }),
  { minLength: 2, maxLength: 5 },
);

/** Whether the pins allow a state. */
const allowed = (pins: readonly Pin[], tx: number, ty: number, turn: number): boolean =>
  pins.every(({ x, y, clearance }) => Math.hypot(tx - turn * y, ty + turn * x) <= clearance);

test('no state that the pins allow, found at random, goes beyond', () => {
  fc.assert(
    fc.property(
      arrangements,
      fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
      (pins, rand) => {
        const next = (): number => rand.next().value;
        const turnMost = largestTurn(pins);
        fc.pre(Number.isFinite(turnMost));
        const [x, y] = [100 * next(), 100 * next()];
        const most = distanceAt(pins, x, y);
        for (let k = 0; k < 300; k++) {
          // Shoot from the true seat along a random way until the first pin stops it: a state on the edge of the set.
          const way = [next(), next(), next() / 100];
          let [low, high] = [0, 1e4];
          for (let i = 0; i < 60; i++) {
            const middle = (low + high) / 2;
            if (allowed(pins, middle * way[0], middle * way[1], middle * way[2])) low = middle;
            else high = middle;
          }
          const [tx, ty, turn] = way.map((value) => value * low);
          expect(Math.abs(turn)).toBeLessThanOrEqual(turnMost + 1e-9);
          expect(Math.hypot(tx - turn * y, ty + turn * x)).toBeLessThanOrEqual(most + 2e-6);
        }
      },
    ),
    { numRuns: 60, seed: 5 },
  );
});

test('turning and mirroring the plan, and the order of pins, change nothing; sizes grow with the plan', () => {
  const pins = [pin(100, 3, 0.1), pin(-20, 95, 0.2), pin(-80, -50, 0.15), pin(60, -70, 0.12)];
  const turned = pins.map(({ x, y, clearance }) => pin(0.6 * x - 0.8 * y, 0.8 * x + 0.6 * y, clearance));
  const most = distanceAt(pins, 40, 30);
  expect(distanceAt(turned, 0.6 * 40 - 0.8 * 30, 0.8 * 40 + 0.6 * 30)).toBeCloseTo(most, 5);
  expect(largestTurn(turned)).toBeCloseTo(largestTurn(pins), 9);
  expect(distanceAt([...pins].reverse(), 40, 30)).toBeCloseTo(most, 5);
  const mirrored = pins.map((one) => ({ ...one, y: -one.y }));
  expect(distanceAt(mirrored, 40, -30)).toBeCloseTo(most, 5);
  const twice = pins.map(({ x, y, clearance }) => pin(2 * x, 2 * y, 2 * clearance));
  expect(distanceAt(twice, 80, 60)).toBeCloseTo(2 * most, 5);
  expect(largestTurn(twice)).toBeCloseTo(largestTurn(pins), 9);
});
