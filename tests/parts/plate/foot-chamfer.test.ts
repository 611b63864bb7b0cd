import { describe, expect, test } from 'vitest';
import { circle, hole, type Point2, polygon, segmentsFor } from '../../../src/geometry/index.ts';
import { loadKernel, onGrid } from '../../../src/kernel/index.ts';
import { thinnestWall } from '../../../src/mesh/index.ts';
import { plateBody } from '../../../src/parts/plate/plate-body.ts';

const kernel = await loadKernel();
const chordError = 0.01;

/** Volume (mm3) that a foot chamfer takes off a plate 3 mm thick, and the plate's lowest and highest section. */
const off = (outline: Parameters<typeof plateBody>[1]['outline'], footChamfer: number) =>
  kernel.scope((scope) => {
    const plate = { outline, thickness: 3, engraved: [] };
    const plain = plateBody(scope, plate, { chordError }, 'plain');
    const chamfered = plateBody(scope, plate, { chordError, footChamfer }, 'chamfered');
    return {
      volume: plain.volume() - chamfered.volume(),
      pieces: scope.pieces(chamfered, 'chamfered').length,
      at: (z: number) => scope.slice(chamfered, z).area(),
      foot: scope.slice(chamfered, 1e-6).area(),
      above: scope.slice(chamfered, footChamfer + 1e-6).area() / scope.slice(plain, 1).area(),
    };
  });

describe('chamfer of the edge a plate stands on', () => {
  const [r, c] = [40, 0.4];
  const n = segmentsFor(r, chordError);

  test('of a disc: Pappus, a triangle c2 / 2 carried round by its centroid, 2 pi (R - c / 3)', () => {
    const { volume, above } = off([circle([0, 0], r)], c);
    const pappus = ((c * c) / 2) * 2 * Math.PI * (r - c / 3);
    // The polygon is inside the circle by the chord error, so its edge is that much shorter at most.
    expect(volume / pappus).toBeLessThan(1);
    expect(volume / pappus).toBeGreaterThan(1 - chordError / r - 1e-6);
    expect(above).toBeCloseTo(1, 6);
  });

  test('of its polygon exactly: n tan(pi / n) times the integral of a2 - (a - c + z)2', () => {
    const a = r * Math.cos(Math.PI / n);
    const exact = n * Math.tan(Math.PI / n) * (a * a * c - (a ** 3 - (a - c) ** 3) / 3);
    expect(off([circle([0, 0], r)], c).volume / exact).toBeCloseTo(1, 6);
  });

  test('of a hole: the triangle lies outside of it, 2 pi (r + c / 3)', () => {
    const ring = [polygon(square(60)), hole([0, 0], 10)];
    const taken = off(ring, c).volume - off([polygon(square(60))], c).volume;
    const pappus = ((c * c) / 2) * 2 * Math.PI * (10 + c / 3);
    expect(taken / pappus).toBeGreaterThan(1);
    expect(taken / pappus).toBeLessThan(1.002);
  });

  test('of a square: integral of s2 - (s - 2 (c - z))2; with a step inward the inner corner is a cone', () => {
    const s = 60;
    const exact = s * s * c - (s ** 3 - (s - 2 * c) ** 3) / 6;
    expect(off([polygon(square(s))], c).volume / exact).toBeCloseTo(1, 5);
    // An L of the same width and height has as much edge. Of its five outer corners each spares the c3 / 3 that two
    // slopes share, one more than the square's; round its inner corner a quarter of a cone goes, in steps of 15 degrees: c3 sin(15) (a
    // round one: pi c3 / 12).
    const ell: Point2[] = [
      [0, 0],
      [s, 0],
      [s, 20],
      [20, 20],
      [20, s],
      [0, s],
    ];
    const more = c ** 3 * Math.sin(Math.PI / 12) - c ** 3 / 3;
    expect(off([polygon(ell)], c).volume - exact).toBeCloseTo(more, 4);
  });

  test('where openings are nearer to each other than twice the chamfer the wall loses height, and nothing breaks', () => {
    const near = [polygon(square(60)), hole([-5.2, 0], 5), hole([5.2, 0], 5)];
    const one = off(near, 1);
    expect(one.pieces).toBe(1);
    expect(one.above).toBeCloseTo(1, 6);
  });

  test('leaves no burrs at inner corners: the thinnest wall is the plate itself', () => {
    const star = Array.from({ length: 9 }, (_, k): Point2 => {
      const [angle, far] = [(-2 * Math.PI * k) / 9, 9 + (k % 3) * 2];
      return [far * Math.cos(angle), far * Math.sin(angle)];
    });
    const mesh = kernel.scope((scope) => {
      const plate = { outline: [polygon(square(60)), polygon(star)], thickness: 3, engraved: [] };
      return onGrid(scope.toMesh(plateBody(scope, plate, { chordError, footChamfer: c }, 'star')));
    });
    expect(thinnestWall(mesh, 20000)?.thickness).toBeGreaterThan(3 - 0.01);
    const heights = mesh.positions.filter((_, i) => i % 3 === 2);
    expect(heights.filter((z) => z > c + 1e-3 && z < 3 - 1e-3)).toHaveLength(0);
  });

  test('goes up half the thickness at most', () => {
    const { volume } = off([polygon(square(60))], 5);
    const half = 1.5;
    expect(volume / (60 * 60 * half - (60 ** 3 - 57 ** 3) / 6)).toBeCloseTo(1, 5);
  });
});

const square = (side: number): Point2[] => {
  const h = side / 2;
  return [
    [-h, -h],
    [h, -h],
    [h, h],
    [-h, h],
  ];
};
