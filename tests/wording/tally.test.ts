import { expect, test } from 'vitest';
import { severities } from '../../src/findings/index.ts';
import { tally } from '../../src/wording/index.ts';

test('findings are counted in words, the gravest first', () => {
  expect(tally([])).toBe('0 stops, 0 warnings, 0 notes');
  const [stop, warn] = severities.map((severity) => ({ severity }));
  expect(tally([warn, stop, warn])).toBe('1 stop, 2 warnings, 0 notes');
});
