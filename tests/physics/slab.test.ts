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

// So little film that slab and lids are of one temperature: e^(-Bi Fo / (1 + m)), e^(-0.5 / 3).
it('with hardly any film slab and lids fall as one body', () => {
  expect(slabLeft(slabModes({ biot: 0.01, lumped: 2 }), 50, 0)).toBeCloseTo(0.8465, 2);
});

// 4 / pi e^(-pi^2 Fo / 4) cos(pi / 4) and its second term, by hand at Fo 0.2: 0.549641 + 0.003535.
it('half way to a face', () => {
  expect(slabLeft(slabModes({ biot: Number.POSITIVE_INFINITY, lumped: 0 }), 0.2, 0.5)).toBeCloseTo(
    0.55318,
    4,
  );
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
