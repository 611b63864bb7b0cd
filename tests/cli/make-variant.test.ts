import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import { makeVariant } from '../../cli/batch/make-variant.ts';
import type { Variant } from '../../cli/batch/variant.ts';
import { KernelExhausted, loadKernel } from '../../src/kernel/index.ts';
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
  const outcome = await makeVariant({ plan, text, variant, folder, only, formats: ['stl', 'report'] });
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
