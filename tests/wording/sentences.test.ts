import { describe, expect, it } from 'vitest';
import { codes } from '../../src/findings/codes/entry.ts';
import {
  catalogue,
  entryOf,
  type Finding,
  type FindingCode,
  type FindingValue,
  finding,
  type ValueKind,
} from '../../src/findings/index.ts';
import { sayFinding } from '../../src/wording/index.ts';

/** A value of its kind; where words are to be chosen from, each of them is tried. */
function valuesOf(kind: ValueKind): FindingValue[] {
  if (typeof kind !== 'string') return [...kind];
  if (kind === 'quantity') return [{ value: 12.5, unit: 'mm' }];
  if (kind === 'point') return [[1, 2, 3]];
  if (kind === 'name') return ['hedge'];
  if (kind === 'names') return [['leaf', 'snail', 'beetle'], []];
  return kind === 'count' ? [0, 1, 2] : [12.5];
}

/** Findings of a code that try each sentence with each word and with and without what may be missing. */
function everyWay(code: FindingCode): Finding[] {
  const { says, remedy, values: kinds = {} } = entryOf(code);
  const whiches = [says, remedy].flatMap((one) => (typeof one === 'string' ? [] : Object.keys(one)));
  const tables = whiches.length > 0 ? [...new Set(whiches)] : [undefined];
  const text = JSON.stringify([says, remedy]);
  const chosenBy = (key: string): boolean =>
    key.endsWith('?') && text.includes(`{${key.slice(0, -1)}, select, none`);
  const names = Object.keys(kinds).map((key) => ({
    name: key.replace(/\?$/, ''),
    // Missing only where a sentence chooses by whether it is there.
    tries: [...valuesOf(kinds[key]), ...(chosenBy(key) ? [undefined] : [])],
  }));
  const most = Math.max(1, ...names.map(({ tries }) => tries.length));
  return tables.flatMap((which) =>
    Array.from({ length: most }, (_, i) => {
      const given = names.map(({ name, tries }) => [name, tries[i % tries.length]] as const);
      const values = Object.fromEntries(
        [...given, ['which', which]].filter(([, value]) => value !== undefined),
      );
      return { code, severity: 'stop', subject: 'ivy-1', values };
    }),
  );
}

describe.each(Object.keys(catalogue) as FindingCode[])('%s', (code) => {
  it.each(['metric', 'inch'] as const)('is said in whole sentences, %s', (system) => {
    for (const one of everyWay(code)) {
      const { says, remedy } = sayFinding(one, system);
      for (const text of [says, remedy]) {
        expect(text).toMatch(/^\S.*[.?!)]$/s);
        expect(text).not.toMatch(/[{}]|undefined|NaN|\.\.\s*$|\s\s/);
      }
    }
  });

  it('declares no value that it does not say or limit', () => {
    const { says, remedy, values = {} } = entryOf(code);
    const text = JSON.stringify([says, remedy]);
    for (const key of Object.keys(values)) {
      const name = key.replace(/\?$/, '');
      if (name === 'measured' || name === 'limit') continue;
      expect(text).toMatch(new RegExp(`\\{${name}[},]`));
    }
  });
});

describe('templates', () => {
  it('a name that the code does not give is a type error', () => {
    codes({
      // @ts-expect-error `thickness` is not among its values
      'a.a': {
        severity: 'stop',
        means: '',
        values: { cover: 'mm' },
        says: '{thickness} of {cover}.',
        remedy: '',
      },
    });
    codes({
      // @ts-expect-error nor is `hole`, deep within a plural
      'a.b': {
        severity: 'stop',
        means: '',
        says: '{subject}',
        remedy: '{subject, select, other {a {hole}}}',
      },
    });
    codes({
      // @ts-expect-error the tables have not the same keys
      'a.c': { severity: 'stop', means: '', says: { one: '', two: '' }, remedy: { one: '' } },
    });
    codes({ 'a.d': { severity: 'stop', means: '', values: { 'hole?': 'mm' }, says: '{hole}', remedy: '' } });
  });

  it('a finding takes just the values of its code', () => {
    // @ts-expect-error without its values
    finding('plan.alias', { subject: 'plan' });
    // @ts-expect-error with one it does not know
    finding('plan.alias', { subject: 'plan', values: { name: 'a', other: 1 } });
    expect(finding('plan.alias', { subject: 'plan', values: { name: 'a' } }).values).toEqual({ name: 'a' });
  });

  it('says each unit in the system asked for first', () => {
    const values = { which: 'rim', measured: 2.54, limit: 5.08, making: 'FDM' } as const;
    const thin = finding('cover.under-process', { subject: 'ivy-1', values });
    expect(sayFinding(thin, 'metric').says).toContain('leaves 2.54 mm (0.100 in) to the rim');
    expect(sayFinding(thin, 'inch').says).toContain('leaves 0.100 in (2.54 mm) to the rim');
  });
});
