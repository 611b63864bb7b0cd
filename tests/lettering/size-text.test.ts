import { describe, expect, test } from 'vitest';
import { contoursText, diameterText, inchesText, percentOver, tenths } from '../../src/lettering/index.ts';

describe('sizes as they are engraved', () => {
  test.each([
    [230, '230 mm'],
    [228.6, '228.6 mm'],
    [228.64, '228.6 mm'],
    [0.05 * 2, '0.1 mm'],
  ])('a diameter of %d', (size, text) => expect(diameterText(size)).toBe(text));

  test('a depth keeps its tenth, an inch scale its whole numbers', () => {
    expect([0, 6, 4.25, 12.449].map(tenths)).toEqual(['0.0', '6.0', '4.3', '12.4']);
    expect(inchesText(3)).toBe('3 IN');
  });

  test('heights of contours and the share a master is enlarged by', () => {
    expect(contoursText(4.04, 1)).toBe('4.0 mm high, contours every 1 mm');
    expect(percentOver(1 / (0.995 * 0.98))).toBe('2.55 %');
    expect(percentOver(0.99)).toBe('-1.00 %');
  });
});
