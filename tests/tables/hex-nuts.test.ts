import { describe, expect, it } from 'vitest';
import { capNut, hexNut, hexNuts } from '../../src/tables/index.ts';

describe('hexagon nuts', () => {
  // ISO 4032 (BS EN ISO 4032:2001 table 1), two suppliers' tables that agree: size, s, m, least across corners e.
  it.each([
    ['M4', 7, 3.2, 7.66],
    ['M5', 8, 4.7, 8.79],
    ['M6', 10, 5.2, 11.05],
    ['M8', 13, 6.8, 14.38],
    ['M10', 16, 8.4, 17.77],
    ['M12', 18, 10.8, 20.03],
    ['M16', 24, 14.8, 26.75],
    ['M20', 30, 18, 32.95],
  ])('%s has the sizes of ISO 4032', (size, acrossFlats, height, corners) => {
    const nut = hexNut(size);
    expect(nut).toMatchObject({ acrossFlats, height });
    // Sharp corners, 2 s / sqrt 3, lie past the least the standard allows; by up to 6 %.
    const sharp = (2 * (nut?.acrossFlats ?? 0)) / Math.sqrt(3);
    expect(sharp).toBeGreaterThan(corners);
    expect(sharp).toBeLessThan(corners * 1.06);
  });

  // ASME B18.2.2, two suppliers' tables that agree, inches: F basic, H greatest, G least across corners.
  it.each([
    ['1/4', 0.4375, 0.226, 0.488],
    ['5/16', 0.5, 0.273, 0.557],
    ['3/8', 0.5625, 0.337, 0.628],
    ['1/2', 0.75, 0.448, 0.84],
  ])('%s in has the sizes of ASME B18.2.2, in mm', (size, across, high, corners) => {
    const nut = hexNut(size);
    expect(nut?.acrossFlats).toBeCloseTo(across * 25.4, 9);
    expect(nut?.height).toBeCloseTo(high * 25.4, 9);
    expect((2 * across) / Math.sqrt(3) / corners).toBeGreaterThan(1);
    expect((2 * across) / Math.sqrt(3) / corners).toBeLessThan(1.06);
  });

  it('share their widths across flats with cap nuts: DIN 1587 and ISO 4032 both follow ISO 272', () => {
    for (const { size, acrossFlats } of hexNuts) {
      const cap = capNut(size);
      // Inch cap nuts of SAE J483a are as wide.
      if (cap) expect(acrossFlats).toBeCloseTo(cap.acrossFlats, 9);
    }
  });
});
