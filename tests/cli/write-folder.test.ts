import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, renameSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { NoRoom } from '../../cli/exit.ts';
import { recoverFolder, writeFolder } from '../../cli/write-folder.ts';
import { digestsIn, filesIn, sha256, workbench } from './workbench.ts';
import { turnOf } from './written-turns.ts';

const bench = workbench();
const notes = 'shelf/notes.txt';

/** What must be there after a turn was written over a folder with somebody's notes in it. */
const whole = (turn: number): Map<string, string> =>
  new Map(
    [...turnOf(turn), { path: notes, bytes: new TextEncoder().encode('cure a little longer') }]
      .map(({ path, bytes }): [string, string] => [path, sha256(bytes)])
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

/** A number no process has: Linux and macOS number from 1 to at most 2^22. */
const dead = 2 ** 22 + 1;

/** A sequence between 0 and 1 that is the same in every run (Park and Miller, 1988). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647;
  };
}

/** Starts the writer and kills it some ms after its first folder is written. */
function killAfter(target: string, ms: number): Promise<NodeJS.Signals | null> {
  const script = join(import.meta.dirname, 'write-again-and-again.ts');
  const child = spawn(process.execPath, ['--import', 'tsx', script, target], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  child.stdout.once('data', () => setTimeout(() => child.kill('SIGKILL'), ms));
  return new Promise((resolve) => child.on('exit', (_, signal) => resolve(signal)));
}

it('is put right whole after each of 20 kills at random times, with nothing left beside it', async () => {
  const folder = bench.path('killed');
  const target = join(folder, 'disc');
  await writeFolder(target, turnOf(0));
  mkdirSync(join(target, 'shelf'));
  bench.put(`killed/disc/${notes}`, 'cure a little longer');
  const random = seeded(20);
  let leftBehind = 0;
  for (let kill = 0; kill < 20; kill++) {
    expect(await killAfter(target, 60 * random())).toBe('SIGKILL');
    leftBehind += readdirSync(folder).filter((name) => name !== 'disc').length;
    await recoverFolder(target);
    expect(readdirSync(folder)).toEqual(['disc']);
    const { turn } = JSON.parse(new TextDecoder().decode(filesIn(target).get('manifest.json')));
    const written = new Map([...digestsIn(target)].sort(([a], [b]) => (a < b ? -1 : 1)));
    expect(written).toEqual(whole(turn));
  }
  // Else no kill fell while a folder was written, and the test would show nothing.
  expect(leftBehind).toBeGreaterThan(3);
  await writeFolder(target, turnOf(1));
  expect(new Map([...digestsIn(target)].sort(([a], [b]) => (a < b ? -1 : 1)))).toEqual(whole(1));
});

it('changes nothing where the disk is full in the middle of a file', async () => {
  const folder = bench.path('full');
  const target = join(folder, 'disc');
  await writeFolder(target, turnOf(0));
  mkdirSync(join(target, 'shelf'));
  bench.put(`full/disc/${notes}`, 'cure a little longer');
  const before = digestsIn(folder);
  let written = 0;
  const untilFull = async (path: string, bytes: Uint8Array): Promise<void> => {
    if (written++ < 2) return writeFile(path, bytes);
    await writeFile(path, bytes.subarray(0, bytes.length / 2));
    throw Object.assign(new Error('write'), { code: 'ENOSPC' });
  };
  const failed = await writeFolder(target, turnOf(1), untilFull).catch((error: unknown) => error);
  expect(failed).toBeInstanceOf(NoRoom);
  expect(String(failed)).toContain(
    `cannot write to ${target}: the disk is full (ENOSPC); nothing was changed there`,
  );
  expect(written).toBe(3);
  expect(digestsIn(folder)).toEqual(before);
  expect(readdirSync(folder)).toEqual(['disc']);
});

it('gives the old result back where the kill fell between the two renames', async () => {
  const folder = bench.path('between');
  const target = join(folder, 'disc');
  await writeFolder(target, turnOf(0));
  const before = digestsIn(target);
  mkdirSync(join(folder, `.disc-${dead}-Ab3dE6`, 'new'), { recursive: true });
  renameSync(target, join(folder, `.disc-${dead}-Ab3dE6`, 'old'));
  await recoverFolder(target);
  expect(readdirSync(folder)).toEqual(['disc']);
  expect(digestsIn(target)).toEqual(before);
});

it('leaves alone what a living run is writing, and whatever only looks alike', async () => {
  const folder = bench.path('others');
  const names = [
    `.disc-${process.ppid}-Ab3dE6`,
    `.disc-2-${dead}-Ab3dE6`,
    '.disc-notes',
    `.disc-${dead}-Ab3`,
  ];
  for (const name of names) mkdirSync(join(folder, name), { recursive: true });
  await writeFolder(join(folder, 'disc'), turnOf(0));
  expect(readdirSync(folder).sort()).toEqual([...names, 'disc'].sort());
});
