import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { digestsIn, filesIn, run, sha256, stackTrace, workbench } from './workbench.ts';

const bench = workbench();

const disc = 'process: rubber\ndisc: { diameter: 100, thickness: 12 }\n';

const button = `title: Oak buttons
${disc}sprue: {}
parting: { surface: flat }
masters:
  button: { length: 12, width: 12, above: 3, below: 1 }
placements:
  - { master: button, ring: { count: 3, radius: 32 } }
registration:
  bosses:
    - { kind: cap nut, size: M6, at: { radius: 38, angle: 60 } }
    - { kind: cap nut, size: M5, at: { radius: 38, angle: 180 } }
    - { kind: cap nut, size: M6, at: { radius: 38, angle: 290 } }
fixture: { chordError: 0.1 }
tabs:
  - { angle: 145, width: 12 }
notches:
  - { angle: 30 }
`;

/** The same, with one master put past the rim. */
const pastRim = button.replace('ring: { count: 3, radius: 32 }', 'at: { radius: 48, angle: 0 }');

describe('build', () => {
  const plan = bench.put('buttons.yaml', button);

  it('writes every solid, the report and the manifest, and says where', async () => {
    const out = bench.path('first');
    const { code, out: said, err } = await run('build', plan, '--out', out);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect([...filesIn(out).keys()]).toEqual([
      'oak-buttons/cut/depth-gauge.dxf',
      'oak-buttons/cut/depth-gauge.svg',
      'oak-buttons/cut/layout-plate.dxf',
      'oak-buttons/cut/layout-plate.svg',
      'oak-buttons/cut/registration-jig.dxf',
      'oak-buttons/cut/registration-jig.svg',
      'oak-buttons/look/lower-blank.stl',
      'oak-buttons/look/lower-half.stl',
      'oak-buttons/look/upper-blank.stl',
      'oak-buttons/look/upper-half.stl',
      'oak-buttons/manifest.json',
      'oak-buttons/paper/parting-paper.dxf',
      'oak-buttons/paper/parting-paper.svg',
      'oak-buttons/print/all-solids.3mf',
      'oak-buttons/print/boss-cap-nut-m5.stl',
      'oak-buttons/print/boss-cap-nut-m6.stl',
      'oak-buttons/print/depth-gauge.stl',
      'oak-buttons/print/layout-plate.stl',
      'oak-buttons/print/notch-1.stl',
      'oak-buttons/print/plug.stl',
      'oak-buttons/print/registration-jig.stl',
      'oak-buttons/print/sprue-form.stl',
      'oak-buttons/print/tab-1.stl',
      'oak-buttons/report.json',
      'oak-buttons/shop-sheet.pdf',
    ]);
    expect(said).toContain(join(out, 'oak-buttons'));
    expect(said).toContain('Oak buttons: 0 stops, ');
    for (const line of said.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100);
  });

  it('lists in the manifest what is on the disk', () => {
    const files = filesIn(join(bench.path('first'), 'oak-buttons'));
    const manifest = JSON.parse(new TextDecoder().decode(files.get('manifest.json')));
    files.delete('manifest.json');
    expect(manifest.files.map(({ path }: { path: string }) => path).sort()).toEqual([...files.keys()].sort());
    for (const { path, sha256: listed } of manifest.files) {
      expect(sha256(files.get(path) ?? new Uint8Array()), path).toBe(listed);
    }
    expect(manifest.plan.sha256).toBe(sha256(readFileSync(plan)));
  });

  it('gives the same bytes a second time, over the first result and elsewhere', async () => {
    const first = digestsIn(bench.path('first'));
    await run('build', plan, '--out', bench.path('first'), '--quiet');
    await run('build', plan, '--out', bench.path('second'), '--quiet');
    expect(digestsIn(bench.path('first'))).toEqual(first);
    expect(digestsIn(bench.path('second'))).toEqual(first);
  });

  it('keeps what is still true, keeps what others put there, and leaves no temporary folder', async () => {
    const out = bench.path('first');
    bench.put('first/oak-buttons/notes.txt', 'gate at 40 degrees');
    await run('build', plan, '--out', out, '--quiet', '--only', 'plug');
    expect(readdirSync(out)).toEqual(['oak-buttons']);
    const written = [...filesIn(join(out, 'oak-buttons')).keys()];
    expect(written).toEqual(
      expect.arrayContaining(['print/all-solids.3mf', 'print/chosen-solids.3mf', 'look/upper-half.stl']),
    );
    expect(readFileSync(join(out, 'oak-buttons', 'notes.txt'), 'utf8')).toBe('gate at 40 degrees');
  });

  it('says nothing with --quiet when all is well', async () => {
    const { code, out, err } = await run('build', plan, '--out', bench.path('quiet'), '--quiet');
    expect({ code, out, err }).toEqual({ code: 0, out: '', err: '' });
  });

  it('prints manifest, report and what is withheld as JSON, and nothing else', async () => {
    const { out, err } = await run('build', plan, '--out', bench.path('json'), '--json');
    expect(err).toBe('');
    const { manifest, report, withheld } = JSON.parse(out);
    expect(manifest.program.name).toBe('discwright');
    expect(report.schema).toBe(2);
    expect(withheld).toEqual([]);
  });

  it('builds a folder with a plan.yaml in it', async () => {
    mkdirSync(bench.path('folder'));
    bench.put('folder/plan.yaml', disc);
    const { code } = await run('build', bench.path('folder'), '--out', bench.path('of-folder'), '--quiet');
    expect(code).toBe(0);
    expect(existsSync(join(bench.path('of-folder'), 'mold', 'look', 'lower-half.stl'))).toBe(true);
  });
});

