import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deviation } from '../../../src/mesh/repair/deviation.ts';
import { TriangleTree } from '../../../src/mesh/repair/triangle-tree.ts';
import { asMesh, ball, box, insideOut, together, torus, without } from '../rough-shapes.ts';

const shape = torus(20, 5, 96, 48);
const tree = new TriangleTree(asMesh(shape));
const within = fc.double({ min: -30, max: 30, noNaN: true });

/** Signed distance to a round torus (negative inside): closed form. */
const toTorus = (x: number, y: number, z: number): number => Math.hypot(Math.hypot(x, y) - 20, z) - 5;

test('winding number of a torus is 1 inside and 0 outside', () => {
  fc.assert(
    fc.property(within, within, within, (x, y, z) => {
      // The polygon is inside the round torus by less than 0.02 + 0.01 mm (chord errors of 96 and 48 sides).
      fc.pre(Math.abs(toTorus(x, y, z)) > 0.05);
      expect(Math.abs(tree.windingAt(x, y, z) - (toTorus(x, y, z) < 0 ? 1 : 0))).toBeLessThan(0.06);
    }),
    { numRuns: 2000, seed: 3 },
  );
});

test('distance to a torus is the closed form to its chord error, and no farther than the limit', () => {
  fc.assert(
    fc.property(within, within, within, (x, y, z) => {
      const exact = Math.abs(toTorus(x, y, z));
      expect(Math.abs(tree.distanceTo(x, y, z) - exact)).toBeLessThan(0.05);
      expect(tree.distanceTo(x, y, z, 2)).toBeCloseTo(Math.min(2, tree.distanceTo(x, y, z)), 9);
    }),
    { numRuns: 2000, seed: 4 },
  );
});

test('distances to a box: face, edge and corner', () => {
  const cube = new TriangleTree(asMesh(box([10, 10, 10])));
  expect(cube.distanceTo(5, 5, 13)).toBeCloseTo(3, 9);
  expect(cube.distanceTo(13, 5, 14)).toBeCloseTo(5, 9);
  expect(cube.distanceTo(-1, -2, -2)).toBeCloseTo(3, 9);
  expect(cube.distanceTo(5, 5, 4)).toBeCloseTo(4, 9);
});

test('solid angles: a lidless cube is seen 5/6 from its middle', () => {
  const lidless = without(box([10, 10, 10]), (face) => face === 2 || face === 3);
  expect(new TriangleTree(asMesh(lidless)).windingAt(5, 5, 5)).toBeCloseTo(5 / 6, 12);
});

test('overlaps count twice, inside out counts negative', () => {
  const both = together(box([10, 10, 10]), box([10, 10, 10], [5, 5, 5]));
  expect(new TriangleTree(asMesh(both)).windingAt(7, 7, 7)).toBeCloseTo(2, 1);
  expect(new TriangleTree(asMesh(insideOut(box([10, 10, 10])))).windingAt(3, 4, 5)).toBeCloseTo(-1, 6);
});

test('deviation between two balls is the difference of their radii, to the chord', () => {
  const outer = asMesh(ball(10, 96));
  const inner = new TriangleTree(asMesh(ball(9.5, 96)));
  const { greatest, rms } = deviation(outer, inner);
  const chord = 10 * (1 - Math.cos(Math.PI / 96) ** 2);
  expect(greatest).toBeGreaterThan(0.5 - 1e-6);
  expect(greatest).toBeLessThan(0.5 + chord);
  expect(Math.abs(rms - 0.5)).toBeLessThan(chord);
});
