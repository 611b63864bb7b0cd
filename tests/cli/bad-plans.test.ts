import { mkdirSync, writeFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { filesIn, run, stackTrace, workbench } from './workbench.ts';

const bench = workbench();

const good = `process: rubber
disc: { diameter: 100, thickness: 12 }
sprue: {}
fixture: { chordError: 0.1 }
parting: { surface: flat }
masters:
  button: { length: 12, width: 12, above: 3, below: 1 }
placements:
  - { master: button, at: { radius: 30, angle: 20 }, sink: 1 }
`;

const utf16 = (text: string): Uint8Array => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));
const latin1 = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));
const swap = (from: string, to: string): string => {
  if (!good.includes(from)) throw new Error(`the good plan lacks ${from}`);
  return good.replace(from, to);
};
/** Nine lists of nine of the one before: 387 million entries if they were written out. */
const laughs = `process: rubber\ndisc: { diameter: 100, thickness: 12 }\nmasters:\n${Array.from(
  { length: 9 },
  (_, i) =>
    `  a${i}: &a${i} ${
      i === 0
        ? '{ length: 1 }'
        : `{ x: [${Array(9)
            .fill(`*a${i - 1}`)
            .join(', ')}] }`
    }`,
).join('\n')}\n`;

interface PlanCase {
  readonly title: string;
  readonly content: string | Uint8Array;
  /** The first finding: code, and line:column of its place. */
  readonly first: string;
  readonly says: RegExp;
}

/** Plans nothing can be made of: exit 2, every fault with its place, nothing written. */
const unreadable: readonly PlanCase[] = [
  {
    title: 'a tab',
    content: swap('  button:', '\tbutton:'),
    first: 'plan.tab plan 7:1',
    says: /indented with a tab/,
  },
  {
    title: 'a name given twice',
    content: `${good}sprue: {}\n`,
    first: 'plan.duplicate-key',
    says: /`sprue`.*line 3/s,
  },
  {
    title: 'an unknown name',
    content: swap('disc: {', 'disk: {'),
    first: 'plan.unknown-key',
    says: /`disk`.*`disc`/s,
  },
  {
    title: 'a wrong unit',
    content: swap('diameter: 100', 'diameter: 100 kg'),
    first: 'plan.wrong-unit',
    says: /100 kg/,
  },
  {
    title: 'a decimal comma',
    content: swap('diameter: 100', 'diameter: "100,5"'),
    first: 'plan.decimal-comma',
    says: /100,5/,
  },
  {
    title: 'an alias without an anchor',
    content: swap('{ length: 12', '{ length: *wide'),
    first: 'plan.alias',
    says: /wide/,
  },
  { title: 'aliases of aliases', content: laughs, first: 'plan.', says: /entries/ },
  { title: 'UTF-16', content: utf16(good), first: 'plan.not-utf8 plan 1:1', says: /UTF-16/ },
  {
    title: 'Latin-1',
    content: latin1(`title: Käfer\n${good}`),
    first: 'plan.not-utf8 plan 1:9',
    says: /0xE4/,
  },
  {
    title: 'a picture',
    content: Uint8Array.from([137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0]),
    first: 'plan.',
    says: /UTF-8/,
  },
  { title: '50 MB', content: `${good}#${'x'.repeat(50e6)}\n`, first: 'plan.too-large', says: /50.0 MB/ },
  { title: 'nothing', content: '', first: 'plan.empty plan 1:1', says: /discwright new/ },
  { title: 'only comments', content: '# later\n', first: 'plan.empty', says: /discwright new/ },
  { title: 'a list', content: '- 1\n- 2\n', first: 'plan.wrong-kind', says: /list/ },
  { title: 'no disc', content: 'process: rubber\n', first: 'plan.missing', says: /`disc`/ },
  {
    title: 'a sink over 100 %',
    content: swap('sink: 1', 'sink: 120 %'),
    first: 'plan.out-of-range',
    says: /120 %.*at most 100 %/s,
  },
  {
    title: 'a master that is not there',
    content: swap('master: button', 'master: buton'),
    first: 'plan.unknown-id',
    says: /buton.*button/s,
  },
  {
    title: 'nesting without end',
    content: `process: ${'['.repeat(5000)}`,
    first: 'plan.',
    says: /deep|bracket/i,
  },
];

