import { expect, it } from 'vitest';
import { weigh } from '../../src/pipeline/weigh.ts';
import { openRim, thinCover } from '../example-findings.ts';

const thin = thinCover('beetle');
const through = openRim('beetle');
const rule = (severity: 'stop' | 'warn' | 'note') => ({ severity, reason: 'Poured at half speed.' });

it('gives a finding the severity the plan wants, with what it was and why', () => {
  const [one] = weigh([thin], { severity: { 'cover.thin': rule('note') } });
  expect(one).toEqual({
    ...thin,
    severity: 'note',
    changed: { from: 'warn', reason: 'Poured at half speed.' },
  });
  expect(weigh([thin], { severity: { 'cover.thin': rule('stop') } })[0].severity).toBe('stop');
});

it('leaves a finding alone that is already as severe, or that the plan does not name', () => {
  expect(weigh([thin], { severity: { 'cover.thin': rule('warn') } })).toEqual([thin]);
  expect(weigh([thin], { severity: { 'walls.thin': rule('stop') } })).toEqual([thin]);
  expect(weigh([thin], {})).toEqual([thin]);
});

it.each(['warn', 'note'] as const)('never lowers a stop that protects people to %s', (severity) => {
  expect(weigh([through], { severity: { 'cover.through': rule(severity) } })).toEqual([through]);
});

it('does not take a code for a name every object has', () => {
  expect(weigh([thin], { severity: {} })).toEqual([thin]);
});
