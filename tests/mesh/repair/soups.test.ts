// Heaps of triangles that enclose nothing: whatever they are, they end, with the same answer every time.
import { expect, test } from 'vitest';
import type { Vec3 } from '../../../src/geometry/index.ts';
import type { Shape } from '../rough-shapes.ts';
import { bring, outVolume } from './bring.ts';

/** Mulberry32: 32 bits of state, the same numbers everywhere. */
function randomly(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Corners = readonly [Vec3, Vec3, Vec3];

const side = 30;
const anywhere = (random: () => number): Vec3 => [random() * side, random() * side, random() * side];
const near = ([x, y, z]: Vec3, reach: number, random: () => number): Vec3 => [
  x + (random() - 0.5) * reach,
  y + (random() - 0.5) * reach,
  z + (random() - 0.5) * reach,
];

/** One triangle of each kind of heap; `first` is the same for all of a heap. */
const heaps: Record<string, (random: () => number, first: Corners) => Corners> = {
  large: (random) => [anywhere(random), anywhere(random), anywhere(random)],
  small: (random) => {
    const at = anywhere(random);
    return [at, near(at, 3, random), near(at, 3, random)];
  },
  slivers: (random) => {
    const [from, to] = [anywhere(random), anywhere(random)];
    return [from, to, near(to, 0.03, random)];
  },
  coincident: (random, [a, b, c]) => [near(a, 3e-4, random), near(b, 3e-4, random), near(c, 3e-4, random)],
  'in two planes': (random) => {
    const [a, b, c] = [anywhere(random), anywhere(random), anywhere(random)].map(
      ([x, y, z]): Vec3 => [x, y, z > side / 2 ? 3 : 0],
    );
    return [a, b, c];
  },
};

function heap(kind: string, count: number, seed: number): Shape {
  const random = randomly(seed);
  const first: Corners = [anywhere(random), anywhere(random), anywhere(random)];
  const points = Array.from({ length: count }, () => heaps[kind](random, first)).flat();
  return { points, faces: Array.from({ length: count }, (_, i) => [3 * i, 3 * i + 1, 3 * i + 2]) };
}

const cases = Object.keys(heaps).flatMap((kind) =>
  [10, 100, 1000].map((count) => ({ kind, count, seed: count + kind.length })),
);

/** A hundredth of what is allowed, on cells of 1 mm, so that the test is quick. */
const stepLimit = 4_000_000;
const rough = { remeshEdge: 1, stepLimit };

test.each(cases)('$count triangles, $kind, seed $seed: a mesh or a stop', ({ kind, count, seed }) => {
  const outcome = bring(heap(kind, count, seed), rough);
  if (outcome.mesh) expect(outVolume(outcome)).toBeGreaterThan(0);
  else expect(outcome.findings.filter(({ severity }) => severity === 'stop')).toHaveLength(1);
});

test('a heap without an inside is given up after so many steps, the same number every time', () => {
  const made = [1, 2].map(() => bring(heap('large', 1000, 1), rough));
  const [one, other] = made;
  expect(one.mesh).toBeUndefined();
  expect(one.findings).toMatchObject([
    {
      code: 'repair.remesh-too-long',
      severity: 'stop',
      values: { which: 'open', open: 3000, takes: 'steps', limit: stepLimit, edge: 1 },
    },
  ]);
  // What is counted passes the limit by one question at most.
  const { measured } = one.findings[0].values;
  expect(measured).toBeGreaterThan(stepLimit);
  expect(measured).toBeLessThan(1.01 * stepLimit);
  expect(other).toEqual(one);
});

test('cells far shorter than the master is long are not begun', () => {
  const { mesh, findings } = bring(heap('large', 10, 1), { remeshEdge: 0.01 });
  expect(mesh).toBeUndefined();
  expect(findings).toMatchObject([
    { code: 'repair.remesh-too-long', values: { takes: 'cells', limit: 8_000_000, edge: 0.01 } },
  ]);
  // 30 mm of 0.01 mm along each side, of points that do not quite fill them.
  expect(findings[0].values.measured).toBeGreaterThan(2000 ** 3);
  expect(findings[0].values.measured).toBeLessThan(3004 ** 3);
});
