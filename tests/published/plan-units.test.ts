import { expect, test } from 'vitest';
import { type KindName, readQuantity } from '../../src/plan/index.ts';

const read = (text: number | string, kind: KindName): number => {
  const quantity = readQuantity(text, kind);
  if ('fault' in quantity) throw new Error(quantity.fault.code);
  return quantity.value;
};

// Exact by definition, NIST Special Publication 811 (2008), appendix B.8 (factors in bold type there).
test.each<[string, KindName, number]>([
  ['1 in', 'length', 25.4],
  ['1 ft', 'length', 304.8],
  ['1 mil', 'length', 0.0254],
  ['1 um', 'length', 0.001],
  ['1 lb', 'mass', 0.45359237],
  ['1 oz', 'mass', 0.028349523125],
  ['1 lbf', 'force', 4.4482216152605],
  ['1 kgf', 'force', 9.80665],
  ['1 bar', 'pressure', 1e5],
  ['1 kcal/mol', 'molarEnergy', 4184],
  ['1 h', 'time', 3600],
  ['1 min', 'time', 60],
  ['1 ft/s', 'velocity', 0.3048],
  ['1 ft/min', 'velocity', 0.00508],
])('%s as a %s is exactly %f', (text, kind, value) => {
  expect(read(text, kind)).toBe(value);
});

// Rounded there to seven digits.
test.each<[string, KindName, number]>([
  ['1 psi', 'pressure', 6894.757],
  ['1 lb/in3', 'density', 27679.9],
  ['1 deg', 'angle', 0.01745329],
  ['1 lb/ft3', 'density', 16.01846],
  ['1 BTU/(h ft2 F)', 'filmCoefficient', 5.678263],
  ['1 BTU/h/ft2/F', 'filmCoefficient', 5.678263],
  ['1 BTU/(h ft F)', 'conductivity', 1.730735],
  ['1 BTU in/(h ft2 F)', 'conductivity', 0.1442279],
  ['1 ft2/h', 'diffusivity', 0.0000258064],
  ['1 in2/s', 'diffusivity', 0.00064516],
])('%s as a %s is %f to the digits NIST SP 811 prints', (text, kind, value) => {
  expect(Math.abs(read(text, kind) / value - 1)).toBeLessThan(5e-7);
});

// Fixed points of the scales: NIST SP 811 section B.8 gives t/C = (t/F - 32)/1.8 and t/C = T/K - 273.15.
test.each<[string, number]>([
  ['32 F', 0],
  ['212 F', 100],
  ['-40 F', -40],
  ['320 F', 160],
  ['273.15 K', 0],
  ['433.15 K', 160],
])('%s is %f C', (text, value) => {
  expect(read(text, 'temperature')).toBe(value);
});

// A difference of 1 F is 1/1.8 K (NIST SP 811, B.8): what grows by 1e-4 for each F grows by 1.8e-4 for each K.
test.each(['1e-4 /F', '1e-4 in/in/F', '1.8e-4 /C', '1.8e-4 /K'])('%s is 1.8e-4 for each kelvin', (text) => {
  expect(read(text, 'expansion')).toBeCloseTo(1.8e-4, 15);
});

// The inch is 25.4 mm, so every one of these has an exact decimal value, which the nearest double must be.
test.each<[string, number]>([
  ['3/8 in', 9.525],
  ['1 1/2"', 38.1],
  ['1-1/2 in', 38.1],
  ['9 in', 228.6],
  ['1/64 in', 0.396875],
  ['23/64 in', 9.128125],
  ['.1 in', 2.54],
  ['0.3 in', 7.62],
  ['1.1 in', 27.94],
  ['12 7/16 in', 315.9125],
])('%s is exactly %f mm', (text, value) => {
  expect(read(text, 'length')).toBe(value);
});
