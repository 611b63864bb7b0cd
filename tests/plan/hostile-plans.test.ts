import fc from 'fast-check';
import { expect, test } from 'vitest';
import { catalogue } from '../../src/findings/index.ts';
import { type PlanReading, readPlan, starterPlan } from '../../src/plan/index.ts';
import { saysOf } from '../said.ts';

const utf8 = new TextEncoder();

/** What every reading must be, whatever was read: a plan or a stop, and each finding with its place in the text. */
function soundly(source: string | Uint8Array): PlanReading {
  const reading = readPlan(source, 'plan.yaml');
  const lines = (typeof source === 'string' ? source : new TextDecoder().decode(source)).split(/\r\n|\r|\n/);
  const stops = reading.findings.filter(({ severity }) => severity === 'stop');
  expect(stops.length > 0).toBe(reading.plan === undefined);
  for (const one of reading.findings) {
    const { code, at } = one;
    const says = saysOf(one);
    expect(Object.hasOwn(catalogue, code)).toBe(true);
    expect(says.length).toBeLessThan(1500);
    expect(at?.line).toBeGreaterThanOrEqual(1);
    expect(at?.line).toBeLessThanOrEqual(lines.length);
    expect(at?.column).toBeGreaterThanOrEqual(1);
  }
  return reading;
}

const codes = (source: string | Uint8Array): string[] => soundly(source).findings.map(({ code }) => code);

const small = 'process: rubber\ndisc: { diameter: 250 }\n';

test('text and bytes read alike, with a byte order mark and any line ends', () => {
  const { plan } = readPlan(small, 'plan.yaml');
  expect(plan?.disc.diameter).toBe(250);
  expect(readPlan(utf8.encode(small), 'plan.yaml').plan).toEqual(plan);
  expect(readPlan(utf8.encode(`\ufeff${small}`), 'plan.yaml').plan).toEqual(plan);
  expect(readPlan(`\ufeff${small}`, 'plan.yaml').plan).toEqual(plan);
  expect(readPlan(small.replaceAll('\n', '\r\n'), 'plan.yaml').plan).toEqual(plan);
  expect(readPlan(small.replaceAll('\n', '\r'), 'plan.yaml').plan).toEqual(plan);
  expect(readPlan('{"process": "rubber", "disc": {"diameter": 250}}', 'plan.yaml').plan?.disc.diameter).toBe(
    250,
  );
});

const utf16 = (text: string, littleEndian: boolean, mark: boolean): Uint8Array => {
  const view = new DataView(new ArrayBuffer(2 * text.length + (mark ? 2 : 0)));
  [...(mark ? '\ufeff' : ''), ...text].forEach((letter, i) => {
    view.setUint16(2 * i, letter.charCodeAt(0), littleEndian);
  });
  return new Uint8Array(view.buffer);
};

test.each([
  [true, true],
  [true, false],
  [false, true],
  [false, false],
])('UTF-16 is named as such (little-endian %s, with mark %s)', (littleEndian, mark) => {
  const { findings } = soundly(utf16(small, littleEndian, mark));
  expect(findings.map((one) => [one.code, saysOf(one)])).toEqual([
    ['plan.not-utf8', 'A plan must be UTF-8 text; the file is UTF-16 text, not UTF-8.'],
  ]);
});

test('a byte that is not UTF-8 is shown with its place', () => {
  const bytes = Uint8Array.from([...utf8.encode('# ü\ntitle: B'), 0xfc, ...utf8.encode('rste\n')]);
  expect(soundly(bytes).findings).toMatchObject([
    { code: 'plan.not-utf8', values: { byte: '0xFC' }, at: { line: 2, column: 9 } },
  ]);
});

