import { describe, expect, it } from 'vitest';
import { type Boss, bossOutline, mouthGap, sidewaysGap, socketOutline } from '../../src/mold/index.ts';
import { exampleBoss } from '../parts/example-mold.ts';

const boss = (changes: Partial<Boss>): Boss =>
  exampleBoss({ kind: 'dome', x: 0, headHeight: 5, clearance: 0.25, ...changes });
const degree = Math.PI / 180;

/** Radius of an outline at a height, from its points; the greatest where it has several. */
function radiusAt(outline: readonly (readonly [number, number])[], z: number): number {
  let most = 0;
  for (let i = 0; i + 1 < outline.length; i++) {
    const [[r0, z0], [r1, z1]] = [outline[i], outline[i + 1]];
    if (z < Math.min(z0, z1) || z > Math.max(z0, z1) || z0 === z1) continue;
    most = Math.max(most, r0 + ((r1 - r0) * (z - z0)) / (z1 - z0));
  }
  return most;
}

/** The least gap at any height past the lead-in, by looking every 0.01 mm. */
function looked(one: Boss): number {
  const [head, socket] = [bossOutline(one, -1, 1e-5), socketOutline(one, -1, 1e-5)];
  let least = Number.POSITIVE_INFINITY;
  for (let z = 0.005; z < one.headHeight; z += 0.01)
    least = Math.min(least, radiusAt(socket, z) - radiusAt(head, z));
  return one.kind === 'hexagon' ? (least * 2) / Math.sqrt(3) : least;
}

describe('how far a head can move sideways in its socket', () => {
  it('is the clearance for a half ball and for a collar: concentric walls', () => {
    expect(sidewaysGap(boss({}))).toBeCloseTo(0.25, 12);
    expect(sidewaysGap(boss({ headHeight: 8 }))).toBeCloseTo(0.25, 6);
  });

  it('is the clearance over the cosine of the lean for a cone: c sqrt(r2 + h2) / h', () => {
    expect(sidewaysGap(boss({ kind: 'cone', headHeight: 6 }))).toBeCloseTo((0.25 * Math.hypot(5, 6)) / 6, 9);
  });

  it('is 2 / sqrt 3 of that to its flats for a hexagon, toward a corner', () => {
    const lean = 10 * degree;
    const hexagon = boss({ kind: 'hexagon', acrossFlats: 10, headDraftRad: lean });
    expect(sidewaysGap(hexagon)).toBeCloseTo(((0.25 / Math.cos(lean)) * 2) / Math.sqrt(3), 9);
  });

  it.each([
    { headHeight: 8 },
    { headHeight: 8, socketDraftRad: 5 * degree },
    { headHeight: 3 },
    { headHeight: 3, socketDraftRad: 2 * degree },
    { headHeight: 4.6, socketDraftRad: 20 * degree },
    { kind: 'cone', headHeight: 6, socketDraftRad: degree },
    { kind: 'hexagon', acrossFlats: 10, headDraftRad: 10 * degree, socketDraftRad: degree },
    { kind: 'hexagon', acrossFlats: 10, headDraftRad: degree, socketDraftRad: 5 * degree },
  ] as const)('is what both outlines leave at some height: %o', (shape) => {
    const one = boss(shape);
    expect(Math.abs(sidewaysGap(one) - looked(one))).toBeLessThan(1e-3);
  });

  it('stays so with drafted walls, which only open toward the mouth', () => {
    const drafted = boss({ headHeight: 8, socketDraftRad: 3 * degree });
    // A line that touches a ball r + c at 3 degrees up is c / cos 3 deg away from the ball r there.
    expect(sidewaysGap(drafted)).toBeCloseTo(0.25 / Math.cos(3 * degree), 12);
    // From there down to the mouth it opens by tan 3 deg.
    const touch = 3 + 5.25 * Math.sin(3 * degree);
    const mouth = 5.25 * Math.cos(3 * degree) + touch * Math.tan(3 * degree) - 5;
    // Round things are drawn to 0.01 mm.
    expect(Math.abs(mouthGap(drafted) - mouth)).toBeLessThan(0.01);
  });
});

it.each([0, 1, 2, 5])('no wall of a socket is nearer upright than its draft of %d degrees', (degrees) => {
  for (const shape of [{ headHeight: 8 }, { headHeight: 3 }, { kind: 'cone', headHeight: 6 }] as const) {
    const outline = socketOutline(boss({ ...shape, socketDraftRad: degrees * degree }), -1);
    // Past the foot below the plane: each step inward is at least its rise times the tangent.
    for (let i = 2; i + 1 < outline.length; i++) {
      const [[r0, z0], [r1, z1]] = [outline[i], outline[i + 1]];
      expect(r0 - r1).toBeGreaterThanOrEqual((z1 - z0) * Math.tan(degrees * degree) - 1e-9);
    }
  }
});

it('what holes come out tighter is added across: every radius by half of it', () => {
  const one = boss({ headHeight: 8, socketDraftRad: degree });
  const [plain, wider] = [0, 0.3].map((holes) => socketOutline(one, -1, 0.01, holes));
  // The tip, a point on the axis, becomes a level of that width; the first point is on the axis below the mouth.
  expect(wider.length).toBe(plain.length + 1);
  for (const [i, [r, z]] of plain.slice(1).entries()) {
    expect(wider[i + 1][0]).toBeCloseTo(r + 0.15, 12);
    expect(wider[i + 1][1]).toBe(z);
  }
});
