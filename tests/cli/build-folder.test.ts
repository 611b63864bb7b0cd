import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { digestsIn, filesIn, run, workbench } from './workbench.ts';

const bench = workbench();

const disc = 'process: rubber\ndisc: { diameter: 100, thickness: 12 }\n';

describe('an output folder that cannot be written', () => {
  const plan = bench.put('plain.yaml', disc);

  it('is one line and exit 2 where a file stands in the way', async () => {
    const out = bench.put('a-file', 'not a folder');
    const { code, err } = await run('build', plan, '--out', out, '--quiet');
    expect(code).toBe(2);
    expect(err).toMatch(/^discwright: cannot write to .*a-file.*$/);
    expect(err).not.toContain('\n');
    expect(readFileSync(out, 'utf8')).toBe('not a folder');
  });

  it('is one line and exit 2 where a folder of that name holds other things, which stay', async () => {
    const out = bench.path('home');
    mkdirSync(join(out, 'mold'), { recursive: true });
    bench.put('home/mold/recipe.txt', 'mother of all recipes');
    const { code, err } = await run('build', plan, '--out', out, '--quiet');
    expect(code).toBe(2);
    expect(err).toMatch(/^discwright: .*mold is there already and is no earlier build/);
    expect(err).not.toContain('\n');
    expect([...filesIn(out).keys()]).toEqual(['mold/recipe.txt']);
  });

  it('is one line and exit 2 where a file of somebody else would be overwritten', async () => {
    const out = bench.path('edited');
    await run('build', plan, '--out', out, '--quiet', '--only', 'upper-half');
    bench.put('edited/mold/lower-half.stl', 'drawn by hand');
    const before = digestsIn(out);
    const { code, err } = await run('build', plan, '--out', out, '--quiet');
    expect(code).toBe(2);
    expect(err).toMatch(/lower-half.stl is not from an earlier build and would be lost/);
    expect(digestsIn(out)).toEqual(before);
  });

  it('is one line and exit 2 where the file system refuses the name', async () => {
    const { code, err } = await run('build', plan, '--out', bench.path('x'.repeat(300)), '--quiet');
    expect(code).toBe(2);
    expect(err).toMatch(/^discwright: cannot write to .*\(ENAMETOOLONG\); nothing was changed there$/);
  });
});

describe('solids of one name', () => {
  it('get a number, and that is said', async () => {
    const out = bench.path('names');
    const tabs = `${disc}sprue: {}\ntabs:\n  - { id: Plug, angle: 90, width: 10 }\n`;
    const { code, out: said } = await run('build', bench.put('names.yaml', tabs), '--out', out);
    expect(code).toBe(0);
    expect(said).toMatch(/note {2}solid.renamed {2}Plug-2/);
    const written = [...filesIn(out).keys()];
    expect(written).toContain('mold/plug.stl');
    expect(written).toContain('mold/Plug-2.stl');
  });
});
