import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { makeMasters } from '../../presets/make-masters.ts';
import { auditStl, isClosed } from '../../src/export/index.ts';
import { filesIn, run, workbench } from '../cli/workbench.ts';
import { judgeStl } from '../judges.ts';

const presets = fileURLToPath(new URL('../../presets/', import.meta.url));
const bench = workbench();

beforeAll(async () => {
  await makeMasters(join(presets, 'hedgerow/masters'));
});

/** Builds a plan and holds every STL it leaves against our own audit and the independent programs. */
async function judged(plan: string, out: string): Promise<{ names: string[]; text: string }> {
  const { code, out: text, err } = await run('build', plan, '--out', bench.path(out));
  expect(err).toBe('');
  expect(code).toBe(0);
  const files = [...filesIn(bench.path(out))].filter(([name]) => name.endsWith('.stl'));
  const faults = files.flatMap(([name, bytes]) => [
    ...(isClosed(auditStl(bytes)) ? [] : [`${name}: our audit`]),
    ...judgeStl(join(bench.path(out), name)).faults.map((fault) => `${name}: ${fault}`),
  ]);
  expect(faults).toEqual([]);
  return { names: files.map(([name]) => name.split('/').at(-1) ?? ''), text };
}

const starters = readdirSync(presets).filter((name) => name.endsWith('.yaml'));

describe.each([...starters, 'stand-ins-only'])('%s', (name) => {
  test('builds solids that independent programs find sound', async () => {
    const { names } = await judged(join(presets, name), `out-${name}`);
    expect(names.length).toBeGreaterThan(name.startsWith('sprue') ? 1 : 3);
  });
});
