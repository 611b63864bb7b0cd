import { describe, expect, it } from 'vitest';
import { capNut, capNuts } from '../../src/tables/index.ts';

describe('cap nuts', () => {
  // DIN 1587:2000, read off suppliers' tables: size, s, h, d_k, m.
  it.each([
    ['M4', 7, 8, 6.5, 3.2],
    ['M5', 8, 10, 7.5, 4],
    ['M6', 10, 12, 9.5, 5],
    ['M8', 13, 15, 12.5, 6.5],
    ['M10', 16, 18, 15, 8],
    ['M12', 18, 22, 17, 10],
    ['M16', 24, 28, 23, 13],
  ])('%s has the sizes of DIN 1587', (size, acrossFlats, height, domeDiameter, hexHeight) => {
    expect(capNut(size)).toMatchObject({ acrossFlats, height, domeDiameter, hexHeight });
  });

  // DIN 1587 prints the least width across corners; it is 1.13 times the least width across flats (ISO 4759-1).
  it.each([
    ['M4', 7.66],
    ['M5', 8.79],
    ['M6', 11.05],
    ['M8', 14.38],
    ['M10', 17.77],
    ['M12', 20.03],
    ['M16', 26.75],
  ])('%s: least corners agree with least flats', (size, corners) => {
    expect(1.13 * (capNut(size)?.acrossFlatsMin ?? Number.NaN)).toBeCloseTo(corners, 1);
  });

  // Geometry of the regular hexagon: e = 2 s / sqrt 3, A = (sqrt 3 / 2) s2; s = 10 gives 11.5470 and 86.6025.
  it('M6 idealised is 816.958 mm3: hexagon, collar and half ball', () => {
    const nut = capNut('M6');
    if (!nut) throw new Error('no M6');
    const radius = nut.domeDiameter / 2;
    const hexagon = (Math.sqrt(3) / 2) * nut.acrossFlats ** 2 * nut.hexHeight;
    const collar = Math.PI * radius ** 2 * (nut.height - nut.hexHeight - radius);
    const dome = (2 / 3) * Math.PI * radius ** 3;
    expect((2 * nut.acrossFlats) / Math.sqrt(3)).toBeCloseTo(11.547, 4);
    expect(hexagon + collar + dome).toBeCloseTo(816.958, 3);
  });

  // SAE J483a low crown, Machinery's Handbook 31 p. 1681, inches.
  it.each([
    ['1/4', 0.4375, 0.47, 0.41, 0.22],
    ['5/16', 0.5, 0.53, 0.47, 0.25],
    ['3/8', 0.5625, 0.62, 0.53, 0.28],
  ])('%s in has the sizes of SAE J483a, in mm', (size, acrossFlats, height, dome, hex) => {
    const nut = capNut(size);
    expect(nut?.acrossFlats).toBeCloseTo(acrossFlats * 25.4, 9);
    expect(nut?.height).toBeCloseTo(height * 25.4, 9);
    expect(nut?.domeDiameter).toBeCloseTo(dome * 25.4, 9);
    expect(nut?.hexHeight).toBeCloseTo(hex * 25.4, 9);
  });

  // SAE J483a prints G max across corners, which is the sharp-cornered 2 s / sqrt 3 rounded to 0.001 in.
  it.each([
    ['1/4', 0.505],
    ['5/16', 0.577],
    ['3/8', 0.65],
  ])('%s in: corners agree with flats', (size, corners) => {
    const flats = (capNut(size)?.acrossFlats ?? Number.NaN) / 25.4;
    expect(Math.abs((2 * flats) / Math.sqrt(3) - corners)).toBeLessThan(0.00051);
  });

  it('finds a size as people write it, and none that the standard does not have', () => {
    expect(capNut(' m8 ')?.size).toBe('M8');
    for (const text of ['3/8', '3/8 in', '3/8"', '3/8in.']) expect(capNut(text)?.size).toBe('3/8');
    for (const text of ['M3', 'M7', '3/4', '', '8']) expect(capNut(text)).toBeUndefined();
  });

  it('leaves a collar under every dome, and no dome wider than its hexagon', () => {
    for (const nut of capNuts) {
      expect(nut.height - nut.hexHeight - nut.domeDiameter / 2).toBeGreaterThan(0);
      expect(nut.domeDiameter).toBeLessThan(nut.acrossFlats);
    }
  });
});
