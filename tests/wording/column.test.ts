import { expect, test } from 'vitest';
import { columnNumber, columnUnit } from '../../src/wording/index.ts';

// By the definitions of inch, ounce and pound (NIST SP 811, appendix B).
test.each([
  [25.4, 'mm', 'metric', '25.4 mm'],
  [10.414000000000001, 'mm', 'metric', '10.41 mm'],
  [25.4, 'mm', 'inch', '1 in'],
  [28.349523125, 'g', 'inch', '1 oz'],
  [6894.757293168, 'Pa', 'inch', '1 psi'],
  [250_000, 'Pa', 'metric', '250 kPa'],
  [4448.2216152605, 'N', 'inch', '1000 lbf'],
  [1.3558179483314, 'N.m', 'inch', '1 lbf ft'],
  [0.3048, 'm/s', 'inch', '1 ft/s'],
  [720.07787, 'g.mm', 'inch', '1 oz.in'],
  [90, 's', 'metric', '1.5 min'],
  [0.125, 'ratio', 'inch', '12.5 %'],
  [4, 'count', 'metric', '4 count'],
] as const)('%d %s in a column of the %s system is %s', (value, unit, system, shown) =>
  expect(`${columnNumber(value, unit, system)} ${columnUnit(unit, system)}`).toBe(shown),
);
