import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { measureMesh } from '../../src/mesh/index.ts';
import { prismUnder } from '../../src/mold/index.ts';
import { blockCells } from '../../src/mold/parting/lattice.ts';
import { network } from '../../src/mold/parting/network.ts';
import { pairEdges } from '../parts/pairing.ts';

const nodes = 2 * blockCells + 1;
const lattice = { cell: 0.1, x0: -3, y0: 2, nx: nodes, ny: nodes };
const side = 2 * blockCells * lattice.cell;

const fieldOf = (height: (u: number, v: number) => number): Float32Array =>
  Float32Array.from({ length: nodes * nodes }, (_, k) =>
    height((k % nodes) / (nodes - 1), Math.floor(k / nodes) / (nodes - 1)),
  );

describe('the triangulated network', () => {
  test('a plane needs two triangles for each block and is exact', () => {
    const { sheet, error } = network(
      fieldOf((u, v) => 2 * u - v),
      lattice,
      0.01,
    );
    expect(sheet.triangles.length / 3).toBe(8);
    expect(error).toBeLessThan(1e-6);
  });

  test('keeps within the tolerance at every node, closes without cracks, and says its true error', () => {
    const bump = fc.record({
      u: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      v: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
      width: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      height: fc.double({ min: -4, max: 4, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(bump, { minLength: 1, maxLength: 4 }), (bumps) => {
        const heights = fieldOf((u, v) =>
          bumps.reduce(
            (sum, b) =>
              sum +
              b.height *
                Math.max(0, 1 - Math.hypot(u - b.u, v - b.v) / b.width) *
                16 *
                u *
                (1 - u) *
                v *
                (1 - v),
            0,
          ),
        );
        const { sheet, error } = network(heights, lattice, 0.01);
        expect(error).toBeLessThanOrEqual(0.01);
        const prism = prismUnder(sheet, -30);
        expect(pairEdges(prism)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
        // Volume under the sheet: the trapezoidal sum over the nodes, each off by the error at most.
        const sum = heights.reduce(
          (all, height, k) => all + height * weight(k % nodes) * weight(Math.floor(k / nodes)),
          0,
        );
        const wanted = sum * lattice.cell ** 2 + 30 * side * side;
        expect(Math.abs(measureMesh(prism).volume - wanted)).toBeLessThan(0.011 * side * side);
      }),
      { seed: 20240611, numRuns: 25 },
    );
  });

  test('a prism above the sheet is closed as well and has the rest of the volume', () => {
    const heights = fieldOf((u, v) => 16 * u * (1 - u) * v * (1 - v));
    const { sheet } = network(heights, lattice, 0.01);
    const [under, over] = [prismUnder(sheet, -2), prismUnder(sheet, 3)];
    expect(pairEdges(over)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
    expect(measureMesh(under).volume + measureMesh(over).volume).toBeCloseTo(5 * side * side, 3);
    expect(() => prismUnder(sheet, 0.5)).toThrow(RangeError);
  });
});

const weight = (index: number): number => (index === 0 || index === nodes - 1 ? 0.5 : 1);
