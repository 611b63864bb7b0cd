import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { figureCatalogue } from '../../src/findings/index.ts';
import { outsideChecks } from './outside-checks.ts';

it.each(Object.keys(figureCatalogue))('figure %s is held to something outside the project', (name) => {
  expect(outsideChecks.flatMap(({ figures }) => figures)).toContain(name);
});

// That the named test also ran and passed is seen by the reporter (tests/outside-reporter.ts).
it.each(outsideChecks)('$file: $test is there', ({ file, test }) => {
  expect(readFileSync(new URL(file, import.meta.url), 'utf8')).toContain(test);
});
