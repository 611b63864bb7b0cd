import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, statSync, truncateSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ResultsOnDisk } from '../../../cli/cache/results-on-disk.ts';
import { workbench } from '../workbench.ts';

const bench = workbench();
let count = 0;
const fresh = (): string => bench.path(`cache-${count++}`);
const result = {
  findings: [{ code: 'a', values: { much: Number.POSITIVE_INFINITY, none: undefined, minus: -0 } }],
  mesh: { positions: Float32Array.from([1, 2, 3.5]), triangles: Uint32Array.from([0, 1, 2]) },
};
const filesOf = (folder: string): string[] => readdirSync(folder).map((name) => join(folder, name));

test('what one run keeps the next one has, with its arrays in memory of their own', () => {
  const folder = fresh();
  new ResultsOnDisk(folder, 'v1').write('key', result);
  const read = new ResultsOnDisk(folder, 'v1').read('key') as typeof result;
  expect(read).toEqual(result);
  expect(read.mesh.positions.buffer.byteLength).toBe(12);
  expect(new ResultsOnDisk(folder, 'v1').read('another key')).toBeUndefined();
});

test('a result of another program is none', () => {
  const folder = fresh();
  new ResultsOnDisk(folder, 'v1').write('key', result);
  expect(new ResultsOnDisk(folder, 'v2').read('key')).toBeUndefined();
});

test.each<[string, (path: string) => void]>([
  ['cut short', (path) => truncateSync(path, statSync(path).size - 1)],
  ['empty', (path) => truncateSync(path, 0)],
  [
    'of one changed bit',
    (path) => {
      const bytes = readFileSync(path);
      bytes[bytes.length - 3] ^= 1;
      writeFileSync(path, bytes);
    },
  ],
])('a file that is %s is no result, and goes', (_, spoil) => {
  const folder = fresh();
  const store = new ResultsOnDisk(folder, 'v1');
  store.write('key', result);
  for (const path of filesOf(folder)) spoil(path);
  expect(store.read('key')).toBeUndefined();
  expect(filesOf(folder)).toEqual([]);
  store.write('key', result);
  expect(store.read('key')).toEqual(result);
});

test('a sound result under the name of another key is none', () => {
  const folder = fresh();
  const store = new ResultsOnDisk(folder, 'v1');
  store.write('one', result);
  const [of] = filesOf(folder);
  store.write('other', { other: true });
  const other = filesOf(folder).find((path) => path !== of) as string;
  writeFileSync(other, readFileSync(of));
  expect(store.read('other')).toBeUndefined();
});

test('a folder that is a file, or may not be made, keeps nothing and stops nobody', () => {
  const store = new ResultsOnDisk(join(bench.put('file', ''), 'cache'), 'v1');
  store.write('key', result);
  expect(store.read('key')).toBeUndefined();
});

test('room is taken from what was not used for longest, and from what was never finished', () => {
  const folder = fresh();
  const most = 64 * 1024;
  const store = new ResultsOnDisk(folder, 'v1', most);
  const kilobytes = (many: number) => new Uint8Array(many * 1024);
  for (let i = 0; i < 10; i++) store.write(`old ${i}`, kilobytes(3));
  for (const path of filesOf(folder)) utimesSync(path, new Date(1e9), new Date(1e9));
  expect(store.read('old 7')).toEqual(kilobytes(3));
  const left = join(folder, 'left.begun');
  const begun = join(folder, 'now.begun');
  for (const path of [left, begun]) writeFileSync(path, 'x');
  utimesSync(left, new Date(1e9), new Date(1e9));
  for (let i = 0; i < 12; i++) store.write(`new ${i}`, kilobytes(4));
  const size = filesOf(folder).reduce((sum, path) => sum + statSync(path).size, 0);
  expect(size).toBeLessThanOrEqual(most);
  expect(store.read('old 7')).toEqual(kilobytes(3));
  const old = Array.from({ length: 10 }, (_, i) => store.read(`old ${i}`)).filter(Boolean);
  expect(old.length).toBeLessThan(6);
  expect(store.read('new 11')).toEqual(kilobytes(4));
  expect(filesOf(folder)).toContain(begun);
  expect(filesOf(folder)).not.toContain(left);
});

const writer = fileURLToPath(new URL('keep-again-and-again.ts', import.meta.url));
const startWriter = (folder: string) =>
  spawn(process.execPath, ['--import', 'tsx', writer, folder], { stdio: ['ignore', 'pipe', 'inherit'] });

test('two programs at once, each killed while it writes, leave whole results or none', async () => {
  const folder = fresh();
  const programs = [startWriter(folder), startWriter(folder)];
  await Promise.all(
    programs.map(async (program) => {
      // Told by the program that it is in the middle of it.
      await new Promise((resolve) => program.stdout.once('data', resolve));
      await new Promise((resolve) => setTimeout(resolve, 40));
      program.kill('SIGKILL');
      await new Promise((resolve) => program.once('close', resolve));
    }),
  );
  const store = new ResultsOnDisk(folder, 'v1');
  let whole = 0;
  for (let key = 0; key < 8; key++) {
    const read = store.read(`key ${key}`) as Float32Array | undefined;
    if (!read) continue;
    whole++;
    expect(read).toEqual(new Float32Array(200_000).fill(key));
  }
  expect(whole).toBeGreaterThan(0);
});
