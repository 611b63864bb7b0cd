import { describe, expect, it } from 'vitest';
import { measureMesh } from '../../src/mesh/index.ts';
import { coneFrustum, revolved, tetrahedron } from '../revolved-solids.ts';

type Six = readonly [number, number, number, number, number, number];

const near = (value: number, wanted: number, share = 1e-6): void => {
  expect(Math.abs(value - wanted)).toBeLessThanOrEqual(share * Math.max(1, Math.abs(wanted)));
};

describe('tetrahedra', () => {
  // Tonon, "Explicit exact formulas for the 3-D tetrahedron inertia tensor", J. Math. Stat. 1 (2004) 8-11:
  // corners and centroid as printed; the diagonal of the tensor from memory of the print, agreeing with the closed
  // form to 2e-8; volume by the closed form.
  it("measures Tonon's tetrahedron", () => {
    const { volume, centroid, inertia } = measureMesh(
      tetrahedron([
        [8.3322, -11.86875, 0.93355],
        [0.75523, 5, 16.37072],
        [52.61236, 5, -5.3858],
        [2, 5, 3],
      ]),
    );
    near(volume, 1873.23336, 1e-8);
    expect(centroid[0]).toBeCloseTo(15.92492, 4);
    expect(centroid[1]).toBeCloseTo(0.78281, 4);
    expect(centroid[2]).toBeCloseTo(3.72962, 4);
    near(inertia[0], 43520.33257, 1e-7);
    near(inertia[1], 194711.28938, 1e-7);
    near(inertia[2], 191168.76173, 1e-7);
  });

  // Standard closed form of the corner tetrahedron.
  it('measures the corner tetrahedron', () => {
    const corner = tetrahedron([
      [0, 0, 0],
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
    const { volume, area, centroid, inertia, bounds } = measureMesh(corner);
    near(volume, 1 / 6, 1e-12);
    near(area, 1.5 + Math.sqrt(3) / 2, 1e-12);
    for (const value of centroid) near(value, 0.25, 1e-12);
    const wanted: Six = [0.0125, 0.0125, 0.0125, 1 / 480, 1 / 480, 1 / 480];
    for (const [i, value] of inertia.entries()) expect(value).toBeCloseTo(wanted[i], 12);
    expect(bounds).toEqual({ min: [0, 0, 0], max: [1, 1, 1] });
  });
});

/**
 * Exact figures of a regular n-gon of circumradius R: area n/2 R2 sin(2 pi / n), second moment about a diameter
 * n/48 R4 sin(2 pi / n) (4 + 2 cos(2 pi / n)); per area they tend to pi R2 and pi R4 / 4.
 */
const polygon = (n: number, radius: number): { area: number; moment: number } => {
  const sine = Math.sin((2 * Math.PI) / n);
  return {
    area: (n / 2) * radius ** 2 * sine,
    moment: (n / 48) * radius ** 4 * sine * (4 + 2 * Math.cos((2 * Math.PI) / n)),
  };
};

describe('turned solids', () => {
  const n = 360;
  const ratio = polygon(n, 1).area / Math.PI;

  // Prism: V = A h; about its own axis 2 J h; across it J h + A h3 / 12.
  it('measures a cylinder R 10, h 20: the prism exactly, the round one to the chord bound', () => {
    const { volume, centroid, inertia } = measureMesh(
      revolved(
        [
          [0, 0],
          [10, 0],
          [10, 20],
          [0, 20],
        ],
        n,
      ),
    );
    const { area, moment } = polygon(n, 10);
    near(volume, area * 20);
    near(centroid[2], 10);
    near(inertia[2], 2 * moment * 20);
    near(inertia[0], moment * 20 + (area * 20 ** 3) / 12);
    const lost = 1 - ratio;
    expect(Math.abs(volume - 6283.1853) / 6283.1853).toBeLessThan(lost * 1.01);
    expect(Math.abs(inertia[2] / volume - 50)).toBeLessThan(50 * 2 * lost);
    expect(Math.abs(inertia[0] / volume - 58.3333)).toBeLessThan(58.3333 * 2 * lost);
  });

  // Frustum, handbook: V = pi h / 3 (R2 + R r + r2); centroid and axis from the same integrals.
  it('measures a frustum 30 to 20, h 10', () => {
    const { volume, centroid, inertia } = measureMesh(coneFrustum(30, 20, 10, n));
    near(volume, 19896.7535 * ratio);
    near(centroid[2], 4.342105);
    near(inertia[2] / volume, 333.157895 * axisRatio(n));
  });

  it('measures a cone R 30, h 40', () => {
    const { volume, centroid, inertia } = measureMesh(coneFrustum(30, 0, 40, n));
    near(volume, 37699.1118 * ratio);
    near(centroid[2], 10);
    near(inertia[2] / volume, 270 * axisRatio(n));
    // Across: 3/20 R2 (the polygon's share) + 3/80 h2, 195 for the round one.
    near(inertia[0] / volume, 135 * axisRatio(n) + 60);
  });

  // Cap: V = pi h2 (3 R - h) / 3; centroid 3 (2 R - h)2 / (4 (3 R - h)). The outline is a chain of chords, hence a
  // bound: the profile's chords lose at most their sagitta over the cap's area.
  it('measures a cap R 10, h 4', () => {
    const steps = 200;
    const from = Math.asin(0.6);
    const arc = Array.from({ length: steps + 1 }, (_, i): [number, number] => {
      const angle = from + ((Math.PI / 2 - from) * i) / steps;
      return [i === steps ? 0 : 10 * Math.cos(angle), 10 * Math.sin(angle)];
    });
    const { volume, centroid, inertia } = measureMesh(revolved([[0, 6], ...arc], n));
    expect(volume).toBeLessThan(435.634181);
    expect(volume).toBeGreaterThan(435.634181 * ratio * (1 - 2e-5));
    expect(centroid[2]).toBeCloseTo(7.384615, 3);
    expect(inertia[2] / volume).toBeCloseTo(22.276923, 2);
  });

  // Torus: V = 2 pi2 R r2; per mass R2 + 3/4 r2 about the axis, R2 / 2 + 5/8 r2 across. Pappus: a turned m-gon has
  // exactly its area times the ring's length, the ring itself being an n-gon.
  it('measures a torus 20, 5', () => {
    const m = 96;
    const circle = Array.from({ length: m }, (_, i): [number, number] => {
      const angle = (2 * Math.PI * i) / m;
      return [20 + 5 * Math.cos(angle), 5 * Math.sin(angle)];
    });
    const { volume, centroid, inertia } = measureMesh(revolved(circle, n));
    near(volume, polygon(m, 5).area * 2 * Math.PI * 20 * ratio);
    expect(Math.abs(volume - 9869.6044) / 9869.6044).toBeLessThan(
      1 - ratio * (polygon(m, 1).area / Math.PI) + 1e-6,
    );
    for (const value of centroid) expect(value).toBeCloseTo(0, 5);
    expect(inertia[2] / volume).toBeCloseTo(418.75, 0);
    expect(inertia[0] / volume).toBeCloseTo(215.625, 0);
    expect(Math.abs(inertia[2] / volume - 418.75) / 418.75).toBeLessThan(
      4 * (1 - polygon(m, 1).area / Math.PI),
    );
  });
});

/** Polar moment per area of the n-gon over that of its circumscribed circle (R2 / 2). */
function axisRatio(n: number): number {
  const { area, moment } = polygon(n, 1);
  return (2 * moment) / area / 0.5;
}

describe('measures do not depend on the frame', () => {
  it('moves far from the origin without losing the inertia', () => {
    const at = (shift: number): Float64Array =>
      Float64Array.from(
        [
          [0, 0, 0],
          [3, 0, 0],
          [0, 2, 0],
          [0, 0, 1],
        ].flat(),
        (value) => value + shift,
      );
    const triangles = Uint32Array.from([0, 2, 1, 0, 1, 3, 1, 2, 3, 2, 0, 3]);
    const here = measureMesh({ positions: at(0), triangles });
    const far = measureMesh({ positions: at(1e5), triangles });
    near(far.volume, here.volume, 1e-9);
    for (const [i, value] of far.inertia.entries()) near(value, here.inertia[i], 1e-9);
  });

  it('turns the sign of an inverted mesh, and says nothing encloses nothing', () => {
    const { positions, triangles } = coneFrustum(3, 2, 1, 12);
    const inverted = triangles.slice().reverse();
    near(
      measureMesh({ positions, triangles: inverted }).volume,
      -measureMesh({ positions, triangles }).volume,
      1e-12,
    );
    expect(measureMesh({ positions, triangles: new Uint32Array() }).volume).toBe(0);
  });
});
