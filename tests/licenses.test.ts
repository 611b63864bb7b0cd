import { describe, expect, it } from 'vitest';
import { licenseRows } from '../docs/licenses.ts';

const lock = (license: string | undefined, more = {}) => ({
  packages: {
    '': { version: '1.0.0' },
    'node_modules/plain': { version: '1.2.3', license: 'MIT' },
    'node_modules/plain/node_modules/@scope/inner': {
      version: '2.0.0',
      ...(license && { license }),
      ...more,
    },
  },
});

describe('the licenses of the production tree', () => {
  it('are listed by the names and versions of the packages, those of development left out', () => {
    expect(licenseRows(lock('ISC'), {})).toEqual([
      '| `@scope/inner` | 2.0.0 | ISC |',
      '| `plain` | 1.2.3 | MIT |',
    ]);
    expect(licenseRows(lock('ISC', { name: 'stands-in' }), {})[1]).toBe('| `stands-in` | 2.0.0 | ISC |');
    expect(licenseRows(lock('GPL-3.0', { dev: true }), {})).toHaveLength(1);
  });

  it.each([
    ['GPL-3.0'],
    ['LGPL-3.0-or-later'],
    ['(MIT AND GPL-2.0)'],
    ['SEE LICENSE IN README'],
    [undefined],
  ])('are refused where one is %s, unless it is named with a reason', (license) => {
    expect(() => licenseRows(lock(license), {})).toThrow('@scope/inner 2.0.0');
    const reasons = { '@scope/inner': { license: 'own', reason: 'read' } };
    expect(licenseRows(lock(license), reasons)[0]).toBe('| `@scope/inner` | 2.0.0 | own: read |');
  });

  it('need no reason where they are permissive', () => {
    const reasons = { plain: { license: 'own', reason: 'read' } };
    expect(() => licenseRows(lock('ISC'), reasons)).toThrow('plain');
  });
});
