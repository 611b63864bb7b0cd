import { describe, expect, test } from 'vitest';
import { crossingFaces, type TriangleMesh } from '../../../src/geometry/index.ts';
import { figurine, figurineKinds } from '../figurines.ts';
import { box, shapeOf, together } from '../rough-shapes.ts';
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

/** A flat round lid, 100 mm across and 5 mm thick, with fine rings in its middle, of which twelve points are up to `by` mm out of place. */
function crumpled(by: number): TriangleMesh {
  const sides = 24;
  const radii = [...Array.from({ length: 10 }, (_, i) => 0.1 * (i + 1)), 50];
  const at = (radius: number, k: number, z: number): number[] => {
    const angle = (2 * Math.PI * k) / sides;
    return [radius * Math.cos(angle), radius * Math.sin(angle), z];
  };
  const around = Array.from({ length: sides }, (_, k) => k);
  const rings = [...radii.map((radius) => [radius, 5] as const), [50, 0] as const];
  const points = [
    [0, 0, 5],
    ...rings.flatMap(([radius, z]) => around.map((k) => at(radius, k, z))),
    [0, 0, 0],
  ];
  const id = (ring: number, k: number): number => 1 + ring * sides + (k % sides);
  const triangles = around.flatMap((k) => [
    [0, id(0, k), id(0, k + 1)],
    ...rings.slice(1).flatMap((_, i) => [
      [id(i, k), id(i + 1, k), id(i + 1, k + 1)],
      [id(i, k), id(i + 1, k + 1), id(i, k + 1)],
    ]),
    [points.length - 1, id(rings.length - 1, k + 1), id(rings.length - 1, k)],
  ]);
  for (let ring = 3; ring < 7; ring++)
    for (let k = 0; k < 3; k++)
      points[id(ring, k)] = points[id(ring, k)].map((x, axis) => x + by * Math.sin(7 * ring + 5 * k + axis));
  return { positions: Float32Array.from(points.flat()), triangles: Uint32Array.from(triangles.flat()) };
}

test('folds of hundredths of a mm are drawn flat, no farther than is said', () => {
  const mesh = crumpled(0.2);
  expect(crossingFaces(mesh).length).toBeGreaterThan(0);
  const outcome = bring(shapeOf(mesh));
  expect(codesOf(outcome)).toEqual(['repair.crossings-drawn-apart']);
  expect(outcome.mesh && crossingFaces(outcome.mesh)).toEqual([]);
  // Of a prism on a regular 24-gon.
  const prism = 5 * 12 * 50 ** 2 * Math.sin(Math.PI / 12);
  expect(outVolume(outcome) / prism).toBeCloseTo(1, 5);
  expect(outcome.findings[0].values.farthest).toBeLessThan(0.002 * Math.hypot(100, 100, 5));
});
