import { expect, it } from 'vitest';
import { slabLeft, slabModes } from '../../src/physics/index.ts';

// zeta = pi / 4 with m = 1: tan is 1, so Bi = pi / 4 + pi^2 / 16.
it('first root with a lid on each face', () => {
  expect(slabModes({ biot: Math.PI / 4 + Math.PI ** 2 / 16, lumped: 1 })[0].zeta).toBeCloseTo(
    Math.PI / 4,
    12,
  );
});

// At Fo 0.001 heat has come 0.06 of the way (2 sqrt(Fo)): the middle knows nothing of the faces, whatever they are.
it.each([
  [0.5, 0],
  [5, 0.5],
  [1, 2],
  [Number.POSITIVE_INFINITY, 3],
])('Bi %d, lids %d: the middle stays as it was at first', (biot, lumped) => {
  expect(slabLeft(slabModes({ biot, lumped }), 0.001, 0)).toBeCloseTo(1, 6);
});

// Series sum by hand for fixed faces; a lid on faces that have their temperature at once does not matter.
it('with no film the lids do not matter', () => {
  expect(slabLeft(slabModes({ biot: Number.POSITIVE_INFINITY, lumped: 3 }), 0.1, 0)).toBeCloseTo(0.949305, 6);
});

it.each([
  [0, 0],
  [-1, 0],
  [1, -1],
])('refuses Bi %d with lids %d', (biot, lumped) => {
  expect(() => slabModes({ biot, lumped })).toThrow(RangeError);
});
