import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { compiledProgram, runCompiled, runInTurn } from './compiled.ts';
import { digestsIn, filesIn, run, stackTrace, workbench } from './workbench.ts';

const bench = workbench();
const decoder = new TextDecoder();

const plan = bench.put(
  'form.yaml',
  `title: Sprue form
process: rubber
disc: { diameter: 230, lower: 19, upper: 19 }
# The pouring hole.
sprue: { hole: 32, draft: 3, well: { diameter: 48, depth: 7 } }
fixture: { material: PETG }
`,
);

/** A number no process has: Linux and macOS number from 1 to at most 2^22. */
const dead = 2 ** 22 + 1;

/** Quick formats: the paper and the package take most of the time. */
const quick = ['--formats', 'stl', 'report', '--workers', '1'];
const folderOf = (out: string): string => join(bench.path(out), 'form-batch');
const batch = (out: string, ...args: readonly string[]) =>
  run('batch', plan, ...args, '--out', bench.path(out));
const make = (out: string, ...args: readonly string[]) =>
  runCompiled('batch', plan, ...args, ...quick, '--out', bench.path(out));

interface Summary {
  readonly variants: readonly {
    readonly name: string;
    readonly built: boolean;
    readonly stops: number;
    readonly settings: readonly { readonly path: string; readonly value: string }[];
    readonly open: readonly { readonly code: string; readonly says: string }[];
  }[];
}
const summaryIn = (out: string): Summary =>
  JSON.parse(decoder.decode(filesIn(folderOf(out)).get('batch-summary.json')));

describe('a batch of sprue forms', () => {
  it('makes every combination whole, sums them up, and does nothing over that is unchanged', async () => {
    const vary = [
      '--vary',
      'sprue.hole=28,32',
      '--vary',
      'sprue.draft=3,4',
      '--formats',
      'stl',
      'overview',
      '--workers',
      '2',
    ];
    const grid = () => runCompiled('batch', plan, ...vary, '--out', bench.path('grid'));
    const first = await grid();
    expect(first.code).toBe(0);
    expect(first.out).toContain('4 made, 0 unchanged and skipped, 0 with stops, 0 not built');
    const { variants } = summaryIn('grid');
    expect(variants.map(({ settings }) => settings.map(({ value }) => value))).toEqual([
      ['28', '3'],
      ['28', '4'],
      ['32', '3'],
      ['32', '4'],
    ]);
    const before = digestsIn(folderOf('grid'));
    expect([...before.keys()].filter((path) => path.endsWith('overview.png')).length).toBe(4);
    rmSync(join(folderOf('grid'), variants[1].name, 'print', 'plug.stl'));
    const second = await grid();
    expect(second.out).toContain('1 made, 3 unchanged and skipped');
    expect(digestsIn(folderOf('grid'))).toEqual(before);
    // A killed run left a half beside one, and fell between the two renames of another: both are put right and skipped.
    const left = (name: string): string => join(folderOf('grid'), `.${name}-${dead}-Ab3dE6`);
    for (const { name } of variants.slice(0, 2)) mkdirSync(join(left(name), 'new'), { recursive: true });
    renameSync(join(folderOf('grid'), variants[1].name), join(left(variants[1].name), 'old'));
    // The plan is the same one, whichever way it is named.
    const third = await runCompiled(
      ...['batch', `${bench.folder}/./form.yaml`, ...vary, '--out', bench.path('grid')],
    );
    expect(third.out).toContain('0 made, 4 unchanged and skipped');
    expect(digestsIn(folderOf('grid'))).toEqual(before);
  });

  it('merges five shards to the bytes of a single run', async () => {
    const table = bench.put(
      'seven.csv',
      'name,sprue.hole,disc.diameter\na,28,\nb,30,9in\nc,wide,\nd,,200\ne,29\nf,31,8 in\ng,33,230\n',
    );
    const whole = await make('whole', '--table', table);
    expect(whole.code).toBe(1);
    const shards = await runInTurn(
      [4, 1, 5, 3, 2].map((part) => [
        ...['batch', plan, '--table', table, '--shard', `${part}/5`],
        ...[...quick, '--out', bench.path('parts')],
      ]),
    );
    expect(shards.length).toBe(5);
    expect(digestsIn(folderOf('parts'))).toEqual(digestsIn(folderOf('whole')));
    // The summary can also be written from the folders alone.
    rmSync(join(folderOf('parts'), 'batch-summary.html'));
    await make('parts', '--table', table, '--summary');
    expect(digestsIn(folderOf('parts'))).toEqual(digestsIn(folderOf('whole')));
  });

  it('names row and column of a bad cell, and goes on with the other rows', async () => {
    const { out } = await make('whole', '--table', bench.path('seven.csv'));
    expect(out).toMatch(/c: +In row 4 the `wide` of column sprue\.hole will not do: /);
    expect(out).toContain('Row 6 has 2 cells, the head has 3.');
    expect(out).not.toMatch(stackTrace);
    const built = summaryIn('whole').variants.filter((one) => one.built);
    expect(built.map(({ name }) => name)).toEqual(['a', 'b', 'd', 'f', 'g']);
    expect(existsSync(join(folderOf('whole'), 'c', 'report.json'))).toBe(true);
  });

  it('takes together what is to go together', async () => {
    const vary = ['--vary', 'sprue.hole=28,32', '--vary', 'sprue.draft=3,4', '--together'];
    // From its source too, workers and all.
    expect((await batch('zip', ...vary, ...quick)).code).toBe(0);
    expect(summaryIn('zip').variants.map(({ name }) => name)).toEqual([
      'sprue-hole-28-sprue-draft-3',
      'sprue-hole-32-sprue-draft-4',
    ]);
  });

  it('lists one that has nothing of what was asked for', async () => {
    const { code, out } = await make('only', '--vary', 'sprue.hole=32', '--only', 'anvil');
    expect(code).toBe(1);
    expect(out).toMatch(/No solid or drawing of this variant begins with anvil/);
  });

  it('writes texts of a table as texts, into the page and for a spreadsheet', async () => {
    const table = bench.put('texts.csv', 'title,disc.label\n=1+1,"<b>&""x"\n');
    expect((await make('texts', '--table', table)).code).toBe(0);
    const files = filesIn(folderOf('texts'));
    expect(decoder.decode(files.get('batch-summary.csv'))).toContain(`,'=1+1,"<b>&""x",fine,`);
    expect(decoder.decode(files.get('batch-summary.html'))).toContain('&lt;b&gt;&amp;&quot;x');
    expect(decoder.decode(files.get('batch-summary.html'))).not.toContain('<b>&');
  });
});

