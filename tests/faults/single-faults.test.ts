import { describe, expect, it, test } from 'vitest';
import type { Finding } from '../../src/findings/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { badNumbers, checkText } from './check-text.ts';
import { faultPlans, soundPlans, soundText } from './fault-plans.ts';

/** A finding as the lists keep it: what is found, how grave, about what, and where the plan says it. */
const inShort = ({ code, severity, subject, at }: Finding): string =>
  [code, severity, subject, ...(at ? [`${at.line}:${at.column}`] : [])].join(' ');

test('there is a plan for at least thirty codes, and none has a name twice', () => {
  expect(new Set(faultPlans.map(({ code }) => code)).size).toBeGreaterThanOrEqual(30);
  expect(new Set(faultPlans.map(({ name }) => name)).size).toBe(faultPlans.length);
});

describe('a plan with nothing wrong', () => {
  it.each(soundPlans)('%s has neither stops nor warnings', async (name) => {
    const report = await checkText(soundText(name), name);
    const { findings, figures } = report;
    expect(badNumbers(report)).toEqual([]);
    // Hot rubber always takes up more room than cold, which is worth knowing and no fault.
    expect(findings.map(inShort)).toEqual(name === 'rubber' ? ['pack.flows-out note can 33:1'] : []);
    expect(figures.length).toBeGreaterThan(name === 'bare' ? 2 : 20);
  });
});

describe('a plan with one fault', () => {
  it.each(faultPlans)('$name yields that code and no other', async ({ name, code, text, finds }) => {
    const report = await checkText(text, name);
    expect(report.findings.map(inShort)).toEqual(finds);
    const codes = new Set<string>(report.findings.map((one) => one.code));
    // What comes along with many a form, and is listed with what each plan finds.
    if (!code.startsWith('pack.')) codes.delete('pack.flows-out');
    if (!code.startsWith('fill.')) codes.delete('fill.air-may-stay');
    expect([...codes]).toEqual([code]);
    expect(badNumbers(report)).toEqual([]);
    for (const one of report.findings) expect(sayFinding(one, 'metric').says).toMatch(/^\S.*[.?!)]$/s);
  });

  it.each(faultPlans)('$name differs from a sound plan in one to four lines', ({ changes }) => {
    expect(changes).toBeGreaterThanOrEqual(1);
    expect(changes).toBeLessThanOrEqual(4);
  });
});
