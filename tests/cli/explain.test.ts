import { expect, it } from 'vitest';
import { type CodeEntry, catalogue } from '../../src/findings/index.ts';
import { run } from './workbench.ts';

it.each(Object.entries(catalogue))(
  'explains %s: severity, meaning, remedy, on the page',
  async (code, entry) => {
    const { code: exit, out } = await run('check', '--explain', code);
    expect(exit).toBe(0);
    const words = out.replace(/\s+/g, ' ');
    const sentences = [entry.says, entry.remedy].flatMap((one) =>
      typeof one === 'string' ? [one] : Object.values<string>(one),
    );
    for (const text of [`${code}: ${entry.severity}`, entry.means, ...sentences])
      expect(words).toContain(text.replace(/\s+/g, ' '));
    expect(out).toMatch(/^ {2}formula /m);
    expect(out).toMatch(/^ {2}source /m);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  },
);

/** Faults of a file, of a trial log too, or of the program are seen directly; a note that something is left out judges nothing. */
const judgesNothing =
  /^(plan|mesh|outline|repair|solid)\.|^trials\.(pour-twice|unknown-cavity|gone|good-and-bad)$|\.not-checked$/;
const seenDirectly = ['layout.no-file', 'layout.outside-folder', 'registration.no-flex'];

it.each(
  Object.entries<CodeEntry>(catalogue).filter(
    ([code]) => !judgesNothing.test(code) && !seenDirectly.includes(code),
  ),
)('%s says what it is judged by, and where that is from', (_, { formula, source }) => {
  expect(formula).toMatch(/\S/);
  expect(source).toMatch(/\S/);
});

it('shows formula and source from the catalogue', async () => {
  const { out } = await run('check', '--explain', 'registration.closes-turned');
  expect(out).toMatch(/formula +d\(angle\)/);
  expect(out).toMatch(/source +bottleneck assignment/);
});

it('says of an unknown code which is meant, and of nothing at all what is needed', async () => {
  expect(await run('check', '--explain', 'cover.thinn')).toMatchObject({
    code: 2,
    err: 'discwright: there is no finding "cover.thinn"; did you mean cover.thin?',
  });
  expect(await run('check', '--explain', 'toString')).toMatchObject({ code: 2 });
  expect(await run('check')).toMatchObject({ code: 2, out: '' });
});

it('a beginning lists the codes that begin so', async () => {
  const { code, out } = await run('check', '--explain', 'cover');
  expect(code).toBe(0);
  expect(out.split('\n')).toContain('  cover.thin');
  expect(
    out
      .split('\n')
      .slice(1)
      .every((line) => line.startsWith('  cover.')),
  ).toBe(true);
});
