import { describe, expect, it } from 'vitest';
import { chvorinovTime, equivalentTime, halfForTime, slabTemperature } from '../../src/physics/index.ts';

// A body of even temperature lags behind its surroundings, T' = (S - T) / 100 s: one mode with all of the share. By
// hand from 20 C in 120 C: 63.212 K gathered in 100 s; after that S = 20 + 100 e^(-t / constant).
describe('a body that lags by 100 s, heated for 100 s', () => {
  const celsiusAt = (time: number, coolingConstantS: number): number =>
    slabTemperature(
      {
        modes: [{ zeta: 1, share: 1 }],
        perSecond: 0.01,
        startC: 20,
        surroundingsC: 120,
        heatedS: 100,
        coolingConstantS,
      },
      time,
      0,
    );
  it('half way: 20 + 100 (1 - e^-0.5)', () => expect(celsiusAt(50, 60)).toBeCloseTo(59.3469, 4));
  it('at the end, however it then cools', () => {
    expect(celsiusAt(100, 0)).toBeCloseTo(83.2121, 4);
    expect(celsiusAt(100, 50)).toBeCloseTo(83.2121, 4);
  });
  it.each([
    ['at once: 63.212 e^-1', 0, 43.2544],
    ['twice as fast as it: 63.212 e^-1 + 100 (e^-1 - e^-2)', 50, 66.5088],
    ['just as fast: 63.212 e^-1 + 100 e^-1, the limit', 100, 80.0424],
    ['half as fast: 63.212 e^-1 + 200 (e^-0.5 - e^-1)', 200, 90.9847],
  ])('100 s into surroundings that cool %s', (_, constant, celsius) => {
    expect(celsiusAt(200, constant)).toBeCloseTo(celsius, 4);
  });
});

// At the reference the rate is 1: as much time as passed, nothing at the first sample.
it('cure at the reference temperature gathers the time that passes', () => {
  const rate = { referenceC: 160, activationEnergyJMol: 90_000 };
  expect(equivalentTime(rate, [160, 160, 160], 30)).toEqual([0, 30, 60]);
});

// The cube of 12 mm, by hand: 506.8 MJ/m3, V / A 2 mm, e 632.4555: 50.432 s with the half at 30 C.
describe('a half that heat is drawn into', () => {
  it('is at 30 C where it takes 50.432 s, and 30 C warmer where it takes (200 / 170)^2 of that', () => {
    expect(halfForTime(506.8e6, 2, 230, 632.4555, 50.432)).toBeCloseTo(30, 2);
    expect(halfForTime(506.8e6, 2, 230, 632.4555, 50.432 * (200 / 170) ** 2)).toBeCloseTo(60, 2);
  });
  it('never draws it when it is hotter than what sets', () => {
    const tin = {
      densityKgM3: 7000,
      latentJKg: 60_000,
      moltenJKgK: 240,
      solidJKgK: 240,
      conductivityWMK: 40,
      solidusC: 230,
      liquidusC: 240,
      pourC: 290,
    };
    expect(chvorinovTime(tin, 2, { effusivity: 632, temperatureC: 240 })).toBe(Number.POSITIVE_INFINITY);
  });
});
