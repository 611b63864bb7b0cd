import { expect, test } from 'vitest';
import { box, type Shape, together } from '../rough-shapes.ts';
import { bring, outVolume } from './bring.ts';

// Repairs that few files need; each must be said, with how often and where.

const said = (outcome: ReturnType<typeof bring>) =>
  outcome.findings.map(({ code, severity, subject, values }) => [code, severity, subject, values.measured]);

test('faces without area and doubled ones are left out, and counted', () => {
  const { points, faces } = box([10, 20, 30]);
  const [[a, b, c]] = faces;
  const outcome = bring({ points, faces: [...faces, [a, a, b], [a, b, c]] });
  expect(outVolume(outcome)).toBeCloseTo(6000, 6);
  expect(said(outcome)).toEqual([['repair.faces-dropped', 'note', 'snail', 2]]);
});

/** A box one of whose edges has a point in its middle that only the faces on one side know: a flat face joins them. */
function withSliver(): Shape {
  const { points, faces } = box([10, 20, 30]);
  const [[a, b, c], ...rest] = faces;
  const middle = points.length;
  const between = points[a].map((value, axis) => (value + points[b][axis]) / 2) as [number, number, number];
  return {
    points: [...points, between],
    faces: [[a, middle, c], [middle, b, c], [a, b, middle], ...rest],
  };
}

test('a face with its corners on one line is joined with its neighbor, and counted', () => {
  const outcome = bring(withSliver());
  expect(outVolume(outcome)).toBeCloseTo(6000, 6);
  expect(said(outcome)).toEqual([['repair.slivers-turned', 'note', 'snail', 1]]);
});

test('a shell that encloses next to nothing is left out, and its place is said', () => {
  const outcome = bring(together(box([10, 20, 30]), box([0.01, 0.01, 0.01], [40, 0, 0])));
  expect(outVolume(outcome)).toBeCloseTo(6000, 6);
  expect(said(outcome)).toEqual([['repair.specks-dropped', 'note', 'snail', 1]]);
  expect(outcome.findings[0].place?.[0]).toBeCloseTo(40, 1);
});
