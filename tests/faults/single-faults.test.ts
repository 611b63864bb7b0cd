import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import type { Finding } from '../../src/findings/index.ts';
import { badNumbers, checkText, faultFolder } from './check-text.ts';

/** Plans with nothing wrong, of which every other plan here is a copy with one fault. */
const sound = ['rubber', 'rigid', 'poured', 'bare'];

const read = (name: string): string => readFileSync(join(faultFolder, name), 'utf8');
const names = readdirSync(faultFolder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.slice(0, -'.yaml'.length))
  .sort();
const faults = names.filter((name) => !sound.includes(name));

/** A finding as the expected reports keep it: what is found, about what, and where the plan says it. */
const inShort = ({ code, severity, subject, at }: Finding) => ({
  code,
  severity,
  subject,
  at: at ? `${at.line}:${at.column}` : '',
});

/** Lines of either that the other lacks; the first, which names the fault, aside. */
function changed(one: string, other: string): number {
  const [a, b] = [one, other].map((text) => text.split('\n').slice(1));
  const only = (lines: string[], among: string[]): number =>
    lines.filter((line) => !among.includes(line)).length;
  return Math.max(only(a, b), only(b, a));
}

test('there is a plan for at least thirty codes, each with the report expected of it', () => {
  expect(new Set(faults.map((name) => name.split('.of-')[0])).size).toBeGreaterThanOrEqual(30);
  for (const name of names) expect(existsSync(join(faultFolder, `${name}.json`)), name).toBe(true);
});

describe('a plan with nothing wrong', () => {
  it.each(sound)('%s has neither stops nor warnings', async (name) => {
    const { findings, figures } = await checkText(read(`${name}.yaml`), name);
    expect(findings.map(inShort)).toEqual(JSON.parse(read(`${name}.json`)));
    // Hot rubber always takes up more room than cold, which is worth knowing and no fault.
    expect(findings.map(({ code }) => code)).toEqual(name === 'rubber' ? ['pack.flows-out'] : []);
    expect(figures.length).toBeGreaterThan(name === 'bare' ? 2 : 20);
  });
});

describe('a plan with one fault', () => {
  it.each(faults)('%s yields that code and no other', async (name) => {
    const text = read(`${name}.yaml`);
    const report = await checkText(text, name);
    const found = report.findings.map(inShort);
    expect(found).toEqual(JSON.parse(read(`${name}.json`)));
    const codes = new Set(found.map(({ code }) => code));
    if (!name.startsWith('pack.')) codes.delete('pack.flows-out');
    expect([...codes]).toEqual([name.split('.of-')[0]]);
    expect(badNumbers(report)).toEqual([]);
  });

  it.each(faults)('%s differs from a sound plan in four lines at most', (name) => {
    const text = read(`${name}.yaml`);
    expect(Math.min(...sound.map((one) => changed(text, read(`${one}.yaml`))))).toBeLessThanOrEqual(4);
  });
});
