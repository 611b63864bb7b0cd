import { describe, expect, it } from 'vitest';
import { companded, labAt, linearAt, linearFromLab } from '../../../src/preview/state/wall-ramp.ts';

type Triple = readonly [number, number, number];
const shares = Array.from({ length: 21 }, (_, i) => i / 20);
const deltaE = (p: Triple, q: Triple): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);

/** CIELAB of linear sRGB, the forward formula of CIE 15:2018 with the matrix of IEC 61966-2-1. */
function labOf([r, g, b]: Triple): Triple {
  const fold = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  const x = fold((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.95047);
  const y = fold(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = fold((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

describe('colors of the walls', () => {
  // CIELAB of the sRGB primaries, D65, as any color calculator gives them; white is the reference.
  it.each([
    { lab: [100, 0, 0], rgb: [1, 1, 1] },
    { lab: [53.2408, 80.0925, 67.2032], rgb: [1, 0, 0] },
    { lab: [87.7347, -86.1827, 83.1793], rgb: [0, 1, 0] },
    { lab: [32.297, 79.1875, -107.8602], rgb: [0, 0, 1] },
  ])('CIELAB $lab is linear $rgb', ({ lab, rgb }) => {
    for (const [i, light] of linearFromLab(lab as unknown as Triple).entries())
      expect(light).toBeCloseTo(rgb[i], 2);
  });

  // IEC 61966-2-1: 18 % of light is 118 of 255.
  it('are companded as sRGB', () => {
    expect(Math.round(255 * companded(0.18))).toBe(118);
    expect(companded(1)).toBeCloseTo(1, 9);
  });

  it('can be shown on every screen', () => {
    for (const share of shares) {
      for (const light of linearAt(share)) {
        expect(light).toBeGreaterThanOrEqual(0);
        expect(light).toBeLessThanOrEqual(1);
      }
    }
  });

  it('differ by the same Delta E from step to step, and get lighter all the way', () => {
    const labs = shares.map((share) => labOf(linearAt(share)));
    const step = deltaE(labAt(0), labAt(1)) / 20;
    for (let i = 1; i < labs.length; i++) {
      expect(deltaE(labs[i], labs[i - 1])).toBeCloseTo(step, 1);
      expect(labs[i][0]).toBeGreaterThan(labs[i - 1][0] + 3);
    }
  });

  // Machado, Oliveira, Fernandes, IEEE TVCG 15 (2009) 1291, severity 1; numbers from memory.
  it.each([
    [
      'protanopia',
      [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
    ],
    [
      'deuteranopia',
      [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
    ],
    [
      'tritanopia',
      [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
    ],
  ] as const)('stay apart and in order for %s', (_, m) => {
    const seen = shares.map((share) => {
      const [r, g, b] = linearAt(share);
      const row = (k: number) => Math.min(1, Math.max(0, m[k] * r + m[k + 1] * g + m[k + 2] * b));
      return labOf([row(0), row(3), row(6)]);
    });
    for (let i = 1; i < seen.length; i++) {
      expect(seen[i][0]).toBeGreaterThan(seen[i - 1][0]);
      expect(deltaE(seen[i], seen[i - 1])).toBeGreaterThan(3);
    }
  });
});