describe('build --only', () => {
  const plan = bench.put('some.yaml', button);
  const only = async (...names: string[]) => {
    const out = bench.path(`only-${names.join('-')}`);
    const ran = await run('build', plan, '--out', out, '--quiet', '--only', ...names);
    return {
      ...ran,
      stl: [...filesIn(out).keys()].map((path) => path.split('/').at(-1) ?? '').filter(isStl),
    };
  };
  const isStl = (name: string) => name.endsWith('.stl');

  it('takes the id of a kind of solid', async () => {
    expect((await only('sprue-form')).stl).toEqual(['sprue-form.stl']);
    expect((await only('bosses', 'tab')).stl).toEqual([
      'boss-cap-nut-m5.stl',
      'boss-cap-nut-m6.stl',
      'tab-1.stl',
    ]);
  });

  it('takes the id of one solid, or its beginning', async () => {
    expect((await only('boss-cap-nut-m5')).stl).toEqual(['boss-cap-nut-m5.stl']);
    expect((await only('lower-')).stl).toEqual(['lower-blank.stl', 'lower-half.stl']);
  });

  it('takes several in one word with commas, and a word of a kind', async () => {
    expect((await only('plug,sprue-form')).stl).toEqual(['plug.stl', 'sprue-form.stl']);
    expect((await only('jig')).stl).toEqual(['registration-jig.stl']);
  });

  it('lists the kinds where nothing fits at all', async () => {
    const { code, err } = await only('sprew');
    expect(code).toBe(2);
    expect(err).toMatch(/begins with sprew; names and kinds are .*sprue-form.*; nothing was written$/);
  });

  it('says in its last paragraph what was written and no more', async () => {
    const last = async (...formats: string[]) => {
      const out = bench.path('last-line');
      const ran = await run('build', plan, '--out', out, '--only', 'plug', ...formats);
      return ran.out.split('\n\n').at(-1)?.replaceAll('\n', ' ');
    };
    expect(await last()).toMatch(/^1 STL, 1 3MF, the shop sheet, the report and the manifest are in /);
    expect(await last('--formats', 'stl')).toMatch(/^1 STL and the manifest are in /);
  });

  it('refuses a name that fits nothing, says which there are, and writes nothing', async () => {
    const { code, err, stl } = await only('sprue-form', 'sprew');
    expect(code).toBe(2);
    expect(err).toMatch(/^discwright: no solid or drawing of this plan begins with sprew;/);
    expect(err).toContain('sprue-form');
    expect(err).not.toMatch(stackTrace);
    expect(stl).toEqual([]);
  });
});

