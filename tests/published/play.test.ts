import { expect, test } from 'vitest';
import { largestMismatch, largestTurn } from '../../src/physics/play.ts';

// Drake (ed.), Dimensioning and Tolerancing Handbook, ch. 24, Werst, "Pinned Interfaces": two pins d apart turn by
// (c1 + c2) / d, equal pins round a centre by c / R. The numbers are worked by hand from these.
const onCircle = (radius: number, clearance: number, ...degrees: number[]) =>
  degrees.map((angle) => ({
    x: radius * Math.cos((angle * Math.PI) / 180),
    y: radius * Math.sin((angle * Math.PI) / 180),
    clearance,
  }));

test.each([
  ['two pins at R 100, c 0.15', onCircle(100, 0.15, 0, 180), 0.0015],
  ['three pins at R 90, c 0.2', onCircle(90, 0.2, 0, 120, 240), 0.2 / 90],
  [
    'pins at +60 and -40, c 0.1 and 0.2',
    [
      { x: 60, y: 0, clearance: 0.1 },
      { x: -40, y: 0, clearance: 0.2 },
    ],
    0.003,
  ],
  [
    'pins at (100, 0) and (0, 60), c 0.1',
    [
      { x: 100, y: 0, clearance: 0.1 },
      { x: 0, y: 60, clearance: 0.1 },
    ],
    0.00171499,
  ],
  ['pins at (80, 0), (0, 80), (-80, 0), c 0.15', onCircle(80, 0.15, 0, 90, 180), 0.001875],
])('registration.turn of %s', (_, pins, turn) => {
  expect(largestTurn(pins)).toBeCloseTo(turn, 8);
});

// Closed form: equal pins shift sideways by their clearance; a point farther out than the pins moves by c L / R.
test('registration.shift and registration.mismatch of equal pins round the axis', () => {
  const pins = onCircle(90, 0.2, 0, 120, 240);
  expect(largestMismatch(pins, [[0, 0]])?.distance).toBeCloseTo(0.2, 6);
  expect(largestMismatch(onCircle(60, 0.15, 0, 180), [[100, 0]])?.distance).toBeCloseTo(0.25, 6);
});
