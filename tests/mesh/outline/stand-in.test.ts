import { beforeAll, describe, expect, it } from 'vitest';
import { type Kernel, loadKernel } from '../../../src/kernel/index.ts';
import { measureMesh, readOutline, standIn } from '../../../src/mesh/index.ts';

let kernel: Kernel;
beforeAll(async () => {
  kernel = await loadKernel();
});

describe('stand-ins', () => {
  it('of length and width is a box: length along x', () => {
    const { volume, bounds, centroid } = measureMesh(
      standIn({ length: 30, width: 20, above: 4, below: 6 }, kernel),
    );
    expect(volume).toBeCloseTo(6000, 2);
    expect(bounds).toEqual({ min: [-15, -10, -6], max: [15, 10, 4] });
    expect(centroid[2]).toBeCloseTo(-1, 5);
  });

  it('of a washer drawn in SVG has the volume pi (R2 - r2) h, to the chord', () => {
    const text =
      '<svg width="40mm" height="40mm" viewBox="0 0 40 40"><circle cx="20" cy="20" r="15"/><circle cx="20" cy="20" r="6"/></svg>';
    const { paths } = readOutline(new TextEncoder().encode(text), 'washer.svg');
    if (!paths) throw new Error('not read');
    const { volume } = measureMesh(standIn({ outline: paths, above: 0, below: 2 }, kernel));
    const round = Math.PI * (225 - 36) * 2;
    expect(Math.abs(volume - round)).toBeLessThan(2 * 2 * Math.PI * 15 * 0.01);
  });

  it('refuses to be flat or without size', () => {
    expect(() => standIn({ length: 30, width: 20, above: 0, below: 0 }, kernel)).toThrow(RangeError);
    expect(() => standIn({ length: 0, width: 20, above: 1, below: 0 }, kernel)).toThrow(RangeError);
  });
});
