import { beforeAll, expect, test } from 'vitest';
import { segmentsFor } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import type { Boss, Tools } from '../../src/mold/index.ts';
import { labelDepth } from '../../src/parts/making/label.ts';
import { uprightBoss } from '../../src/parts/registration/boss-body.ts';
import { bosses } from '../../src/parts/registration/bosses.ts';
import { capNut } from '../../src/tables/index.ts';
import { exampleMold, polygonShare, solidsOf, volumeOf } from '../parts/example-mold.ts';
import { pairEdges } from '../parts/pairing.ts';

let tools: Tools;
beforeAll(async () => {
  tools = { kernel: await loadKernel() };
});

function nut(size: string): Boss {
  const row = capNut(size);
  if (!row) throw new Error(`no cap nut ${size}`);
  return {
    id: size,
    kind: 'cap nut',
    x: 0,
    y: 0,
    turnRad: 0,
    size,
    acrossFlats: row.acrossFlats,
    rootDepth: row.hexHeight,
    headRadius: row.domeDiameter / 2,
    headHeight: row.height - row.hexHeight,
    clearance: 0,
  };
}

const solidOf = (size: string, chordError: number) => {
  const { fixture } = exampleMold();
  const mold = exampleMold({
    process: 'rubber',
    bosses: [nut(size)],
    fixture: { ...fixture, chordError },
  });
  return solidsOf(bosses, mold, tools)[0];
};

/** Without the size engraved under its root. */
const plainVolume = (size: string, chordError: number): number =>
  tools.kernel.scope((scope) => volumeOf(scope.toMesh(uprightBoss(scope, nut(size), chordError, 'pin'))));

// DIN 1587, idealised: hexagon (sqrt(3) / 2) s^2 m, collar and half ball of d_k, dome radius d_k / 2.
const idealised = (s: number, m: number, dk: number, h: number): number =>
  (Math.sqrt(3) / 2) * s * s * m +
  Math.PI * (dk / 2) ** 2 * (h - m - dk / 2) +
  (2 / 3) * Math.PI * (dk / 2) ** 3;

test('DIN 1587 M6 as hexagon 10 x 5, collar 9.5 x 2.25 and half ball R 4.75: 816.958 mm3', () => {
  expect(idealised(10, 5, 9.5, 12)).toBeCloseTo(816.958, 3);
  // A chord error of 1e-4 mm leaves a few 1e-5 of the round volume.
  expect(volumeOf(solidOf('M6', 1e-4).mesh) / 816.958).toBeCloseTo(1, 4);
});

test.each([
  ['M4', 7, 3.2, 6.5, 8],
  ['M8', 13, 6.5, 12.5, 15],
  ['M10', 16, 8, 15, 18],
  ['M12', 18, 10, 17, 22],
  ['M16', 24, 13, 23, 28],
])(
  'DIN 1587 %s keeps to its idealised volume within the chord bound, one closed ball',
  (size, s, m, dk, h) => {
    const { mesh } = solidOf(size, 0.01);
    const plain = plainVolume(size, 0.01);
    const round = idealised(s, m, dk, h);
    expect(plain).toBeLessThan(round);
    // Every chord is within 0.01 mm of its arc: the head's surface, under 2 pi r (collar + r), by that.
    expect(round - plain).toBeLessThan(0.02 * Math.PI * dk * (h - m));
    // The solid lacks its engraved size beside: strokes under half of the round face they stand in.
    const engraved = plain - volumeOf(mesh);
    expect(engraved).toBeGreaterThan(s < 10 ? -1e-3 : 1);
    expect(engraved).toBeLessThan(s < 10 ? 1e-3 : (Math.PI / 2) * (s / 2) ** 2 * labelDepth);
    expect(pairEdges(mesh)).toEqual({ unpaired: 0, flat: 0, euler: 2 });
  },
);

// SAE J483a low crown, Machinery's Handbook 31 p. 1681; which letter is which column is assumed.
test('inch cap nut 3/8: 9/16 in hexagon, .53 in body', () => {
  const inch = 25.4;
  const round = idealised(0.5625 * inch, 0.28 * inch, 0.53 * inch, 0.62 * inch);
  const { mesh, id } = solidOf('3/8', 0.001);
  expect(volumeOf(mesh) / round).toBeCloseTo(1, 3);
  expect(id).toBe('boss-cap-nut-3-8');
});

test('the polygonal head of a cap nut, to 1e-6: n-gon share of collar and of the half ball drawn with chords', () => {
  const { headRadius: r } = nut('M6');
  const n = segmentsFor(r, 0.01);
  const { mesh } = solidOf('M6', 0.01);
  const hexagon = (Math.sqrt(3) / 2) * 100 * 5;
  // Half ball: frusta between the arc's points, spaced evenly so that no chord strays over 0.01 mm.
  const steps = Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - 0.01 / r)) - 1e-9);
  let ball = 0;
  for (let i = 0; i < steps; i++) {
    const [a, b] = [i, i + 1].map((k) => (Math.PI / 2) * (k / steps));
    const [ra, rb] = [r * Math.cos(a), r * Math.cos(b)];
    ball += ((Math.PI * r * (Math.sin(b) - Math.sin(a))) / 3) * (ra * ra + ra * rb + rb * rb);
  }
  const head = (Math.PI * r * r * 2.25 + ball) * polygonShare(n);
  expect(volumeOf(mesh) / (hexagon + head)).toBeCloseTo(1, 6);
});
