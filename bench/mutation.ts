/**
 * How much of the code the tests hold: each small change (another sign, a limit moved, a term left out) is tried against the
 * tests that reach it, until one fails. Prints a table beside the stored one, and each change that no test saw.
 *   npm install --no-save @stryker-mutator/instrumenter@9.6.1
 *   npx tsx bench/mutation.ts src/checks/walls [src/checks/cover/cover.ts ...] [--minutes 20] [--store]
 * `--store` writes the table of `bench/mutation-baseline.txt` anew for the files run; what stands there below the table is
 * written by hand. After `--minutes` no change is begun; those tried are drawn from all files alike. The instrumenter of StrykerJS builds all changes into the code with a switch for each, in memory: no file is
 * touched. All tests are loaded in one process, run once to see what each reaches, and once more for how long it takes; see
 * `mutation-run.ts` for what is run against a change, and what can only make one survive that others would have seen.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { startVitest } from 'vitest/node';

const root = join(import.meta.dirname, '..');
const baseline = join(import.meta.dirname, 'mutation-baseline.txt');

/** Test files (within `tests`) that concern what lies under a folder; of the plans with one fault, those whose code matches. */
const concerns: readonly { under: string; tests: RegExp; faults?: RegExp }[] = [
  {
    under: 'src/physics',
    tests:
      /^(physics|checks\/registration|checks\/turning)\/|^published\/(can-.*|clash|closing|cure|flash|heat|heat-limits|lid|lidded-cure|molten|pack|play|pours|setting|shot|spew|spin|squeeze|superheat|tightening|turning)$/,
  },
  ...(
    [
      ['can', /can-.*|closing|ledger|lid|own-materials|pack|spew|tightening/, /^(fit|closing|pack)\./],
      ['cover', /distances/, /^cover\./],
      ['from-mold', /can-.*|heat-limits|lid|pack|spew|turning/, /^(balance|heat|fit)\./],
      ['heat', /cure|heat|heat-limits|lidded-cure|molten|own-materials|superheat/, /^(cure|heat)\./],
      ['pouring', /molten|order|pours|setting/, /^(setting|pours|order|cost|pouring)\./],
      ['registration', /clash|play/, /^(registration|layout)\./],
      ['release', /release|support/, /^(undercut|release|support|mold)\./],
      ['turning', /flash|molten|shot|spin|squeeze|turning/, /^(balance|shot|spin)\./],
      ['walls', /distances/, /^(walls|channels)\./],
    ] as const
  ).map(([room, published, faults]) => ({
    under: `src/checks/${room}`,
    tests: new RegExp(
      `^checks/(units$|(${room}|from-mold)/)|^faults/single-faults$|^published/(${published.source})$`,
    ),
    faults,
  })),
  { under: 'src/mold/shapes', tests: /^mold\/|^parts\/(flat|registration|sprue)\// },
  { under: 'src/mold', tests: /^mold\// },
];

export interface Change {
  readonly id: string;
  readonly file: string;
  readonly location: { start: Place; end: Place };
  readonly replacement: string;
}

interface Place {
  readonly line: number;
  readonly column: number;
}

export interface Outcome extends Change {
  readonly end: (typeof ends)[number];
  readonly by?: string;
}

export interface Run {
  readonly changes: readonly Change[];
  readonly tests: readonly string[];
  /** Codes of the plans with one fault that are run. */
  readonly faults: string;
  /** No change is begun after. */
  readonly minutes: number;
  readonly out: string;
}

interface Instrumenter {
  instrument(
    files: readonly { name: string; content: string; mutate: true }[],
    options: { excludedMutations: []; ignorers: []; plugins: null },
  ): Promise<{
    files: readonly { name: string; content: string }[];
    mutants: readonly (Omit<Change, 'file'> & { fileName: string; status?: string })[];
  }>;
}

/** Loaded by a name that nothing looks up before: it is installed for a run by hand alone. */
async function loadInstrumenter(): Promise<Instrumenter> {
  const name = '@stryker-mutator/instrumenter';
  const { createParser } = await import(new URL('parsers/index.js', import.meta.resolve(name)).href);
  const { print } = await import(new URL('printers/index.js', import.meta.resolve(name)).href);
  const { transform } = await import(new URL('transformers/index.js', import.meta.resolve(name)).href);
  const { Instrumenter } = await import(name);
  const log = { debug() {}, info() {}, warn: console.warn, isDebugEnabled: () => false };
  return new Instrumenter(log, createParser, print, transform);
}

/** What is kept per object would outlast a change: made anew each time in the files that are changed. */
const keepNothing = (code: string): string => code.replace(/\bmemoPer(Mesh|Object)\(/g, '((make) => make)(');

const within = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.ts'))
    .sort();

function filesOf(paths: readonly string[]): string[] {
  const all = paths.flatMap((path) =>
    statSync(join(root, path)).isDirectory() ? within(path).map((file) => `${path}/${file}`) : [path],
  );
  if (all.length === 0) throw new Error('name a file or folder under src');
  return all.filter((file) => !file.endsWith('/index.ts')).sort();
}

async function run(files: readonly string[], minutes: number): Promise<Outcome[]> {
  const instrumenter = await loadInstrumenter();
  const { files: changed, mutants } = await instrumenter.instrument(
    files.map((name) => ({ name, content: readFileSync(join(root, name), 'utf8'), mutate: true })),
    { excludedMutations: [], ignorers: [], plugins: null },
  );
  const codes = new Map(changed.map(({ name, content }) => [resolve(root, name), keepNothing(content)]));
  const concerned = concerns.filter(({ under }) => files.some((file) => file.startsWith(`${under}/`)));
  const tests = within('tests').filter(
    (file) =>
      file.endsWith('.test.ts') && concerned.some(({ tests }) => tests.test(file.replace(/\.test\.ts$/, ''))),
  );
  const folder = mkdtempSync(join(tmpdir(), 'mutation-'));
  const task: Run = {
    changes: mutants
      .filter(({ status }) => status !== 'Ignored')
      .map(({ id, fileName, location, replacement }) => ({ id, file: fileName, location, replacement })),
    tests: tests.map((test) => join(root, 'tests', test)),
    faults: concerned.flatMap(({ faults }) => (faults ? [faults.source] : [])).join('|') || '^$',
    minutes,
    out: join(folder, 'outcomes.json'),
  };
  writeFileSync(join(folder, 'run.json'), JSON.stringify(task));
  try {
    const vitest = await startVitest(
      'test',
      [],
      {
        config: false,
        root,
        include: ['bench/mutation-run.ts'],
        watch: false,
        pool: 'forks',
        testTimeout: 1e8,
        reporters: ['dot'],
        env: { MUTATION_RUN: join(folder, 'run.json'), XDG_CACHE_HOME: folder },
      },
      { plugins: [{ name: 'changes', enforce: 'pre', load: (id) => codes.get(id) }] },
    );
    await vitest.close();
    return JSON.parse(readFileSync(task.out, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const ends = ['killed', 'survived', 'not covered', 'static', 'not tried'] as const;
type Row = readonly number[];

const sum = (rows: readonly Row[]): Row => ends.map((_, i) => rows.reduce((all, row) => all + row[i], 0));

const roomOf = (file: string): string => file.split('/').slice(0, -1).join('/');

const share = ([killed, survived]: Row): string =>
  killed + survived === 0 ? '' : ` ${((100 * killed) / (killed + survived)).toFixed(1).padStart(7)} %`;

const line = (name: string, row: Row): string =>
  name.padEnd(48) + row.map((n) => String(n).padStart(12)).join('') + share(row);

/** Rows by file, under each room its sum, under all rooms of a floor theirs. */
function tableOf(rows: ReadonlyMap<string, Row>): string {
  const files = [...rows.keys()].sort();
  const of = (is: (file: string) => boolean): Row => sum([...rows].filter(([f]) => is(f)).map(([, r]) => r));
  const lines = files.flatMap((file, i) => {
    const [room, next] = [roomOf(file), files[i + 1]];
    const said = [
      line(
        file,
        of((one) => one === file),
      ),
    ];
    if (!next || roomOf(next) !== room)
      said.push(
        line(
          `all of ${room}`,
          of((one) => roomOf(one) === room),
        ),
        '',
      );
    return said;
  });
  const tops = [...new Set(files.map((file) => file.split('/').slice(0, 2).join('/')))];
  const all = tops.map((top) =>
    line(
      `all that was run of ${top}`,
      of((one) => one.startsWith(`${top}/`)),
    ),
  );
  const head = `${'file'.padEnd(48)}${ends.map((end) => end.padStart(12)).join('')}  of covered`;
  return [head, ...lines, ...all, ''].join('\n');
}

const readRows = (text: string): Map<string, Row> =>
  new Map(
    [...text.matchAll(/^(src\/\S+\.ts)((?: +\d+){5})/gm)].map(
      ([, file, row]) => [file, row.trim().split(/ +/).map(Number)] as const,
    ),
  );

function countRows(outcomes: readonly Outcome[]): Map<string, Row> {
  const files = [...new Set(outcomes.map(({ file }) => file))];
  const count = (file: string, end: string) =>
    outcomes.filter((one) => one.file === file && one.end === end).length;
  return new Map(files.map((file) => [file, ends.map((end) => count(file, end))]));
}

/** What stood there and what was put in its place. */
function sayChange({ file, location: { start, end }, replacement, end: how }: Outcome): string {
  const lines = readFileSync(join(root, file), 'utf8').split('\n');
  const to = start.line === end.line ? end.column : undefined;
  const [was, is] = [lines[start.line].slice(start.column, to), replacement].map((text) =>
    text.replace(/\s+/g, ' ').slice(0, 80),
  );
  return `${file}:${start.line + 1} ${how === 'survived' ? '' : `(${how}) `}${was} => ${is}`;
}

const marker = '\nJudged\n';
const { values, positionals } = parseArgs({
  options: { store: { type: 'boolean', default: false }, minutes: { type: 'string', default: '600' } },
  allowPositionals: true,
});
const outcomes = await run(filesOf(positionals), Number(values.minutes));
const [text, rows] = [readFileSync(baseline, 'utf8'), countRows(outcomes)];
const before = readRows(text);
for (const one of outcomes)
  if (one.end === 'survived' || one.end === 'not covered') console.log(sayChange(one));
console.log(`\n${tableOf(rows)}`);
console.log(`stored before:\n${tableOf(new Map([...before].filter(([file]) => rows.has(file))))}`);
if (values.store) {
  const judged = text.slice(text.indexOf(marker));
  writeFileSync(baseline, tableOf(new Map([...before, ...rows])) + judged);
}
