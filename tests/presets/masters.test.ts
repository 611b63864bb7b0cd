import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hedgerowMasters } from '../../presets/hedgerow/index.ts';
import { makeMasters } from '../../presets/make-masters.ts';
import { writeStl } from '../../src/export/stl.ts';
import { boundsOf, triangleCount } from '../../src/geometry/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { judgeStl } from '../judges.ts';
import { pairEdges } from '../parts/pairing.ts';
import { piecesOf, volumeOf } from './solidity.ts';

const kernel = await loadKernel();
const home = fileURLToPath(new URL('../../presets/hedgerow/masters', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'masters-'));
const names = Object.keys(hedgerowMasters);
const fileOf = (name: string): string => join(folder, `${name}.stl`);

beforeAll(async () => {
  await makeMasters(home);
  cpSync(home, folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true }));

describe.each(names)('%s', (name) => {
  const mesh = hedgerowMasters[name](kernel);

  test('is closed, of one piece, right side out', () => {
    expect(pairEdges(mesh)).toMatchObject({ unpaired: 0, flat: 0 });
    expect(piecesOf(mesh)).toBe(1);
    expect(volumeOf(mesh)).toBeGreaterThan(100);
  });

  test('is as large and as fine as a charm', () => {
    expect(triangleCount(mesh)).toBeGreaterThanOrEqual(5_000);
    expect(triangleCount(mesh)).toBeLessThanOrEqual(100_000);
    const { min, max } = boundsOf(mesh.positions);
    expect(min[2]).toBe(0);
    expect(max[2]).toBeGreaterThan(3);
    expect(max[2]).toBeLessThan(12);
    const across = [max[0] - min[0], max[1] - min[1]];
    expect(Math.max(...across)).toBeGreaterThan(15);
    expect(Math.max(...across)).toBeLessThan(40);
  });

  test('comes out in the same bytes every time', () => {
    // The file was made at install, by another run; its header carries the key of the code besides.
    const file = readFileSync(fileOf(name));
    expect(file.subarray(80).equals(writeStl(mesh, name).subarray(80))).toBe(true);
    expect(file.toString('latin1', 0, 80)).toMatch(new RegExp(`^${name} mm [0-9a-f]{16} *$`));
  });

  test('is sound to programs that are not ours, self-intersection included', () => {
    expect(judgeStl(fileOf(name)).faults).toEqual([]);
  });
});

test('a button has its four holes: V - E + F = 2 - 2 x 4', () => {
  expect(pairEdges(hedgerowMasters['oak-button'](kernel)).euler).toBe(-6);
});

test('only what is missing, cut short or of other code is made again', async () => {
  expect(readdirSync(folder).sort()).toEqual(names.map((name) => `${name}.stl`).sort());
  const before = readFileSync(fileOf('beetle'));
  expect(await makeMasters(folder)).toEqual([]);
  truncateSync(fileOf('beetle'), 1000);
  const old = Buffer.from(readFileSync(fileOf('seed-head')));
  old.write('0000000000000000', old.toString('latin1', 0, 80).search(/[0-9a-f]{16}/), 'latin1');
  writeFileSync(fileOf('seed-head'), old);
  rmSync(fileOf('oak-button'));
  expect(await makeMasters(folder)).toEqual(['beetle', 'oak-button', 'seed-head']);
  expect(readFileSync(fileOf('beetle')).equals(before)).toBe(true);
});
