import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type KindName, quantityFinding, readQuantity } from '../../src/plan/index.ts';
import { quantityKinds } from '../../src/plan/unit-table.ts';
import { saysOf } from '../said.ts';

const value = (text: number | string, kind: KindName): number | string => {
  const quantity = readQuantity(text, kind);
  return 'fault' in quantity ? quantity.fault.code : quantity.value;
};

test.each<[number | string, KindName, number]>([
  [9, 'length', 9],
  ['9', 'length', 9],
  ['12.5mm', 'length', 12.5],
  [' 12.5  mm ', 'length', 12.5],
  ['1.5 CM', 'length', 15],
  ['9 Inches', 'length', 228.6],
  ['3/8in', 'length', 9.525],
  ['3/8"', 'length', 9.525],
  ['3/8″', 'length', 9.525],
  ['⅜ in', 'length', 9.525],
  ['1½"', 'length', 38.1],
  ['1⁄2 in', 'length', 12.7],
  ['-1/2 in', 'length', -12.7],
  ['-1 1/2 in', 'length', -38.1],
  ['−5', 'length', -5],
  ['+5', 'length', 5],
  ['50 µm', 'length', 0.05],
  ['50 μm', 'length', 0.05],
  ['1e2 mm', 'length', 100],
  ['180', 'angle', Math.PI],
  ['180°', 'angle', Math.PI],
  ['0.5 rad', 'angle', 0.5],
  ['400 rpm', 'speed', 400],
  ['10 rev/s', 'speed', 600],
  ['320 °F', 'temperature', 160],
  ['320F', 'temperature', 160],
  [160, 'temperature', 160],
  ['2 h', 'time', 7200],
  [120, 'time', 7200],
  ['1 h 30 min', 'time', 5400],
  ['1h30min', 'time', 5400],
  ['0.4 MPa', 'pressure', 400_000],
  ['4 kg', 'mass', 4],
  ['4.2 g', 'mass', 0.0042],
  ['7.28 g/cm³', 'density', 7280],
  ['90 kJ/mol', 'molarEnergy', 90_000],
  ['0.11 mm2/s', 'diffusivity', 1.1e-7],
  ['1.2 %', 'share', 0.012],
  ['1.2%', 'share', 0.012],
  [0.012, 'share', 0.012],
])('%o as a %s is %f', (text, kind, expected) => {
  expect(value(text, kind)).toBe(expected);
});

test.each<[number | string, KindName, string]>([
  ['3,5 mm', 'length', 'plan.decimal-comma'],
  [',5 mm', 'length', 'plan.decimal-comma'],
  ['1,000 mm', 'length', 'plan.decimal-comma'],
  ['9 inn', 'length', 'plan.wrong-unit'],
  ['9 C', 'length', 'plan.wrong-unit'],
  ['9 mm', 'angle', 'plan.wrong-unit'],
  ['9 mm 3', 'length', 'plan.wrong-unit'],
  ['9 in 3 mm', 'length', 'plan.wrong-unit'],
  [200, 'pressure', 'plan.wrong-unit'],
  ['200', 'pressure', 'plan.wrong-unit'],
  // A millipascal is not a megapascal.
  ['0.4 mPa', 'pressure', 'plan.wrong-unit'],
  ['', 'length', 'plan.quantity'],
  ['in', 'length', 'plan.quantity'],
  ['wide', 'length', 'plan.quantity'],
  ['1/0 in', 'length', 'plan.quantity'],
  ['1.2.3', 'length', 'plan.quantity'],
  ['1.5/2 in', 'length', 'plan.wrong-unit'],
  ['7/8', 'length', 'plan.quantity'],
  ['1 1/2', 'length', 'plan.quantity'],
  ['⅞', 'length', 'plan.quantity'],
  ['--3', 'length', 'plan.quantity'],
  ['.', 'length', 'plan.quantity'],
  ['1e999', 'length', 'plan.quantity'],
  ['0x10', 'length', 'plan.wrong-unit'],
  ['9'.repeat(1000), 'length', 'plan.quantity'],
])('%o as a %s is refused: %s', (text, kind, code) => {
  expect(value(text, kind)).toBe(code);
});

test('a refusal shows the text and what would be accepted', () => {
  const quantity = readQuantity('9 mm', 'angle');
  if (!('fault' in quantity)) throw new Error('it was read');
  expect(saysOf(quantityFinding(quantity.fault, 'turn'))).toBe(
    '`9 mm` is not an angle, for `mm` is a unit of length; accepted: deg, rad (a bare number is deg), such as `30` or `30 deg` or `0.5 rad`.',
  );
});

test.each([
  ['7/8', '7/8 in'],
  ['1½', '1 1/2 in'],
])('a bare fraction %s is asked about', (text, meant) => {
  const quantity = readQuantity(text, 'length');
  if (!('fault' in quantity)) throw new Error('it was read');
  expect(saysOf(quantityFinding(quantity.fault, 'disc.thickness'))).toContain(`did you mean \`${meant}\`?`);
});

test('a fraction of anything but a length needs no unit more than other numbers do', () => {
  expect(value('1/2', 'share')).toBe(0.5);
  expect(value('1/2', 'angle')).toBe(Math.PI / 360);
});

test('the examples shown to people are read themselves', () => {
  for (const [kind, { examples }] of Object.entries(quantityKinds)) {
    for (const example of examples) expect(value(example, kind as KindName), example).toBeTypeOf('number');
  }
});

test('any text gives a finite number or a fault, never a throw', () => {
  const kinds = Object.keys(quantityKinds) as KindName[];
  const pieces = fc.array(
    fc.oneof(
      fc.string({ maxLength: 3 }),
      fc.constantFrom('1', '/', ' ', '.', 'e', '-', 'in', '"', '%', ',', '°', '½', 'h'),
    ),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(pieces, fc.constantFrom(...kinds), (parts, kind) => {
      const read = readQuantity(parts.join(''), kind);
      return 'fault' in read
        ? saysOf(quantityFinding(read.fault, 'field')).length > 0
        : Number.isFinite(read.value);
    }),
    { numRuns: 5000, seed: 1 },
  );
});

test('a length written in inches and in millimeters is the same length', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 4096 }), fc.constantFrom(1, 2, 4, 8, 16, 32, 64), (num, den) => {
      // 25.4 / 64 has eight decimals, so the decimal text is exact.
      const decimal = (BigInt(num) * 25400000000n) / BigInt(den);
      const digits = decimal.toString().padStart(10, '0');
      return value(`${num}/${den} in`, 'length') === Number(`${digits.slice(0, -9)}.${digits.slice(-9)}`);
    }),
    { numRuns: 2000, seed: 1 },
  );
});
