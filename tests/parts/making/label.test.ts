import { expect, test } from 'vitest';
import { loadKernel } from '../../../src/kernel/index.ts';
import { discBlank } from '../../../src/parts/halves/disc-blank.ts';
import {
  labelCutter,
  labelDepth,
  labelFindings,
  labelStroke,
  layLabel,
} from '../../../src/parts/making/label.ts';
import { exampleMold } from '../example-mold.ts';

const kernel = await loadKernel();
const room = (width: number, height: number) => ({ x: 5, y: -3, width, height });

test('letters stay in their room, 4.5 to 9 mm high, on two lines where one would be too long', () => {
  const wide = layLabel(['hedgerow upper', '250 mm r1'], room(400, 14));
  expect(wide.height).toBeCloseTo(9, 6);
  const square = layLabel(['hedgerow', '250 mm'], room(70, 24));
  expect(square.height).toBeGreaterThanOrEqual(4.5);
  for (const [x, y] of square.strokes.flat()) {
    expect(Math.abs(x - 5)).toBeLessThanOrEqual((70 - labelStroke) / 2 + 1e-9);
    expect(Math.abs(y + 3)).toBeLessThanOrEqual((24 - labelStroke) / 2 + 1e-9);
  }
});

test('a capital is as high as said, and lines below each other keep a stroke apart', () => {
  const heights = (words: string[]) =>
    layLabel(words, room(60, 40))
      .strokes.flat()
      .map(([, y]) => y);
  const one = heights(['E']);
  expect(Math.max(...one) - Math.min(...one)).toBeCloseTo(9, 6);
  const two = layLabel(['EEEE', 'EEEE'], room(60, 40));
  const levels = [...new Set(two.strokes.flat().map(([, y]) => Math.round(y * 1e6)))].sort((a, b) => a - b);
  const gaps = levels.slice(1).map((y, i) => (y - levels[i]) / 1e6);
  for (const gap of gaps) expect(gap).toBeGreaterThan(labelStroke + 0.4);
});

test('an upright stroke is as deep and wide as stated: an l is a bar with round ends', () => {
  kernel.scope((scope) => {
    const body = labelCutter(scope, ['|'], room(40, 20));
    const { min, max } = body?.boundingBox() ?? { min: [0, 0, 0], max: [0, 0, 0] };
    expect(-min[2]).toBeCloseTo(labelDepth, 6);
    // A pen drawn with a polygon of 12 sides is at most 1 - cos(pi / 12) of its half width too narrow.
    expect(max[0] - min[0]).toBeGreaterThan(labelStroke * Math.cos(Math.PI / 12) - 1e-6);
    expect(max[0] - min[0]).toBeLessThan(labelStroke + 1e-6);
  });
});

test('what cannot be engraved as written is said', () => {
  const codes = (words: string[], width: number) =>
    labelFindings('upper half', words, room(width, 10)).map(({ code, severity }) => [code, severity]);
  expect(codes(['hedgerow', 'r1'], 200)).toEqual([]);
  expect(codes(['Gänseblümchen'], 200)).toEqual([['solid.label-letters', 'note']]);
  expect(codes(['葉'], 200)).toEqual([['solid.label-letters', 'note']]);
  expect(codes(['hedgerow charms'], 20)).toEqual([['solid.label-left-off', 'note']]);
  // Letters lose their marks, and only those without a plain one become a question mark.
  expect(layLabel(['é'], room(40, 12)).strokes).toEqual(layLabel(['E'], room(40, 12)).strokes);
  expect(layLabel(['葉'], room(40, 12)).strokes).toEqual(layLabel(['?'], room(40, 12)).strokes);
  // Nothing that can be engraved is lost with the rest.
  expect(layLabel(['oak', 'a very long line of words'], room(30, 8)).leftOff).toEqual([
    'a very long line of words',
  ]);
});

test('a disc too small for its name says so with the disc it is about', () => {
  const mold = exampleMold();
  const long = { ...mold, disc: { ...mold.disc, radius: 30, label: 'a name far too long for a small disc' } };
  const findings = discBlank.units(long).flatMap((unit) => unit.run({ kernel }).findings);
  expect(findings.map(({ code, subject }) => [code, subject])).toEqual([
    ['solid.label-left-off', 'lower half'],
    ['solid.label-left-off', 'upper half'],
  ]);
});
