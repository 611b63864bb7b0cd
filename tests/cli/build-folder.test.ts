import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
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
    bench.put('edited/mold/look/lower-half.stl', 'drawn by hand');
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

describe('what a person put into the folder of a build', () => {
  const plan = bench.put('kept.yaml', disc);
  const out = bench.path('kept');
  const build = () => run('build', plan, '--out', out, '--quiet');
  const put = (name: string, content: string) => {
    mkdirSync(dirname(bench.path(`kept/mold/${name}`)), { recursive: true });
    bench.put(`kept/mold/${name}`, content);
  };
  const paths = () => [...filesIn(join(out, 'mold')).keys()];
  const manifestPath = join(out, 'mold', 'manifest.json');

  it('stays there, in a folder of the build too', async () => {
    await build();
    const clean = paths();
    put('look/sliced.gcode', 'G28');
    put('sketches/gate.txt', '40 degrees');
    await build();
    expect(paths()).toEqual([...clean, 'look/sliced.gcode', 'sketches/gate.txt'].sort());
    expect(readFileSync(join(out, 'mold/look/sliced.gcode'), 'utf8')).toBe('G28');
  });

  it('stays as an older build that laid all files flat is replaced, of which nothing is left', async () => {
    // As older builds left it: every file at the top.
    const manifest = JSON.parse(readFileSync(manifestPath, 'utf8'));
    for (const file of manifest.files) {
      const flat = basename(file.path);
      if (flat !== file.path) renameSync(join(out, 'mold', file.path), join(out, 'mold', flat));
      file.path = flat;
    }
    writeFileSync(manifestPath, JSON.stringify({ ...manifest, schema: 1 }));
    put('upper-half.stl', 'filed by hand');
    put('print/sliced.gcode', 'G29');
    expect(paths()).toContain('lower-half.stl');
    expect((await build()).code).toBe(0);
    expect(paths().filter((path) => !path.includes('/'))).toEqual([
      'manifest.json',
      'report.json',
      'shop-sheet.pdf',
      'upper-half.stl',
    ]);
    expect(readFileSync(join(out, 'mold/upper-half.stl'), 'utf8')).toBe('filed by hand');
    for (const kept of [
      'look/sliced.gcode',
      'sketches/gate.txt',
      'print/sliced.gcode',
      'look/lower-half.stl',
    ])
      expect(paths()).toContain(kept);
  });

  it('is not lost where a folder of the build would take its place', async () => {
    rmSync(join(out, 'mold'), { recursive: true });
    await build();
    rmSync(join(out, 'mold/look'), { recursive: true });
    put('look', 'what to look at');
    const { code, err } = await build();
    expect(code).toBe(2);
    expect(err).toMatch(/look is not from an earlier build and would be lost/);
    expect(readFileSync(join(out, 'mold/look'), 'utf8')).toBe('what to look at');
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
    expect(written).toContain('mold/print/plug.stl');
    expect(written).toContain('mold/print/Plug-2.stl');
  });
});
