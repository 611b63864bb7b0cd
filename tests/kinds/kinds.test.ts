import { expect, it } from 'vitest';
import { kinds, solidKinds } from '../../src/kinds/index.ts';
import { kinds as shown } from '../../src/preview/scene/kinds.ts';

const distinct = <T>(values: readonly T[]): void =>
  expect(values.filter((value, i) => values.indexOf(value) !== i)).toEqual([]);

it('no two kinds are called the same or look the same', () => {
  distinct(kinds.map(({ id }) => id));
  distinct(solidKinds.map(({ role }) => role));
  distinct(solidKinds.map(({ color }) => color));
  distinct(shown.map(({ id }) => id));
  distinct(shown.map(({ title }) => title));
  distinct(shown.map(({ color }) => color));
});

it('no two have one place in the order the mold is put together', () => {
  // The halves are one kind, and two on the page.
  const ones = shown.filter(({ id }) => id !== 'upper half');
  distinct(ones.map(({ order }) => order));
  expect(solidKinds.every(({ order }) => Number.isInteger(order) && order > 0)).toBe(true);
});

it.each(solidKinds)('$role: colors are whole, the use is one sentence', ({ color, use, look }) => {
  const looks = 'title' in look ? [look] : [look.lower, look.upper];
  for (const one of [color, ...looks.map((each) => each.color)]) expect(one).toMatch(/^#[0-9A-Fa-f]{6}$/);
  expect(use).toMatch(/^[A-Z][^\n]*\.$/);
});
