import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { digestsIn, filesIn, run, sha256, workbench } from './workbench.ts';

const bench = workbench();

const disc = 'title: Oak\nprocess: rubber\ndisc: { diameter: 100, thickness: 12 }\nsprue: {}\n';

const manifestIn = (folder: string) => JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8'));

/** Paths and hashes that a manifest lists, and those of the files there. */
function listedAndThere(folder: string) {
  const { files } = manifestIn(folder) as { files: { path: string; sha256: string }[] };
  const there = [...filesIn(folder)].filter(([path]) => path !== 'manifest.json');
  return {
    listed: new Map(files.map(({ path, sha256: hash }) => [path, hash])),
    there: new Map(there.map(([path, bytes]) => [path, sha256(bytes)])),
  };
}

const sorted = (map: ReadonlyMap<string, string>) => [...map].sort(([a], [b]) => (a < b ? -1 : 1));

describe('a folder built from another plan', () => {
  const plans = ['alice', 'bob'].map((name) => {
    mkdirSync(bench.path(name));
    return bench.put(`${name}/disc.yaml`, name === 'bob' ? disc.replace('100', '120') : disc);
  });
  const out = bench.path('shared');

  it('is left alone, and the other plan is named', async () => {
    expect((await run('build', plans[0], '--out', out, '--quiet')).code).toBe(0);
    const before = digestsIn(out);
    const { code, err } = await run('build', plans[1], '--out', out, '--quiet');
    expect(code).toBe(2);
    expect(err).toMatch(/oak was built from another plan \(alice\/disc.yaml, this is bob\/disc.yaml\);/);
    expect(err).toMatch(/nothing was changed there: .* --replace$/);
    expect(digestsIn(out)).toEqual(before);
  });

  it('is left alone by --only too', async () => {
    const before = digestsIn(out);
    expect((await run('build', plans[1], '--out', out, '--only', 'plug')).code).toBe(2);
    expect(digestsIn(out)).toEqual(before);
  });

  it('is replaced with --replace', async () => {
    expect((await run('build', plans[1], '--out', out, '--quiet', '--replace')).code).toBe(0);
    expect(manifestIn(join(out, 'oak')).plan).toMatchObject({ title: 'Oak', file: 'bob/disc.yaml' });
  });

  it('is one of the plan itself when that was edited', async () => {
    bench.put('bob/disc.yaml', disc.replace('100', '130'));
    expect((await run('build', plans[1], '--out', out, '--quiet')).code).toBe(0);
  });
});

it('two new plans build side by side', async () => {
  const out = bench.path('side-by-side');
  for (const name of ['ivy.yaml', 'beetle.yaml']) {
    const plan = bench.path(name);
    await run('new', plan, '--diameter', '100');
    expect((await run('build', plan, '--out', out, '--quiet', '--only', 'plug')).code).toBe(0);
  }
  expect([...filesIn(out).keys()].filter((path) => path.endsWith('.stl'))).toEqual([
    'beetle/machine/plug.stl',
    'ivy/machine/plug.stl',
  ]);
});

describe('build --only over an earlier build', () => {
  const plan = bench.put('only.yaml', disc);
  const build = (out: string, ...names: string[]) =>
    run('build', plan, '--out', out, ...(names.length > 0 ? ['--only', ...names] : []));

  it('of all keeps every file of it, and adds those of the few', async () => {
    const out = bench.path('all-first');
    await build(out);
    const before = digestsIn(join(out, 'oak'));
    const whole = manifestIn(join(out, 'oak'));
    await build(out, 'plug');
    const { listed, there } = listedAndThere(join(out, 'oak'));
    expect(sorted(listed)).toEqual(sorted(there));
    expect(there.has('print/chosen-solids.3mf')).toBe(true);
    before.delete('manifest.json');
    for (const [path, hash] of before) expect(there.get(path), path).toBe(hash);
    const { files, ...rest } = manifestIn(join(out, 'oak'));
    expect(files.slice(0, -1)).toEqual(whole.files);
    expect({ ...rest, files: whole.files }).toEqual(whole);
  });

  it('of a few keeps them, and says in the manifest which were asked for', async () => {
    const out = bench.path('few-first');
    await build(out, 'plug');
    await build(out, 'sprue-form');
    const { listed, there } = listedAndThere(join(out, 'oak'));
    expect(sorted(listed)).toEqual(sorted(there));
    expect([...there.keys()].filter((path) => path.endsWith('.stl'))).toEqual([
      'print/plug.stl',
      'print/sprue-form.stl',
    ]);
    expect(manifestIn(join(out, 'oak')).only).toEqual(['plug', 'sprue-form']);
  });

  it('takes away what is not true of an edited plan, and names it', async () => {
    const out = bench.path('edited');
    await build(out, 'plug', 'sprue-form');
    bench.put('only.yaml', `${disc}revision: 2\n`);
    const { out: said } = await build(out, 'plug');
    bench.put('only.yaml', disc);
    expect(said).toContain(
      'taken away, for plan, masters or program have changed since: print/sprue-form.stl',
    );
    const { listed, there } = listedAndThere(join(out, 'oak'));
    expect(sorted(listed)).toEqual(sorted(there));
    expect(there.has('print/sprue-form.stl')).toBe(false);
  });

  it('leaves a file changed by hand where it is, but out of the manifest, and forgets one that is gone', async () => {
    const out = bench.path('by-hand');
    await build(out);
    bench.put('by-hand/oak/print/sprue-form.stl', 'filed by hand');
    rmSync(join(out, 'oak', 'look', 'upper-half.stl'));
    await build(out, 'plug');
    const { listed, there } = listedAndThere(join(out, 'oak'));
    expect(readFileSync(join(out, 'oak', 'print', 'sprue-form.stl'), 'utf8')).toBe('filed by hand');
    there.delete('print/sprue-form.stl');
    expect(sorted(listed)).toEqual(sorted(there));
    expect(listed.has('look/upper-half.stl')).toBe(false);
  });

  it('reads nothing outside the folder, whatever its manifest names', async () => {
    const out = bench.path('hostile');
    await build(out);
    bench.put('secret.txt', 'recipe');
    const manifest = manifestIn(join(out, 'oak'));
    manifest.files.push({ path: '../../secret.txt', sha256: sha256(Buffer.from('recipe')) });
    bench.put('hostile/oak/manifest.json', JSON.stringify(manifest));
    await build(out, 'plug');
    expect(JSON.stringify(manifestIn(join(out, 'oak')))).not.toContain('secret');
    expect(readFileSync(bench.path('secret.txt'), 'utf8')).toBe('recipe');
  });
});

it('a batch leaves variants of another plan alone', async () => {
  const folder = bench.path('batches/disc-batch/sprue-hole-20');
  mkdirSync(folder, { recursive: true });
  const manifest = { program: { name: 'discwright' }, plan: { file: 'alice/disc.yaml' }, files: [] };
  bench.put('batches/disc-batch/sprue-hole-20/manifest.json', JSON.stringify(manifest));
  const before = digestsIn(bench.path('batches'));
  const plan = bench.path('bob/disc.yaml');
  const { code, err } = await run('batch', plan, '--vary', 'sprue.hole=20', '--out', bench.path('batches'));
  expect(code).toBe(2);
  expect(err).toMatch(
    /sprue-hole-20 was built from another plan \(alice\/disc.yaml, this is bob\/disc.yaml\)/,
  );
  expect(digestsIn(bench.path('batches'))).toEqual(before);
});
