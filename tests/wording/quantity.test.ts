import { describe, expect, it } from 'vitest';
import { placeText, showQuantity, showSize } from '../../src/wording/index.ts';

// Factors: inch 25.4 mm, pound 453.59237 g, ounce a sixteenth of it, pound-force 4.4482216152605 N, psi 6894.757... Pa:
// NIST Special Publication 811 (2008), appendix B.8; F = 1.8 C + 32 by definition.
describe('a value in both systems, the person’s own first', () => {
  it.each([
    [25.4, 'mm', '25.40 mm (1.000 in)', '1.000 in (25.40 mm)'],
    [0, 'mm', '0.00 mm (0.000 in)', '0.000 in (0.00 mm)'],
    [-1e-9, 'mm', '0.00 mm (0.000 in)', '0.000 in (0.00 mm)'],
    [0.004, 'mm', '0.0040 mm (0.00016 in)', '0.00016 in (0.0040 mm)'],
    [645.16, 'mm2', '6.45 cm2 (1.000 in2)', '1.000 in2 (6.45 cm2)'],
    [16387.064, 'mm3', '16.387 cm3 (1.0000 in3)', '1.0000 in3 (16.387 cm3)'],
    [2e6, 'mm3', '2000 cm3 (122.0 in3)', '122.0 in3 (2000 cm3)'],
    [-40, 'C', '-40 C (-40 F)', '-40 F (-40 C)'],
    [4.4482216152605, 'N', '4.4 N (1.0 lbf)', '1.0 lbf (4.4 N)'],
    [6894.757293168, 'Pa', '6.9 kPa (1.00 psi)', '1.00 psi (6.9 kPa)'],
    [155, 'C', '155 C (311 F)', '311 F (155 C)'],
    [28.349523125, 'g', '28.35 g (1.000 oz)', '1.000 oz (28.35 g)'],
    [0.45359237, 'kg', '0.454 kg (1.000 lb)', '1.000 lb (0.454 kg)'],
    [720.0778873, 'g.mm', '720 g.mm (1.000 oz.in)', '1.000 oz.in (720 g.mm)'],
    [4448.2216, 'N', '4.45 kN (1000 lbf)', '1000 lbf (4.45 kN)'],
    [1.3558179483314, 'N.m', '1.4 N m (1.0 lbf ft)', '1.0 lbf ft (1.4 N m)'],
    [100, 'N.m', '100.0 N m (73.8 lbf ft)', '73.8 lbf ft (100.0 N m)'],
    [6894757.293, 'Pa', '6.89 MPa (1000 psi)', '1000 psi (6.89 MPa)'],
    [3.048, 'm/s', '3.05 m/s (10.0 ft/s)', '10.0 ft/s (3.05 m/s)'],
  ] as const)('%s %s', (value, unit, metric, inch) => {
    expect(showQuantity(value, unit, 'metric')).toBe(metric);
    expect(showQuantity(value, unit, 'inch')).toBe(inch);
  });

  it.each([
    [12.34, 'deg', '12.3 deg'],
    [0.97, 'deg', '0.97 deg'],
    [90, 's', '1.5 min'],
    [42.3, 's', '42 s'],
    [4.23, 's', '4.2 s'],
    [0, 's', '0.0 min'],
    [1.234, 'money', '1.23'],
    [0.125, 'ratio', '12.5 %'],
    [3, 'count', '3'],
    [2.5, 'times', '2.5 times'],
    [600, 'rpm', '600 rpm'],
    [84, 'bytes', '84 bytes'],
    [250_000, 'bytes', '250 kB'],
    [50_000_000, 'bytes', '50.0 MB'],
  ] as const)('%s %s reads alike in both', (value, unit, text) => {
    expect(showQuantity(value, unit, 'metric')).toBe(text);
    expect(showQuantity(value, unit, 'inch')).toBe(text);
  });

  it('gives places and sizes in the one unit', () => {
    expect(placeText([25.4, -12.7, 0], 'metric')).toBe('(25.4, -12.7, 0.0) mm');
    expect(placeText([25.4, -12.7, 0], 'inch')).toBe('(1.00, -0.50, 0.00) in');
    expect(showSize([25.4, 50.8], 'inch')).toBe('1.00 x 2.00');
  });
});
