import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { repairMesh } from '../../../src/mesh/index.ts';
import { box, mapped, type Shape } from '../rough-shapes.ts';
import { bring, kernel, outVolume } from './bring.ts';

describe('nothing to be made of it', () => {
  const sheet: Shape = {
    points: [
      [0, 0, 0],
      [10, 0, 3],
      [0, 10, 5],
      [10, 10, 8],
    ],
    faces: [
      [0, 1, 2],
      [1, 3, 2],
    ],
  };
  const wavy: Shape = (() => {
    const n = 12;
    const points = Array.from({ length: n * n }, (_, i) => {
      const x = i % n;
      const y = Math.floor(i / n);
      return [x, y, 2 * Math.sin(x) * Math.cos(y)] as const;
    });
    const faces = Array.from({ length: (n - 1) ** 2 }, (_, i): [number, number, number][] => {
      const a = Math.floor(i / (n - 1)) * n + (i % (n - 1));
      return [
        [a, a + 1, a + n],
        [a + 1, a + n + 1, a + n],
      ];
    }).flat();
    return { points, faces };
  })();

  test.each([
    ['no faces', { points: [], faces: [] }, 'repair.empty'],
    ['one point', { points: [[1, 1, 1]], faces: [[0, 0, 0]] }, 'repair.empty'],
    [
      'one face',
      {
        points: [
          [0, 0, 0],
          [5, 0, 0],
          [0, 5, 3],
        ],
        faces: [[0, 1, 2]],
      },
      'repair.flat',
    ],
    ['a flat box', box([10, 10, 0]), 'repair.flat'],
    ['a slanted sheet', sheet, 'repair.flat'],
    ['a wavy sheet', wavy, 'repair.not-solid'],
    [
      'a point that is no number',
      mapped(box([5, 5, 5]), ([x, y]) => [x, y, Number.NaN]),
      'repair.not-a-number',
    ],
    ['a speck', box([0.01, 0.01, 0.01]), 'repair.size-absurd'],
    ['kilometers', box([1e6, 1e6, 1e6]), 'repair.size-absurd'],
  ] as [string, Shape, string][])('%s is a stop', (_, shape, code) => {
    const outcome = bring(shape, { remeshEdge: 0.3 });
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.filter(({ severity }) => severity === 'stop').map((one) => one.code)).toEqual([
      code,
    ]);
  });

  test('a face that names a point that is not there', () => {
    const raw = { positions: new Float64Array(9), triangles: Uint32Array.of(0, 1, 3) };
    const outcome = repairMesh(raw, { subject: 'leaf' }, kernel);
    expect(outcome.findings).toMatchObject([{ code: 'repair.not-a-number', subject: 'leaf' }]);
  });

  test('too many triangles', () => {
    const outcome = bring(box([5, 5, 5]), { triangleLimit: 11 });
    expect(outcome.findings).toMatchObject([
      { code: 'repair.too-large', values: { measured: 12, limit: 11 } },
    ]);
  });
});

test('random soups never throw and what comes out is closed', () => {
  const coordinate = fc.integer({ min: 0, max: 4 });
  const point = fc.tuple(coordinate, coordinate, coordinate);
  fc.assert(
    fc.property(fc.array(fc.tuple(point, point, point), { minLength: 1, maxLength: 24 }), (faces) => {
      const positions = Float64Array.from(faces.flat(2));
      const triangles = Uint32Array.from({ length: faces.length * 3 }, (_, i) => i);
      const outcome = repairMesh(
        { positions, triangles },
        { subject: 'soup', unit: 'mm', remeshEdge: 0.4 },
        kernel,
      );
      if (outcome.mesh) expect(outVolume(outcome)).toBeGreaterThan(0);
      else expect(outcome.findings.some(({ severity }) => severity === 'stop')).toBe(true);
    }),
    { numRuns: 100, seed: 11 },
  );
});