describe('what cannot be done is said in one line, exit 2', () => {
  const csv = (name: string, text: string): string[] => ['--table', bench.put(name, text)];
  test.each([
    [[], /say what to vary: --vary disc\.diameter=6in,9in,12in, or --table/],
    [['--vary', 'disc.diametre=6in'], /no `diametre` in `disc`.*Did you mean `disc\.diameter`\?/],
    [['--vary', 'disc.diameter'], /does not say what takes which values/],
    [['--vary', 'disc.diameter=1..5000', '--vary', 'sprue.hole=1..50'], /250000 variants; at most 10000/],
    [['--vary', 'sprue.hole=1,2', '--vary', 'sprue.draft=1', '--together'], /equally many values/],
    [['--vary', 'sprue.hole=1', '--workers', '0'], /--workers 0: give a number/],
    [['--vary', 'sprue.hole=1', '--shard', '6/5'], /--shard 6\/5: write it like 2\/5/],
    [['--vary', 'sprue.hole=1', '--formats', 'gold'], /--formats gold: give one or more of stl/],
    [['--table', bench.path('none.csv')], /there is no file .*none\.csv/],
    [csv('path.csv', 'disc.diametre\n6in\n'), /column `disc\.diametre`.*Did you mean `disc\.diameter`\?/],
    [csv('empty.csv', ''), /has no head row/],
    [csv('head.csv', 'name,sprue.hole\n'), /has no row under its head/],
    [csv('twice.csv', 'sprue.hole,sprue.hole\n1,2\n'), /has two columns sprue\.hole/],
    [csv('gap.csv', 'sprue.hole,\n1,2\n'), /column 2 has no name/],
    [csv('quote.csv', 'title\n"open\n'), /is no table of comma-separated values/],
    [
      csv('inches.csv', 'name,disc.diameter\na,9"\n'),
      /line 2: a quote mark stands alone; write inches as 9 in/,
    ],
    [csv('semicolons.csv', 'name;sprue.hole\na;28,5\n'), /parted by semicolons, not by commas; save it with/],
    [csv('tabs.csv', 'name\tsprue.hole\na\t28\n'), /parted by tabs, not by commas/],
    [csv('last.csv', 'Diameter\n9in\n'), /Did you mean `disc\.diameter` or `/],
    [csv('hole.csv', 'hole\n28\n'), /Did you mean `sprue\.hole`/],
  ])('%j', async (args, says) => {
    const { code, out, err } = await batch('bad', ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err.split('\n').length).toBe(1);
    expect(err).not.toMatch(stackTrace);
  });

  // Root may write into any folder of its own; into the kernel's tree nobody may.
  it('an output folder that may not be written', async () => {
    const closed = process.getuid?.() === 0 ? '/sys/kernel' : bench.path('closed');
    if (closed !== '/sys/kernel') mkdirSync(closed, { mode: 0o555 });
    const { code, out, err } = await run('batch', plan, '--vary', 'sprue.hole=32', '--out', closed);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/cannot write to .*form-batch: .* \(E[A-Z]+\); nothing was changed there$/);
  });

  it('a disk that takes no more: nothing half-written, no more begun, and it goes on when there is room', async () => {
    const args = ['batch', plan, '--vary', 'sprue.hole=24,28,32', ...quick, '--out', bench.path('full')];
    const program = [process.execPath, compiledProgram, ...args].map((word) => `'${word}'`).join(' ');
    // 20 or 40 KiB: less than one STL of the form.
    const { status, stdout } = spawnSync('sh', ['-c', `ulimit -f 40; exec ${program}`], { encoding: 'utf8' });
    expect(status).toBe(2);
    const said = stdout.replace(/\s+/g, ' ');
    expect(said).toMatch(/sprue-hole-24: cannot write to \S+: [a-z ]+ \(EFBIG\); nothing was changed there/);
    expect(said).toContain('2 not begun: nothing more can be written there');
    expect(stdout).not.toMatch(stackTrace);
    expect(readdirSync(folderOf('full')).filter((name) => !name.startsWith('batch-summary'))).toEqual([]);
    const again = await runCompiled(...args);
    expect(again.out).toContain('3 made, 0 unchanged and skipped');
  });

  it('an output folder that cannot be written', async () => {
    writeFileSync(bench.path('in-the-way'), 'a file');
    const { code, err } = await batch('in-the-way', '--vary', 'sprue.hole=32');
    expect(code).toBe(2);
    expect(err).toMatch(/cannot write to .*in-the-way.*: a file is in the way/);
  });
});