test('a picture, random bytes and an executable are refused as no text', () => {
  for (const start of [
    [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    [0x7f, 0x45, 0x4c, 0x46, 2, 1, 1],
    [0xff],
  ]) {
    const found = codes(Uint8Array.from(start));
    expect(found).toHaveLength(1);
    expect(['plan.not-utf8', 'plan.unreadable']).toContain(found[0]);
  }
});

test.each([
  ['', 'plan.empty'],
  ['# nothing\n\n', 'plan.empty'],
  ['---\n', 'plan.empty'],
  ['~', 'plan.empty'],
  ['rubber', 'plan.wrong-kind'],
  ['42', 'plan.wrong-kind'],
  ['- process: rubber', 'plan.wrong-kind'],
])('%j is no plan: %s', (text, code) => {
  expect(codes(text)).toEqual([code]);
});

test('a plan of 50 MB is refused at once', () => {
  const bytes = new Uint8Array(50_000_000).fill(0x20);
  const { findings } = soundlySized(bytes);
  expect(findings).toMatchObject([{ code: 'plan.too-large', values: { measured: 50_000_000 } }]);
});

const soundlySized = (bytes: Uint8Array): PlanReading => readPlan(bytes, 'plan.yaml');

test('the size allowed is allowed, and one byte more is not', () => {
  const comment = '# about sixty letters of comment on each line of the plan ....\n';
  const fits = small + comment.repeat(4000).slice(0, 250_000 - small.length);
  expect(codes(fits)).toEqual([]);
  expect(codes(`${fits}#`)).toEqual(['plan.too-large']);
  // Bytes count, not letters.
  expect(codes(utf8.encode(fits.replace('about', 'abövt')))).toEqual(['plan.too-large']);
});

test.each<[string, string, number, number]>([
  ['masters', 'masters: { a: { width: 1, length: 1, above: 1, below: 1 } }\nplacements:\n', 300, 301],
  ['bosses', 'registration:\n  bosses:\n', 24, 25],
])('so many %s are allowed, and one more is not', (what, head, most, over) => {
  const entry = what === 'masters' ? 'master: a' : 'kind: dome, size: 3';
  const plan = (count: number): string =>
    `${small}${head}    - { ${entry}, ring: { count: ${count}, radius: 40 } }\n`;
  expect(codes(plan(most))).toEqual([]);
  const [excess] = readPlan(plan(over), 'plan.yaml').findings;
  expect(excess).toMatchObject({
    code: 'plan.too-many',
    severity: 'stop',
    values: { what, measured: over, limit: most },
  });
});

const bomb = `${Array.from({ length: 20 }, (_, i) =>
  i === 0
    ? 'a0: &a0 [x, x, x, x, x, x, x, x, x]'
    : `a${i}: &a${i} [${Array(9)
        .fill(`*a${i - 1}`)
        .join(', ')}]`,
).join('\n')}\n`;

test.each<[string, string, string]>([
  ['aliases that multiply', bomb, 'plan.too-much'],
  ['an alias that holds itself', 'title: &a [*a]', 'plan.too-deep'],
  ['deep brackets', '['.repeat(20_000), 'plan.too-deep'],
  ['deep braces', '{a: '.repeat(20_000), 'plan.too-deep'],
  ['deep dashes', '- '.repeat(20_000), 'plan.too-deep'],
  ['deep questions', '? '.repeat(20_000), 'plan.too-deep'],
  [
    'deep indentation',
    Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
    'plan.too-deep',
  ],
  ['many entries', `title: [${'1, '.repeat(60_000)}]`, 'plan.too-much'],
  ['many faults of syntax', ']\n'.repeat(20_000), 'plan.unreadable'],
  ['many documents', '---\n'.repeat(20_000), 'plan.several-documents'],
])('%s end soon with one stop', (_, text, code) => {
  const start = performance.now();
  expect(codes(text)).toEqual([code]);
  expect(performance.now() - start).toBeLessThan(30_000);
});

test('many unknown names, and many aliases of one thing, end soon', () => {
  const start = performance.now();
  const names = Array.from({ length: 15_000 }, (_, i) => `nam${i}: 1`).join('\n');
  expect(codes(`${small}${names}`)).toEqual([...Array(100).fill('plan.unknown-key'), 'plan.more-faults']);
  expect(soundly(`${small}title: &a x\nnotches: [${'*a, '.repeat(20_000)}]`).plan).toBeUndefined();
  expect(performance.now() - start).toBeLessThan(30_000);
});

test('names that mean something to the language mean nothing in a plan', () => {
  const text = `${small}masters: { constructor: { file: a.stl }, toString: { file: b.stl } }
placements: [{ master: constructor, at: { radius: 1, angle: 0 } }, { master: hasOwnProperty, at: { radius: 1, angle: 0 } }]
`;
  expect(soundly(text).findings.map((one) => [one.code, saysOf(one)])).toEqual([
    ['plan.unknown-id', 'There is no master `hasOwnProperty`; the plan has constructor and toString.'],
  ]);
});

// Without its prose, so that changes meet the plan itself.
const seed = starterPlan({ diameter: 250, process: 'rubber', unit: 'mm' })
  .replace(/^#(?! \S)/gm, '')
  .replace(/^ *# .*\n|^\n/gm, '');

const junk = fc.oneof(
  fc.constantFrom(
    ...[
      '\t',
      '\n',
      ' ',
      '  ',
      ':',
      '- ',
      '[',
      ']',
      '{',
      '}',
      '"',
      "'",
      ',',
      '*a',
      '&a ',
      '#',
      '|',
      '>',
      '!x ',
      '%',
      '?',
    ],
    ...[
      '\r',
      '\u0000',
      '\ufeff',
      'é',
      '🐌',
      '1e999',
      '.inf',
      '~',
      '---\n',
      '<<: ',
      '__proto__: 1\n',
      '3,5',
      '-',
      '½',
    ],
  ),
  fc.string({ maxLength: 4 }),
);
const change = fc.record({ at: fc.nat(), cut: fc.nat({ max: 12 }), put: junk });

test('random changes to a plan never throw, and give a plan or a stop', () => {
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
      const text = changes.reduce((before, { at, cut, put }) => {
        const from = at % (before.length + 1);
        return before.slice(0, from) + put + before.slice(from + cut);
      }, seed);
      soundly(text);
    }),
    { numRuns: 2500, seed: 7 },
  );
});

test('random changes to the bytes of a plan never throw, and give a plan or a stop', () => {
  const bytes = utf8.encode(seed);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(), fc.nat({ max: 255 })), { minLength: 1, maxLength: 4 }),
      (changes) => {
        const changed = bytes.slice();
        for (const [at, byte] of changes) changed[at % changed.length] = byte;
        soundly(changed);
      },
    ),
    { numRuns: 6500, seed: 7 },
  );
});

test('random values in place of any value never throw, and give a plan or a stop', () => {
  const { source } = readPlan(seed, 'plan.yaml');
  const whole = source?.document.toJS() as Record<string, unknown>;
  const paths = Object.keys(whole);
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue({ maxDepth: 4 }), (section, value) => {
      soundly(JSON.stringify({ ...whole, [section]: value }));
    }),
    { numRuns: 1000, seed: 7 },
  );
});
