import { mkdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { filesIn, run, workbench } from './workbench.ts';

const bench = workbench();

const variants = (['rubber', 'rigid', 'poured'] as const).flatMap((process) =>
  (['mm', 'in'] as const).map((unit) => ({ process, unit })),
);

describe('new', () => {
  test.each(variants)(
    'a plan for $process in $unit is written, and builds without a stop or warning',
    async ({ process, unit }) => {
      const file = bench.path(`${process}-${unit}.yaml`);
      const diameter = unit === 'in' ? '6in' : '250';
      const made = await run('new', file, '--process', process, '--unit', unit, '--diameter', diameter);
      expect({ code: made.code, err: made.err }).toEqual({ code: 0, err: '' });
      expect(made.out).toBe(`${file} written; try: discwright build ${file}`);
      const out = bench.path(`out-${process}-${unit}`);
      const built = await run('build', file, '--out', out);
      expect(built.err).toBe('');
      expect(built.out).toMatch(
        new RegExp(`^${process[0].toUpperCase()}${process.slice(1)} ${unit}: 0 stops, 0 warnings, `),
      );
      expect(built.code).toBe(0);
      const halves = process === 'rigid' ? 'print' : 'look';
      const fixtures = process === 'rubber' ? 'machine' : 'print';
      expect([...filesIn(out).keys()]).toEqual(
        expect.arrayContaining(
          [`${halves}/lower-half.stl`, `${fixtures}/sprue-form.stl`].map(
            (path) => `${process}-${unit}/${path}`,
          ),
        ),
      );
    },
  );

  it('prints the plan where no file is named', async () => {
    const printed = await run('new', '--diameter', '9in', '--unit', 'in');
    const file = bench.path('printed.yaml');
    await run('new', file, '--diameter', '9in', '--unit', 'in');
    const titled = `${printed.out}\n`.replace('title: New disc', 'title: Printed');
    expect(titled).toBe(readFileSync(file, 'utf8'));
    expect(printed.out).toContain('diameter: 9 in');
  });

  it.each([
    ['hedgerow-charms_2.yaml', 'Hedgerow charms 2'],
    ['two: parts #1.yaml', 'Two: parts #1'],
    ['éclats d’automne.yaml', 'Éclats d’automne'],
    ['12.yaml', '12'],
    ['badges/plan.yaml', 'Badges'],
    [`${'long '.repeat(40)}.yaml`, 'Long '.repeat(1) + 'long '.repeat(23).trim()],
  ])('calls the plan in %s what its file says', async (name, title) => {
    mkdirSync(bench.path('badges'), { recursive: true });
    const file = bench.path(name);
    expect((await run('new', file)).code).toBe(0);
    const { plan, findings } = readPlan(readFileSync(file), 'new.yaml');
    expect(findings).toEqual([]);
    expect(plan?.title).toBe(title);
  });

  it('takes a bare number in the unit of the plan', async () => {
    expect((await run('new', '--diameter', '9', '--unit', 'in')).out).toContain('diameter: 9 in');
    expect((await run('new', '--diameter', '230')).out).toContain('diameter: 230\n');
  });

  it('begins an inch shop with a disc of whole inches, and says nothing in mm', async () => {
    const { out } = await run('new', '--unit', 'in');
    expect(out).toContain('diameter: 9 in\n');
    expect(out.split('\n').filter((line) => !line.startsWith('#') && /\bmm\b/.test(line))).toEqual([]);
    expect((await run('new')).out).toContain('diameter: 250\n');
  });

  it('writes for the paper that is at hand', async () => {
    expect((await run('new', '--unit', 'in')).out).toContain('\npaper: Letter\n');
    expect((await run('new')).out).toContain('\npaper: A4\n');
  });

  it.each(['inch', 'INCH', 'inches', 'In'])('takes %s for in', async (unit) => {
    expect(await run('new', '--unit', unit)).toEqual(await run('new', '--unit', 'in'));
  });

  it('never overwrites', async () => {
    const file = bench.put('mine.yaml', '# years of work\n');
    const { code, out, err } = await run('new', file);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toBe(`discwright: ${file} is there already; nothing was written`);
    expect(readFileSync(file, 'utf8')).toBe('# years of work\n');
  });

  it.each([
    ['no folder for it', ['new', '/nowhere/at/all/plan.yaml'], /there is no folder \/nowhere\/at\/all/],
    [
      'an unknown process',
      ['new', '--process', 'clay'],
      /--process clay is not known; use one of rubber, rigid, poured/,
    ],
    ['an unknown unit', ['new', '--unit', 'cm'], /--unit cm is not known; use one of mm, in/],
    ['no number', ['new', '--diameter', 'big'], /--diameter big: /],
    ['a weight', ['new', '--diameter', '9 kg'], /--diameter 9 kg: /],
    ['a coin', ['new', '--diameter', '20mm'], /60 to 1000 mm/],
    ['a wheel', ['new', '--diameter', '2 m'], /60 to 1000 mm/],
    ['endless', ['new', '--diameter', 'Infinity'], /--diameter Infinity: /],
  ])('says in one line what is wrong with %s', async (_, args, says) => {
    const { code, out, err } = await run(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^discwright: /);
    expect(err).toMatch(says);
    expect(err).not.toContain('\n');
  });
});
