import { expect, test } from 'vitest';
import { boundsOf } from '../../../src/geometry/index.ts';
import { toMillimeters } from '../../../src/mesh/repair/to-millimeters.ts';
import { box, indexed, mapped, type Shape } from '../rough-shapes.ts';

const bring = (shape: Shape, unit?: 'in' | 'mm' | 'micron') => toMillimeters(indexed(shape), 'leaf', unit);
const codes = (outcome: ReturnType<typeof bring>) => outcome.findings.map(({ code }) => code);

test('a named unit is obeyed without a word', () => {
  const outcome = bring(box([1, 2, 3]), 'in');
  expect(outcome.findings).toEqual([]);
  expect(boundsOf(outcome.mesh.positions).max.map((v) => Math.fround(v))).toEqual(
    [25.4, 50.8, 76.2].map(Math.fround),
  );
});

test("the file's own unit goes before a guess, and the plan's before both", () => {
  const raw = { ...indexed(box([1, 1, 1])), unit: 'cm' as const };
  expect(toMillimeters(raw, 'leaf', undefined).unit).toBe('cm');
  expect(toMillimeters(raw, 'leaf', undefined).findings).toEqual([]);
  expect(toMillimeters(raw, 'leaf', 'mm').unit).toBe('mm');
});

test('a guess is said aloud: a note for millimeters, a warning for another', () => {
  expect(bring(box([20, 20, 5])).findings).toMatchObject([{ code: 'repair.unit-guessed', severity: 'note' }]);
  expect(bring(box([1, 1, 0.5])).findings).toMatchObject([
    { code: 'repair.unit-guessed', severity: 'warn', values: { measured: 25.4, unit: 'in' } },
  ]);
});

test('micron-sized and meter-sized parts are doubted, beyond that refused', () => {
  expect(codes(bring(box([0.5, 0.5, 0.5]), 'mm'))).toEqual(['repair.size-doubtful']);
  expect(codes(bring(box([1500, 5, 5]), 'mm'))).toContain('repair.size-doubtful');
  expect(codes(bring(box([20, 20, 20]), 'micron'))).toEqual(['repair.size-absurd']);
  expect(codes(bring(box([2e6, 2e6, 2e6]), 'mm'))).toContain('repair.size-absurd');
});

test('far from the origin: moved by whole millimeters, said, nothing else changed', () => {
  const far = mapped(box([20, 20, 5]), ([x, y, z]) => [x + 4000, y, z - 700]);
  const outcome = bring(far, 'mm');
  expect(outcome.moved).toEqual([-4010, -10, 697]);
  expect(codes(outcome)).toEqual(['repair.recentered']);
  expect(boundsOf(outcome.mesh.positions)).toEqual({ min: [-10, -10, -3], max: [10, 10, 2] });
});

test('so far that the file has rounded the shape: a warning with the step', () => {
  const outcome = bring(
    mapped(box([32, 32, 32]), ([x, y, z]) => [x + 2 ** 20, y, z]),
    'mm',
  );
  // IEEE 754 single: 24 bits of mantissa, so the step at 2^20 is 2^(20 - 23).
  expect(outcome.findings).toMatchObject([
    { code: 'repair.recentered' },
    { code: 'repair.coarse', values: { measured: 2 ** -3 } },
  ]);
});
