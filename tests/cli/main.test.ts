import { spawn } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { workbench } from './workbench.ts';

const bench = workbench();
const main = fileURLToPath(new URL('../../cli/main.ts', import.meta.url));

/** Starts the program as a shell does, through a link as npx does; reads one piece of what it says, then hangs up. */
function start(...args: readonly string[]): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', link, ...args]);
    const said = { out: '', err: '' };
    child.stdout.once('data', (piece) => {
      said.out += piece;
      child.stdout.destroy();
    });
    child.stderr.on('data', (piece) => {
      said.err += piece;
    });
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, ...said }));
  });
}

const link = bench.path('discwright.ts');
symlinkSync(main, link);

it('runs through a link, and a reader that stops early is no fault', async () => {
  const { code, out, err } = await start('new');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatch(/^# A plan for discwright/);
});

it('hands its exit code to the shell', async () => {
  const { code, out, err } = await start('check', bench.path('gone.yaml'));
  expect({ code, out }).toEqual({ code: 2, out: '' });
  expect(err).toBe(`discwright: there is no file ${bench.path('gone.yaml')}\n`);
});
