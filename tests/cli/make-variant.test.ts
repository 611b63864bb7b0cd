import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { makeVariant } from '../../cli/batch/make-variant.ts';
import { titleVariant } from '../../cli/batch/title-variant.ts';
import type { Variant } from '../../cli/batch/variant.ts';
import { KernelExhausted, loadKernel } from '../../src/kernel/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { workbench } from './workbench.ts';

const bench = workbench();
const text = `process: rubber
disc: { diameter: 100, thickness: 12 }
sprue: { hole: 20, draft: 3 }
`;
const plan = bench.put('form.yaml', text);

afterEach(() => {
  vi.restoreAllMocks();
});

/** Makes one variant in this process, and gives what its report says: code, severity, subject. */
async function made(variant: Variant, only: readonly string[] = ['plug']) {
  const folder = bench.folder;
  const outcome = await makeVariant({
    plan,
    text,
    variant,
    folder,
    only,
    formats: ['stl', 'report'],
    cache: false,
  });
  const report = JSON.parse(readFileSync(join(folder, variant.name, 'report.json'), 'utf8')) as {
    findings: { code: string; severity: string; subject: string }[];
  };
  return {
    outcome,
    found: report.findings.map(({ code, severity, subject }) => [code, severity, subject]),
  };
}

it('a cell that spoils the plan is named before what the plan itself then says', async () => {
  const { outcome, found } = await made({
    name: 'wide',
    row: 3,
    settings: [{ path: 'sprue.hole', value: 'wide' }],
  });
  expect(outcome).toMatchObject({ name: 'wide', state: 'made', built: false, stops: 2 });
  expect(found[0]).toEqual(['batch.bad-cell', 'stop', 'wide']);
  expect(found.slice(1).map(([code]) => code)).toEqual(['plan.quantity']);
});

it('a row with a fault of its own is that fault alone', async () => {
  const { found } = await made({ name: 'short', row: 4, settings: [], fault: 'row 4 has 2 cells' });
  expect(found).toEqual([['batch.bad-cell', 'stop', 'short']]);
});

it('one that has nothing of what was asked for says so', async () => {
  const { outcome, found } = await made({ name: 'none', settings: [] }, ['anvil']);
  expect(outcome).toMatchObject({ state: 'made', built: false, stops: 1 });
  expect(found).toEqual([['batch.nothing-asked-for', 'stop', 'none']]);
});

it('one that breaks the kernel down is tried once more, then given up', async () => {
  const kernel = await loadKernel();
  const scope = vi.spyOn(Object.getPrototypeOf(kernel) as typeof kernel, 'scope').mockImplementation(() => {
    throw new KernelExhausted();
  });
  const { outcome, found } = await made({ name: 'huge', settings: [] });
  expect(scope).toHaveBeenCalledTimes(2);
  expect(outcome).toMatchObject({ state: 'made', built: false, stops: 1 });
  expect(found).toEqual([['batch.too-large', 'stop', 'huge']]);
});

const titleOf = (name: string): string =>
  JSON.parse(readFileSync(join(bench.folder, name, 'report.json'), 'utf8')).title;

it('carries its name and size in its title, unless it sets that itself', async () => {
  await made({ name: 'class-b', given: 'Class B', settings: [{ path: 'disc.diameter', value: '5 in' }] });
  await made({ name: 'hole-22', settings: [{ path: 'sprue.hole', value: '22' }] });
  await made({ name: 'own', given: 'own', settings: [{ path: 'title', value: 'Oak' }] });
  expect(['class-b', 'hole-22', 'own'].map(titleOf)).toEqual(['Class B, 5 in', 'hole 22, 100 mm', 'Oak']);
});

it('carries them in its lettering too', () => {
  const read = readPlan('title: Oak\nprocess: rubber\ndisc: { diameter: 9 in, label: OAK }\n', 'plan.yaml');
  if (!read.plan) throw new Error('no plan');
  const { title, disc } = titleVariant(read.plan, { name: 'a', given: 'A', settings: [] }, read.units);
  expect([title, disc.label]).toEqual(['Oak, A, 9 in', 'OAK, A, 9 in']);
});
