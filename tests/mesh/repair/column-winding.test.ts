import { expect, test } from 'vitest';
import { columnWinding } from '../../../src/mesh/repair/column-winding.ts';
import { asMesh, ball, box, insideOut, together, torus, without } from '../rough-shapes.ts';

test.each([
  ['a ball', ball(10, 48)],
  ['a torus', torus(20, 5, 64, 32)],
  ['a box, whose walls are upright', box([10, 10, 10])],
  ['boxes side by side', together(box([10, 10, 10]), box([10, 10, 10], [10, 0, 0]))],
  ['boxes on top of one another', together(box([10, 10, 10]), box([10, 10, 10], [0, 0, 10]))],
  ['a box with a cavity', together(box([10, 10, 10]), insideOut(box([2, 2, 2], [5, 5, 5])))],
])('%s: every line is inside 0 or 1 deep', (_, shape) => {
  const winding = columnWinding(asMesh(shape));
  expect(winding.columns).toBeGreaterThan(10_000);
  expect(winding.wrong).toBe(0);
  expect(winding.wrongVolume).toBe(0);
});

test('overlap is measured: the common box of two boxes, 3 x 4 x 5 mm, to a line of 0.025 mm at its rim', () => {
  const winding = columnWinding(asMesh(together(box([10, 10, 10]), box([10, 10, 10], [7, 6, 5]))), 680);
  expect(winding.wrongVolume).toBeGreaterThan(60 - 2 * 7 * 0.025 * 5);
  expect(winding.wrongVolume).toBeLessThan(60 + 2 * 7 * 0.025 * 5);
  expect(winding.longest).toBeCloseTo(5, 5);
  expect(winding.place?.[2]).toBeCloseTo(7.5, 5);
  expect(winding.place?.[0]).toBeGreaterThan(7);
  expect(winding.place?.[1]).toBeLessThan(10);
});

test('inside out: its whole volume is wrong', () => {
  const winding = columnWinding(asMesh(insideOut(box([10, 10, 10]))));
  expect(winding.wrong).toBe(winding.columns);
  expect(winding.wrongVolume).toBeCloseTo(1000, 6);
});

test('a hole: lines that go in and never come out', () => {
  const lidless = without(box([10, 10, 10]), (face) => face === 2 || face === 3);
  const winding = columnWinding(asMesh(lidless));
  expect(winding.wrong).toBe(winding.columns);
});
