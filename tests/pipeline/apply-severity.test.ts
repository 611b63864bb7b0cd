import { expect, it } from 'vitest';
import { applySeverity } from '../../src/pipeline/apply-severity.ts';
import { openRim, thinCover } from '../example-findings.ts';

const thin = thinCover('beetle');
const through = openRim('beetle');
const rule = (severity: 'stop' | 'warn' | 'note') => ({ severity, reason: 'Poured at half speed.' });

it('gives a finding the severity the plan wants, with what it was and why', () => {
  const [one] = applySeverity([thin], { severity: { 'cover.thin': rule('note') } });
  expect(one).toEqual({
    ...thin,
    severity: 'note',
    changed: { from: 'warn', reason: 'Poured at half speed.' },
  });
  expect(applySeverity([thin], { severity: { 'cover.thin': rule('stop') } })[0].severity).toBe('stop');
});

it('leaves a finding alone that is already as severe, or that the plan does not name', () => {
  expect(applySeverity([thin], { severity: { 'cover.thin': rule('warn') } })).toEqual([thin]);
  expect(applySeverity([thin], { severity: { 'walls.thin': rule('stop') } })).toEqual([thin]);
  expect(applySeverity([thin], {})).toEqual([thin]);
});

it.each(['warn', 'note'] as const)('never lowers a stop that protects people to %s', (severity) => {
  expect(applySeverity([through], { severity: { 'cover.through': rule(severity) } })).toEqual([through]);
});

it('does not take a code for a name every object has', () => {
  expect(applySeverity([thin], { severity: {} })).toEqual([thin]);
});