describe('a stop', () => {
  const plan = bench.put('past-rim.yaml', pastRim);

  it('about a master past the rim withholds what is made from it and nothing else', async () => {
    const out = bench.path('stopped');
    const { code, out: said } = await run('build', plan, '--out', out);
    expect(code).toBe(1);
    expect([...filesIn(out).keys()]).toEqual(
      [
        'cut/registration-jig.dxf',
        'cut/registration-jig.svg',
        'look/lower-blank.stl',
        'look/upper-blank.stl',
        'manifest.json',
        'print/all-solids.3mf',
        'print/boss-cap-nut-m5.stl',
        'print/boss-cap-nut-m6.stl',
        'print/notch-1.stl',
        'print/plug.stl',
        'print/registration-jig.stl',
        'print/sprue-form.stl',
        'print/tab-1.stl',
        'report.json',
        'shop-sheet.pdf',
      ].map((name) => `oak-buttons/${name}`),
    );
    expect(said).toMatch(/withheld: lower half, upper half, [\s\S]*\. button[\s\S]* beyond the rim/);
    const manifest = JSON.parse(readFileSync(join(out, 'oak-buttons', 'manifest.json'), 'utf8'));
    expect(manifest.withheld.map(({ id }: { id: string }) => id)).toEqual([
      'lower-half',
      'upper-half',
      'depth-gauge',
      'layout-plate',
      'parting-paper',
    ]);
  });

  it('is told even with --quiet', async () => {
    const { code, out, err } = await run('build', plan, '--out', bench.path('stopped'), '--quiet');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/^withheld: lower half, upper half, [\s\S]*\. button/);
  });

  it('about something else does not withhold what is asked for, but still gives exit 1', async () => {
    const out = bench.path('stopped-only');
    const { code } = await run('build', plan, '--out', out, '--only', 'sprue-form', '--quiet');
    expect(code).toBe(1);
    expect([...filesIn(out).keys()]).toContain('oak-buttons/print/sprue-form.stl');
  });

  it('about a boss that is not in the tables withholds the halves, which lack it', async () => {
    const out = bench.path('unknown-nut');
    const unknown = bench.put('unknown-nut.yaml', button.replace('size: M5', 'size: M99'));
    const { code } = await run('build', unknown, '--out', out, '--quiet');
    expect(code).toBe(1);
    const written = [...filesIn(out).keys()];
    expect(written).not.toContain('oak-buttons/look/lower-half.stl');
    expect(written).toContain('oak-buttons/print/boss-cap-nut-m6.stl');
    expect(written).toContain('oak-buttons/print/sprue-form.stl');
  });

  it('about halves that also close turned withholds the halves, not the fixtures', async () => {
    const out = bench.path('turned');
    // Three equal bosses at equal angles: the halves close at every third of a turn.
    const even = button.replace('size: M5', 'size: M6').replace('angle: 290', 'angle: 300');
    const { code, err } = await run('build', bench.put('even.yaml', even), '--out', out, '--quiet');
    expect(code).toBe(1);
    expect(err).toMatch(/^withheld: lower half, upper half\. Turned by 120.0 deg/);
    expect([...filesIn(out).keys()]).toContain('oak-buttons/print/sprue-form.stl');
  });
});

describe('the formats', () => {
  const plan = bench.put('formats.yaml', `${disc}sprue: {}\n`);

  it('written are those asked for, and the manifest; with JSON the report is printed all the same', async () => {
    const out = bench.path('formats');
    const { out: said } = await run('build', plan, '--out', out, '--formats', '3mf', '--json');
    expect([...filesIn(out).keys()]).toEqual(['mold/manifest.json', 'mold/print/all-solids.3mf']);
    expect(JSON.parse(said).report.schema).toBe(2);
  });

  it('may stand in one word, and take the place of those of an earlier build', async () => {
    const out = bench.path('formats');
    const { code } = await run('build', plan, '--out', out, '--quiet', '--formats', 'stl,report');
    expect(code).toBe(0);
    const written = [...filesIn(out).keys()];
    expect(written).toContain('mold/look/lower-half.stl');
    expect(written).toContain('mold/report.json');
    expect(written).not.toContain('mold/print/all-solids.3mf');
  });

  test.each([['stll'], [','], ['stl,obj']])(
    '%s is one line and exit 2, before anything is made',
    async (name) => {
      const { code, err } = await run('build', plan, '--out', bench.path('none'), '--formats', name);
      expect(code).toBe(2);
      expect(err).toMatch(/^discwright: --formats .*: give one or more of stl, 3mf, /);
      expect([...filesIn(bench.path('none')).keys()]).toEqual([]);
    },
  );
});
