import { describe, expect, it } from 'vitest';
import { bondRange, type Casting } from '../../src/trials/index.ts';

const bonds = Array.from({ length: 38 }, (_, k) => 1.3 + 0.1 * k);

/** 36 cavities; air stays in each from a Bond number of its own on. */
const cavities = Array.from({ length: 36 }, (_, i) => ({ id: `c-${i}`, from: 1.35 + (3.6 * i) / 35 }));
const air = new Map(cavities.map(({ id, from }) => [id, bonds.map((bond) => (bond >= from ? 3 : 0))]));

/** Mulberry32, public domain. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Castings drawn from the model itself: nine in ten fail where air stays, one in twenty elsewhere. */
function drawn(bond: number, pours: number, seed: number): Casting[] {
  const random = randomFrom(seed);
  return Array.from({ length: pours }, (_, pour) =>
    cavities.map(({ id, from }): Casting => {
      const fails = random() < (bond >= from ? 0.9 : 0.05);
      return { pour: pour + 1, id, came: [fails ? 'short' : 'good'] };
    }),
  ).flat();
}

describe('the Bond number told by trials', () => {
  it.each([1.8, 2.3, 3.4])('recovers %f from castings drawn from the model, in 19 of 20 draws', (truth) => {
    const found = Array.from({ length: 20 }, (_, seed) => bondRange(drawn(truth, 5, seed), { bonds, air }));
    const inside = found.filter((one) => one && one.low <= truth + 1e-9 && one.high >= truth - 1e-9);
    expect(inside.length).toBeGreaterThanOrEqual(19);
    // A range that always held everything would pass the line above.
    const widths = found.map((one) => (one ? one.high - one.low : 3.7)).sort((a, b) => a - b);
    expect(widths[10]).toBeLessThan(1);
  });
  it('tells nothing where nothing was looked at, or all went well', () => {
    expect(bondRange([], { bonds, air })).toBeUndefined();
    const good = drawn(2.3, 1, 1).map((one): Casting => ({ ...one, came: ['good'] }));
    expect(bondRange(good, { bonds, air })).toBeUndefined();
  });
  it('is closed form for two cavities: the likelihood of one that fails always and one that never does', () => {
    const castings = [...Array(4)].flatMap((_, i): Casting[] => [
      { pour: i + 1, id: 'a', came: ['short'] },
      { pour: i + 1, id: 'b', came: ['good'] },
    ]);
    const two = {
      bonds: [1, 2, 3],
      air: new Map([
        ['a', [0, 3, 3]],
        ['b', [0, 0, 3]],
      ]),
    };
    const found = bondRange(castings, two);
    // Half of eight fail where both are told alike: 8 ln 2 less than certain.
    expect(found?.logLikelihood[0]).toBeCloseTo(-8 * Math.LN2, 12);
    expect(found).toMatchObject({ low: 2, high: 2, likeliest: 2 });
  });
});
