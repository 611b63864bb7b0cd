import { expect, test } from 'vitest';
import { catalogue } from '../../src/findings/index.ts';
import { symptoms, symptomsOf } from '../../src/tables/index.ts';

const causes = symptoms.flatMap((symptom) => symptom.causes);

test('every finding that a cause names is one of the catalogue', () => {
  const named = causes.flatMap(({ codes = [] }) => codes);
  expect(named.length).toBeGreaterThan(20);
  expect(named.filter((code) => !(code in catalogue))).toEqual([]);
});

test('what is seen is told once, with causes of which none is told twice', () => {
  expect(new Set(symptoms.map(({ seen }) => seen)).size).toBe(symptoms.length);
  for (const { causes: own } of symptoms)
    expect(new Set(own.map(({ cause }) => cause)).size).toBe(own.length);
});

test('a process is told of nothing that only another has', () => {
  const said = (process: 'rubber' | 'rigid' | 'poured'): string =>
    JSON.stringify(symptomsOf(process).map(({ causes: own }) => own));
  expect(said('rubber')).toContain('Shorten the cure');
  for (const process of ['rigid', 'poured'] as const) expect(said(process)).not.toMatch(/the can\b/);
  expect(said('rubber')).not.toContain('Seal the plate');
});

test('each process has the same ordinary faults of a casting', () => {
  for (const process of ['rubber', 'rigid', 'poured'] as const) {
    const seen = symptomsOf(process).map((one) => one.seen);
    for (const word of [
      'short',
      'Pits',
      'Flash',
      'cold laps',
      'Swirls',
      'Sunk',
      'shifted',
      'stick',
      'shakes',
    ])
      expect(seen.some((one) => one.includes(word))).toBe(true);
  }
});
