import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, watch } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { compiledProgram } from './compiled.ts';
import { digestsIn, filesIn, sha256, workbench } from './workbench.ts';

const bench = workbench();
const plan = bench.put(
  'form.yaml',
  `process: rubber
disc: { diameter: 230, lower: 19, upper: 19 }
sprue: { hole: 32, draft: 3, well: { diameter: 80, depth: 7 } }
fixture: { material: PETG }
`,
);
const holes = Array.from({ length: 45 }, (_, i) => 20 + i / 2);
const folderOf = (out: string): string => join(bench.path(out), 'form-batch');

/** A sequence between 0 and 1 that is the same in every run (Park and Miller, 1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647;
  };
}

interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly out: string;
}

/** Runs the batch; with `end`, sends the signal some ms after something changes in its folder for the first time. */
function batch(out: string, end?: { readonly signal: NodeJS.Signals; readonly ms: number }): Promise<Ended> {
  const folder = folderOf(out);
  mkdirSync(folder, { recursive: true });
  const vary = [
    '--vary',
    `sprue.hole=${holes.join(',')}`,
    '--only',
    'sprue-form',
    '--formats',
    'stl',
    'report',
  ];
  const child = spawn(
    process.execPath,
    [compiledProgram, 'batch', plan, ...vary, '--out', bench.path(out), '--workers', end ? '1' : '2'],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const watcher = watch(folder);
  if (end) watcher.once('change', () => setTimeout(() => child.kill(end.signal), end.ms));
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  return new Promise((resolve) =>
    child.on('close', (code, signal) => {
      watcher.close();
      resolve({ code, signal, out: text });
    }),
  );
}

/** Digests of what stands under the names of finished things; what is being made begins with a dot. */
const finishedIn = (folder: string): [string, string][] =>
  [...filesIn(folder)]
    .filter(([path]) => !path.startsWith('.'))
    .map(([path, bytes]) => [path, sha256(bytes)]);

it('after 20 kills at random times nothing is half, and a rerun ends in the bytes of an undisturbed run', async () => {
  expect((await batch('calm')).code).toBe(0);
  const calm = digestsIn(folderOf('calm'));
  const random = seeded(5);
  let leftBehind = 0;
  for (let kill = 0; kill < 20; kill++) {
    expect((await batch('killed', { signal: 'SIGKILL', ms: 100 * random() ** 2 })).signal).toBe('SIGKILL');
    leftBehind += readdirSync(folderOf('killed')).filter((name) => name.startsWith('.')).length;
    for (const [path, digest] of finishedIn(folderOf('killed'))) {
      // The summary grows from run to run; that its files are whole shows in the end.
      if (path.includes('/')) expect([path, digest]).toEqual([path, calm.get(path)]);
    }
  }
  // Else no kill fell while a folder was written, and the test would show nothing.
  expect(leftBehind).toBeGreaterThan(0);
  const rerun = await batch('killed');
  expect(rerun.code).toBe(0);
  expect(rerun.out).toMatch(/[1-9]\d* unchanged and skipped/);
  expect(digestsIn(folderOf('killed'))).toEqual(calm);
});

it('Ctrl-C leaves what is finished, clears the rest away and exits 130; running again goes on from there', async () => {
  const broken = await batch('broken-off', { signal: 'SIGINT', ms: 100 });
  expect({ code: broken.code, signal: broken.signal }).toEqual({ code: 130, signal: null });
  expect(broken.out).toContain('broken off; what was finished is whole');
  expect(readdirSync(folderOf('broken-off')).filter((name) => name.startsWith('.'))).toEqual([]);
  expect((await batch('broken-off')).code).toBe(0);
  expect(digestsIn(folderOf('broken-off'))).toEqual(digestsIn(folderOf('calm')));
});
