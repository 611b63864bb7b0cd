import { expect, test } from 'vitest';
import { changedLines, mergeTexts } from '../../../src/plan/index.ts';

const base = 'a: 1\nb: 2 # two\nc: 3\nd: 4\n';

test('changes in different lines are put together', () => {
  const mine = base.replace('a: 1', 'a: 10');
  const theirs = base.replace('d: 4', 'd: 40\ne: 5');
  expect(mergeTexts(base, mine, theirs)).toEqual({ text: 'a: 10\nb: 2 # two\nc: 3\nd: 40\ne: 5\n' });
});

test('the same change on both sides is one change', () => {
  const both = base.replace('b: 2', 'b: 20');
  expect(mergeTexts(base, both, both)).toEqual({ text: both });
});

test('two changes of one line, and of lines side by side, are not', () => {
  expect(mergeTexts(base, base.replace('c: 3', 'c: 4'), base.replace('c: 3', 'c: 5'))).toEqual({
    clashes: 1,
  });
  expect(mergeTexts(base, base.replace('b: 2', 'b: 4'), base.replace('b: 2 # two\nc: 3', 'c: 5'))).toEqual({
    clashes: 1,
  });
});

test('lines that are not as they were', () => {
  expect([...changedLines(base, 'a: 1\nx: 0\nb: 2 # two\nc: 33\nd: 4\n')]).toEqual([1, 3]);
  expect([...changedLines(base, base)]).toEqual([]);
});
