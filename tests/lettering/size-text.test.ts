import { describe, expect, test } from 'vitest';
import {
  contoursText,
  contourText,
  depthText,
  diameterText,
  inchesText,
  resized,
  sizeText,
} from '../../src/lettering/index.ts';

// Inches worked by hand: 228.6 / 25.4 = 9, 6 / 25.4 = 0.23622, 4.04 / 25.4 = 0.15906.
describe('sizes as they are engraved', () => {
  test.each([
    [230, '230 mm', '9.055 in'],
    [228.6, '228.6 mm', '9 in'],
    [228.64, '228.6 mm', '9.002 in'],
    [0.05 * 2, '0.1 mm', '0.004 in'],
  ])('a diameter of %d', (size, metric, inch) => {
    expect(diameterText(size, 'metric')).toBe(metric);
    expect(diameterText(size, 'inch')).toBe(inch);
  });

  test('a depth keeps its tenth, in inches its thousandth without a nought, an inch scale its whole numbers', () => {
    expect([0, 6, 4.25, 12.449].map((mm) => depthText(mm, 'metric'))).toEqual(['0.0', '6.0', '4.3', '12.4']);
    expect([0, 6, 25.4, 26.67].map((mm) => depthText(mm, 'inch'))).toEqual([
      '.000',
      '.236',
      '1.000',
      '1.050',
    ]);
    expect(inchesText(3)).toBe('3 IN');
  });

  test('a size a person chose is said as it was chosen', () => {
    expect([12, 9.5, 10.414000000000001].map((mm) => sizeText(mm, 'metric'))).toEqual([
      '12',
      '9.5',
      '10.414',
    ]);
    expect([9.525, 38.1, 12.7, 25.4, 10.414, 0.3].map((mm) => sizeText(mm, 'inch'))).toEqual([
      '3/8 in',
      '1 1/2 in',
      '1/2 in',
      '1 in',
      '.410 in',
      '.012 in',
    ]);
  });

  test('heights of contours and the share a master is enlarged by', () => {
    expect(contoursText(4.04, 1, 'metric')).toBe('4.0 mm high, contours every 1 mm');
    expect(contoursText(4.04, 25.4 / 32, 'inch')).toBe('.159 in high, contours every 1/32 in');
    expect([1, 12].map((mm) => contourText(mm, 'metric'))).toEqual(['1', '12']);
    expect([1, 2, 33].map((n) => contourText((n * 25.4) / 32, 'inch'))).toEqual(['1/32', '1/16', '1 1/32']);
    expect(resized(1 / (0.995 * 0.98))).toBe('enlarged by 2.55 %');
    expect(resized(0.99)).toBe('reduced by 1.00 %');
  });
});
