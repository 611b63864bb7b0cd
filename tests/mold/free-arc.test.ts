import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { widestFreeArc } from '../../src/mold/free-arc.ts';

const deg = Math.PI / 180;

describe('widest free arc of the rim', () => {
  test.each([
    ['nothing on the rim', [], 180, 360],
    ['one thing at 0', [[0, 10]], 180, 340],
    ['one thing across the zero', [[350, 20]], 170, 320],
    [
      'two things',
      [
        [0, 10],
        [90, 10],
      ],
      225,
      250,
    ],
    [
      'overlapping things count once',
      [
        [0, 30],
        [20, 30],
        [180, 10],
      ],
      260,
      140,
    ],
  ] as const)('%s', (_, taken, middle, width) => {
    const arc = widestFreeArc(taken.map(([angle, half]) => ({ angleRad: angle * deg, halfRad: half * deg })));
    expect(arc.widthRad / deg).toBeCloseTo(width, 9);
    expect(arc.angleRad / deg).toBeCloseTo(middle, 9);
  });

  test('agrees with a walk round the rim in steps of 0.1 degree (seed 7)', () => {
    const stretch = fc.record({
      angleRad: fc.double({ min: 0, max: 6.28, noNaN: true }),
      halfRad: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(stretch, { minLength: 1, maxLength: 6 }), (taken) => {
        const step = 0.1 * deg;
        const free = Array.from({ length: 3600 }, (_, i) =>
          taken.every(
            ({ angleRad, halfRad }) =>
              Math.abs(Math.atan2(Math.sin(i * step - angleRad), Math.cos(i * step - angleRad))) > halfRad,
          ),
        );
        let longest = 0;
        let run = 0;
        for (const here of [...free, ...free]) {
          run = here ? run + 1 : 0;
          longest = Math.max(longest, Math.min(run, 3600));
        }
        expect(Math.abs(widestFreeArc(taken).widthRad - longest * step)).toBeLessThan(2.01 * step);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