describe('a plan that cannot be read', () => {
  test.each(unreadable.map((one) => [one.title, one] as const))(
    '%s',
    async (title, { content, first, says }) => {
      const plan = bench.put(`${title.replaceAll(/\W/g, '-')}.yaml`, content);
      const out = bench.path('never');
      for (const args of [
        ['build', plan, '--out', out],
        ['check', plan],
      ]) {
        const { code, out: said, err } = await run(...args);
        expect({ code, said }).toEqual({ code: 2, said: '' });
        const [severity, code1, ...rest] = err.split('\n')[0].split(/ {2,}/);
        expect(severity).toBe('stop');
        const head = [code1, rest[0], rest.at(-1)?.replace(`${plan}:`, '')].join(' ');
        expect(`${head}\n`.startsWith(first), `${head} begins with ${first}`).toBe(true);
        expect(err).toContain(`${plan}:`);
        expect(err).toMatch(says);
        expect(err).not.toMatch(stackTrace);
      }
      expect(filesIn(out).size).toBe(0);
    },
  );

  it('gives its findings as JSON where that is asked for', async () => {
    const plan = bench.put('json.yaml', swap('disc: {', 'disk: {'));
    const checked = await run('check', plan, '--json');
    expect({ code: checked.code, err: checked.err }).toEqual({ code: 2, err: '' });
    const [finding] = JSON.parse(checked.out).findings;
    expect(finding).toMatchObject({ code: 'plan.unknown-key', at: { file: plan, line: 2, column: 1 } });
    const built = await run('build', plan, '--json', '--out', bench.path('never'));
    expect(built.code).toBe(2);
    expect(JSON.parse(built.out).report).toEqual(JSON.parse(checked.out));
  });

  it('lists at most a hundred faults', async () => {
    const many = Array.from({ length: 2000 }, (_, i) => `word${i}: 1`).join('\n');
    const { err } = await run('check', bench.put('many.yaml', `${good}${many}\n`));
    expect(err).toMatch(/1,900 more faults follow/);
    expect(err.split('\n').length).toBeLessThan(450);
  });

  it('is told from one that is not there', async () => {
    mkdirSync(bench.path('empty'));
    const gone = await run('build', bench.path('gone.yaml'));
    expect(gone).toEqual({
      code: 2,
      out: '',
      err: `discwright: there is no file ${bench.path('gone.yaml')}`,
    });
    const folder = await run('check', bench.path('empty'));
    expect(folder.code).toBe(2);
    expect(folder.err).toMatch(
      /^discwright: there is no file .*empty\/plan\.yaml; a plan in a folder is called plan\.yaml$/,
    );
    expect((await run('build', '')).code).toBe(2);
    expect((await run('check', '/dev/zero')).err).toBe('discwright: /dev/zero is a device, not a file');
  });
});

/** Plans that read, but say what cannot be: exit 1, a stop with its place, and what it does not concern is built. */
const stopped: readonly (readonly [string, string, RegExp])[] = [
  [
    'a master outside the disc',
    swap('radius: 30', 'radius: 70'),
    /stop {2}walls\.rim-open {2}button {2}.*\.yaml:9:5[\s\S]* at \(.*\) mm:?\s+button reaches .* \(.* in\) beyond the rim/,
  ],
  [
    'a master that lies wholly below',
    swap('sink: 1', 'sink: 9'),
    /stop {2}layout\.sunk-under {2}button {2}.*:9:5/,
  ],
  [
    'a boss outside the disc',
    `${good}registration: { bosses: [{ kind: dome, size: 8, at: { radius: 49, angle: 0 } }] }\n`,
    /stop {2}walls\.rim-open {2}boss-1 {2}.*:10:26/,
  ],
  ['a master through the outer face', swap('above: 3', 'above: 30'), /stop {2}cover\.through {2}button/],
  [
    'a cap nut of no known size',
    `${good}registration: { bosses: [{ kind: cap nut, size: M7, at: { radius: 30, angle: 0 } }] }\n`,
    /stop {2}layout\.unknown-nut {2}boss-1/,
  ],
];

describe('a plan that says what cannot be', () => {
  test.each(stopped)('%s', async (title, content, says) => {
    const plan = bench.put(`${title.replaceAll(/\W/g, '-')}.yaml`, content);
    const out = bench.path(`out-${title.replaceAll(/\W/g, '-')}`);
    const { code, out: said, err } = await run('build', plan, '--out', out);
    expect(said).toMatch(says);
    expect({ code, err }).toEqual({ code: 1, err: '' });
    expect([...filesIn(out).keys()]).toContain('mold/print/sprue-form.stl');
    expect([...filesIn(out).keys()]).not.toContain('mold/look/lower-half.stl');
  });

  it('names the same as check', async () => {
    const plan = bench.put('checked.yaml', stopped[0][1]);
    const { code, out } = await run('check', plan);
    expect(code).toBe(1);
    expect(out).toMatch(stopped[0][2]);
    const { out: json } = await run('check', plan, '--json');
    expect(JSON.parse(json).findings.map(({ code: met }: { code: string }) => met)).toContain(
      'walls.rim-open',
    );
  });
});

describe('a bounded plan with anchors', () => {
  it('is read as if it were written out', async () => {
    const plain = bench.put('plain.yaml', good);
    const anchored = bench.put(
      'anchored.yaml',
      swap('{ length: 12, width: 12', '{ length: &side 12, width: *side'),
    );
    const [a, b] = [await run('check', plain, '--json'), await run('check', anchored, '--json')];
    expect(b.code).toBe(a.code);
    expect(JSON.parse(b.out).figures).toEqual(JSON.parse(a.out).figures);
  });

  it('shows the place in a file whose name holds control characters without obeying them', async () => {
    const name = 'a\u001b[2Jb.yaml';
    writeFileSync(bench.path(name), 'process: rubber\n');
    const { err } = await run('check', bench.path(name));
    expect(err).not.toContain('\u001b');
  });
});
