import { expect, test } from 'vitest';
import { type Cause, causesByCode, type Finding, finding } from '../../src/findings/index.ts';
import { runs, sayCause } from '../../src/wording/index.ts';
import { openRim, thinCover } from '../example-findings.ts';

const names = (causes: readonly Cause[]): string[] =>
  causes.map(({ findings }) => findings.map(({ subject }) => subject).join(' '));

const measuring = (one: Finding, measured: number): Finding => ({
  ...one,
  values: { ...one.values, measured },
});

test('copies of one master are one cause, each master its own, in the order they come', () => {
  const found = ['shell-2', 'leaf-1', 'shell-1', 'leaf-2'].map((subject) => thinCover(subject));
  expect(causesByCode([...found, openRim('leaf-1')]).map(names)).toEqual([
    ['leaf-1'],
    ['shell-2 shell-1', 'leaf-1 leaf-2'],
  ]);
});

test('what is worded otherwise has another cause', () => {
  const [one, other] = [thinCover('leaf-1'), thinCover('leaf-2')];
  const upper = { ...other, values: { ...other.values, half: 'upper' } };
  expect(causesByCode([one, upper]).flat()).toHaveLength(2);
  const changed = { ...other, changed: { from: 'stop', reason: 'tried' } } as const;
  expect(causesByCode([one, changed]).flat()).toHaveLength(2);
});

test('of walls both sides tell the cause', () => {
  const wall = (subject: string, other: string): Finding =>
    finding('walls.thin', { subject, values: { which: 'thin', measured: 1, limit: 3, other } });
  const walls = [wall('leaf-1', 'shell-1'), wall('leaf-2', 'shell-2'), wall('leaf-1', 'leaf-2')];
  expect(causesByCode(walls).map(names)).toEqual([['leaf-1 leaf-2', 'leaf-1']]);
});

test('the worst is farthest from its limit, on whichever side that lies', () => {
  const worst = (limit: number, ...measured: readonly number[]): unknown => {
    const some = measured.map((mm, i) => measuring(thinCover(`leaf-${i + 1}`), mm));
    const held = some.map((one) => ({ ...one, values: { ...one.values, limit } }));
    return causesByCode(held)[0][0].worst.values.measured;
  };
  expect(worst(3, 1, 0.5, 2)).toBe(0.5);
  expect(worst(0, 1, 0.5, 2)).toBe(2);
  expect(worst(3, -1, 2)).toBe(-1);
});

test('entries of one list are one cause where they are worded alike, with all their lines', () => {
  const missing = (entry: number): Finding =>
    finding('plan.unknown-key', {
      subject: `bosses#${entry}.width`,
      at: { file: 'plan.yaml', line: 10 + entry, column: 1 },
      values: { which: 'key', name: 'width', section: `bosses#${entry}`, known: ['size'] },
    });
  const causes = causesByCode([missing(1), missing(2)]).flat();
  expect(causes).toHaveLength(1);
  expect(sayCause(causes[0], 'metric')).toMatchObject({
    subjects: 'bosses.width',
    where: '2 places alike',
    lines: 'lines 11, 12',
  });
  const many = causesByCode(Array.from({ length: 9 }, (_, i) => missing(i + 1))).flat();
  expect(sayCause(many[0], 'metric').lines).toBe('lines 11, 12, 13, 14, 15, 16 and 3 more');
});

test('places that differ in nothing are called alike', () => {
  const [cause] = causesByCode(['leaf-1', 'leaf-2'].map((subject) => thinCover(subject))).flat();
  expect(sayCause(cause, 'metric')).toMatchObject({
    subjects: 'leaf-1 to 2',
    where: '2 places alike',
  });
  const [apart] = causesByCode([thinCover('leaf-1'), measuring(thinCover('leaf-2'), 2)]).flat();
  expect(sayCause(apart, 'metric').where).toBe('2 places, the worst');
});

test('copies are counted through, gaps left out', () => {
  expect(runs(['shell-2', 'shell-3', 'shell-5', 'leaf-1', 'leaf', 'leaf'])).toBe(
    'shell-2 to 3, 5, leaf-1, leaf, leaf',
  );
});
