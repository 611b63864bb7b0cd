import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { loadKernel } from '../src/kernel/index.ts';
import { figurineDisc, judgeDisc } from './figurine-discs.ts';

const folder = mkdtempSync(join(tmpdir(), 'figurines-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// Many more by hand: bench/figurines.ts. This one crossed itself in both halves by 1e-4 mm.
test('halves of fingers and shells stuck into one another are sound to independent programs', async () => {
  const judged = await judgeDisc(figurineDisc(14), await loadKernel(), (name, bytes) => {
    const path = join(folder, name);
    writeFileSync(path, bytes);
    return path;
  });
  expect(judged.faults).toEqual([]);
  expect(judged.files).toBe(2);
  expect(judged.findings.map(({ code }) => code)).not.toContain('solid.crossed');
});
