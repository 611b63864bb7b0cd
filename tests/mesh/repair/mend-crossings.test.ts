import { describe, expect, test } from 'vitest';
import { crossingFaces } from '../../../src/geometry/index.ts';
import { figurine, figurineKinds } from '../figurines.ts';
import { box, together } from '../rough-shapes.ts';
import { bring, codesOf, outVolume } from './bring.ts';

/** Seeds whose surface, as it was mended before, still crossed itself. */
const met = [
  ['fingers', 1],
  ['scan', 3],
  ['scan', 5],
] as const;

test.each(met)('%s %i: what is left after a repair crosses itself nowhere, and it is said', (kind, seed) => {
  const outcome = bring(figurine(kind, seed), { remeshEdge: 0.6 });
  expect(outVolume(outcome)).toBeGreaterThan(0);
  expect(outcome.mesh && crossingFaces(outcome.mesh)).toEqual([]);
  expect(codesOf(outcome)).toContain('repair.crossings-cut');
});

describe.each(figurineKinds)('%s', (kind) => {
  test.each([41, 42])('%i: crosses nowhere, or is said to', (seed) => {
    const outcome = bring(figurine(kind, seed), { remeshEdge: 0.8 });
    const stops = outcome.findings.some(({ severity }) => severity === 'stop');
    expect(stops).toBe(outcome.mesh === undefined);
    const left = outcome.mesh ? crossingFaces(outcome.mesh).filter(({ depth }) => depth > 1e-4).length : 0;
    expect(left > 0).toBe(codesOf(outcome).includes('repair.crossings-left'));
  });
});

test('a body of so few faces that they cannot be cut is kept, and its crossing is said with its place', () => {
  const outcome = bring(figurine('open', 15), { remeshEdge: 0.6 });
  const left = outcome.findings.find(({ code }) => code === 'repair.crossings-left');
  expect(left?.severity).toBe('warn');
  expect(left?.values.measured).toBe(outcome.mesh && crossingFaces(outcome.mesh).length);
  expect(left?.place).toHaveLength(3);
});

test('a sound body keeps its own faces', () => {
  const apart = together(box([10, 10, 10]), box([10, 10, 10], [20, 0, 0]));
  expect(codesOf(bring(apart))).toEqual(['repair.several-bodies']);
});
