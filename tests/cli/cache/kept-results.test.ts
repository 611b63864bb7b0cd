import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { ResultsOnDisk } from '../../../cli/cache/results-on-disk.ts';
import { userCacheFolder } from '../../../cli/cache/user-cache-folder.ts';
import { binaryStl, type Face } from '../../mesh/mesh-files.ts';
import { ball } from '../../mesh/rough-shapes.ts';
import { filesIn, run, workbench } from '../workbench.ts';

const bench = workbench();
const { points, faces } = ball(4, 24);
bench.put('kept-seed.stl', binaryStl(faces.map(([a, b, c]): Face => [points[a], points[b], points[c]])));
const text = (wall: number): string => `title: Kept
process: rubber
disc: { diameter: 70, thickness: 20 }
sprue: {}
masters:
  seed: { file: kept-seed.stl, unit: mm }
placements:
  - { id: one, master: seed, sink: 3, at: { radius: 22, angle: 0 } }
  - { id: two, master: seed, sink: 3, at: { radius: 22, angle: 90 } }
limits: { wall: ${wall} }
`;
const plan = bench.put('kept-plan.yaml', text(3));
const folder = join(userCacheFolder(), 'results');
const kept = () => filesIn(folder);

const read = vi.spyOn(ResultsOnDisk.prototype, 'read');
afterAll(() => vi.restoreAllMocks());
const found = (): number => read.mock.results.filter(({ value }) => value !== undefined).length;

/** A run, and how many results of earlier ones it found. */
async function counted(...args: readonly string[]) {
  const before = found();
  const { code, out } = await run(...args);
  return { code, out, hits: found() - before };
}

test('check says the same from what was kept, from spoiled files and without; a limit costs no parting', async () => {
  const anew = await counted('check', plan, '--json', '--no-cache');
  const names = new Set(kept().keys());
  const cold = await counted('check', plan, '--json');
  const warm = await counted('check', plan, '--json');
  const added = [...kept()].filter(([name]) => !names.has(name));
  expect(added.length).toBeGreaterThan(0);
  expect(warm.hits).toBeGreaterThan(0);
  // Nothing of where the plan lies.
  for (const [, bytes] of added) expect(Buffer.from(bytes).includes(bench.folder)).toBe(false);
  for (const [name] of added) writeFileSync(join(folder, name), 'spoiled');
  const spoiled = await counted('check', plan, '--json');
  for (const one of [cold, warm, spoiled]) expect(one.out).toBe(anew.out);
  expect([anew.hits, cold.hits, spoiled.hits]).toEqual([0, 0, 0]);
  writeFileSync(plan, text(40));
  const edited = await counted('check', plan, '--json');
  expect(edited.hits).toBeGreaterThan(0);
  expect(edited.out).not.toBe(anew.out);
  expect(edited.out).toBe((await run('check', plan, '--json', '--no-cache')).out);
  writeFileSync(plan, text(3));
});

test('a build leaves the same bytes with any state of the cache', async () => {
  const built = async (name: string, ...more: readonly string[]) => {
    const only = ['--only', 'halves', '--formats', 'stl', 'report'];
    const { hits } = await counted('build', plan, '--out', bench.path(name), '--quiet', ...only, ...more);
    return { hits, files: filesIn(bench.path(name)) };
  };
  const anew = await built('anew', '--no-cache');
  await built('cold');
  const warm = await built('warm');
  expect(anew.hits).toBe(0);
  expect(warm.hits).toBeGreaterThan(0);
  expect(warm.files).toEqual(anew.files);
  expect([...warm.files.keys()].some((name) => name.endsWith('lower-half.stl'))).toBe(true);
});
