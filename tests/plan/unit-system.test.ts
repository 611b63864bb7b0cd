import { expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';

const unitsOf = (diameter: string, more = ''): string =>
  readPlan(`process: rigid\n${more}disc: { diameter: ${diameter}, thickness: 20 }\n`, 'plan.yaml').units;

it.each([
  ['250', 'metric'],
  ['250 mm', 'metric'],
  ['25 cm', 'metric'],
  ['9 in', 'inch'],
  ["'9\"'", 'inch'],
  ['9 1/2 inch', 'inch'],
  ['9in', 'inch'],
  ['1 ft', 'inch'],
  // A plan with a fault is told in the system it is written in, too.
  ['9 inn', 'metric'],
  ['2000 in', 'inch'],
])('a disc %s across is of a plan in %s', (diameter, units) => {
  expect(unitsOf(diameter)).toBe(units);
});

it('what the plan says goes before how it is written', () => {
  expect(unitsOf('9 in', 'units: metric\n')).toBe('metric');
  expect(unitsOf('230', 'units: inch\n')).toBe('inch');
});
