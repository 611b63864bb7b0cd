import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { groupAlike, isMilder, severities, worstFirst } from '../../src/findings/index.ts';
import { openRim, thinCover } from '../example-findings.ts';

/** One of each severity, in any order but that of gravity. */
const findings = [...severities].reverse().map((severity) => thinCover(severity, { severity }));

test('each severity is milder than those before it alone', () => {
  for (const [i, one] of severities.entries()) {
    for (const [k, other] of severities.entries()) expect(isMilder(one, other)).toBe(i > k);
  }
});

test('findings are sorted and grouped by it, those of one code as they were found', () => {
  expect(worstFirst(findings).map(({ severity }) => severity)).toEqual(severities);
  const groups = groupAlike([...findings, openRim('b'), openRim('a')]);
  expect(groups.map((group) => group.map(({ severity, subject }) => `${severity} ${subject}`))).toEqual([
    ['stop stop'],
    ['stop b', 'stop a'],
    ['warn warn'],
    ['note note'],
  ]);
});

test.each(['plan.schema.json', 'report.schema.json'])('%s lists them in that order', (name) => {
  const text = readFileSync(new URL(`../../${name}`, import.meta.url), 'utf8');
  const lists = JSON.stringify(JSON.parse(text)).match(/\["(?:stop|warn|note)"(?:,"\w+")*\]/g) ?? [];
  expect(new Set(lists)).toEqual(new Set([JSON.stringify(severities)]));
});
