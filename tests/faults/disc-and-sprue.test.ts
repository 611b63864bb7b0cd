import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readFonts } from '../../cli/fonts.ts';
import { shopSheet } from '../../src/export/shop-sheet/sheet.ts';
import type { Finding } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { buildMold, readMold } from '../../src/pipeline/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import { badNumbers, checkText } from './check-text.ts';

const plan = (disc: string, sprue: string, more = ''): string =>
  `process: rubber\ndisc: { ${disc} }\nsprue: { ${sprue} }\n${more}`;

const sizes = ({ findings }: { findings: readonly Finding[] }) =>
  findings.filter(({ code }) => ['layout.disc-form', 'layout.sprue-form', 'fit.sprue-closed'].includes(code));

it.each([
  ['a disc of 9, inches forgotten', 'diameter: 9, thickness: 7/8 in', '', 'disc small 2:9 `diameter: 9 in`'],
  [
    'halves of 7/8, inches forgotten',
    'diameter: 9 in, thickness: 0.875',
    '',
    'disc thin 2:25 `thickness: 0.875 in`',
  ],
  [
    'a well without unit',
    'diameter: 9 in',
    'well: { diameter: 2 }',
    'sprue well-narrow 3:18 `well.diameter: 2 in`',
  ],
  ['a well under the hole', 'diameter: 9 in', 'well: { diameter: 30 mm }', 'sprue well-narrow 3:18'],
  ['a hole of 4 in', 'diameter: 6 in', 'hole: 4 in', 'sprue well-rim 3:10'],
  ['a fillet deeper than the well', 'diameter: 9 in', 'fillet: 8 mm', 'sprue fillet-well 3:10'],
  ['a dome deeper than the well', 'diameter: 9 in', 'dome: { height: 7 }', 'sprue dome-high 3:18'],
  ['a dome wider than the well', 'diameter: 9 in', 'dome: { diameter: 80 }', 'sprue dome-wide 3:18'],
  ['a dome too steep', 'diameter: 9 in', 'dome: { diameter: 8, height: 5 }', 'sprue dome-steep 3:31'],
  [
    'a well that closes',
    'diameter: 9 in',
    'draft: 30, well: { depth: 50, diameter: 55 }, hole: 50',
    'sprue well-closed 3:10',
  ],
  [
    'a mouth without room',
    'diameter: 9 in',
    'fillet: 6 mm, well: { diameter: 40, depth: 12 }',
    'sprue fillet-mouth 3:10',
  ],
  [
    'a plug of nothing',
    'diameter: 9 in',
    'hole: 2.2 mm, well: {diameter: 20}, dome: {diameter: 8, height: 3}',
    'sprue plug 3:10',
  ],
  [
    'a spigot with nothing over its hole',
    'diameter: 9 in, thickness: 2.2 mm',
    'grip: 0, pieces: two, fillet: 0.5',
    'sprue spigot-deep 3:10',
  ],
])('%s is told at its line, with what would fit', async (_name, disc, sprue, told) => {
  const report = await checkText(plan(disc, sprue), 'plan.yaml');
  const found = sizes(report);
  const short = found.map(({ subject, values, at }) =>
    [subject, values.which, `${at?.line}:${at?.column}`, ...((values.meant ?? []) as string[])].join(' '),
  );
  expect(short).toContain(told);
  for (const one of found) {
    expect(one.severity).toBe('stop');
    const { remedy } = sayFinding(one, 'inch');
    expect(remedy.includes('Did you mean'), remedy).toBe('meant' in one.values);
  }
  expect(badNumbers(found)).toEqual([]);
});

/** A length within the schema's range: mostly what people write, at times anything. */
const within = (low: number, high: number, usual: readonly number[]) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.double({ min: usual[0], max: usual[1], noNaN: true }) },
    { weight: 2, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(...[0.375, 0.75, 1.5, 4, 9, 12].filter((n) => n >= low && n <= high)),
    },
  );

const least = 1e-6;
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 2 });

const discs = fc.record({
  diameter: within(least, 2000, [60, 400]),
  thickness: maybe(within(least, 200, [6, 40])),
  rimChamfer: maybe(within(0, 50, [0, 3])),
  label: maybe(fc.constant('Fuzz')),
});

const sprues = fc.record({
  hole: maybe(within(least, 300, [8, 60])),
  draft: maybe(within(0, 45, [0, 10])),
  well: maybe(
    fc.record({
      diameter: maybe(within(least, 300, [12, 90])),
      depth: maybe(within(least, 100, [3, 20])),
    }),
  ),
  dome: maybe(
    fc.record({
      diameter: maybe(within(least, 300, [4, 40])),
      height: maybe(within(0, 100, [0, 8])),
    }),
  ),
  fillet: maybe(within(0, 50, [0, 3])),
  grip: maybe(within(0, 200, [0, 25])),
  puller: maybe(
    fc.record({
      screw: fc.constantFrom('M4', 'M6', 'M16', '1/4-20'),
      hole: maybe(fc.constantFrom('tapped', 'insert')),
      depth: maybe(within(least, 200, [4, 30])),
    }),
  ),
  flats: maybe(within(least, 200, [6, 30])),
  vent: maybe(within(least, 5, [0.3, 2])),
  pieces: maybe(fc.constantFrom('one', 'two')),
});

const flow = (value: unknown): string => JSON.stringify(value);

/** The plan's solids without a fault: made, or withheld for a stop that is no failure of a kernel. */
async function build(text: string) {
  const kernel = await loadKernel();
  const planBytes = new TextEncoder().encode(text);
  const files = () => Promise.reject(new Error('no files'));
  const { mold, findings } = await readMold({ bytes: planBytes, name: 'fuzz.yaml', files }, kernel);
  if (!mold) return { ids: [], faults: [], stopped: findings.length > 0, read: false };
  const only = ['disc-blank', 'lower-half', 'sprue-form', 'plug'];
  const { build: made } = await buildMold(mold, findings, { planBytes, version: '0' }, kernel, { only });
  const told = made.report.findings;
  const faults = told.filter(({ code }) => code === 'solid.failed' || code === 'solid.not-closed');
  const stopped = told.some(({ severity }) => severity === 'stop');
  return { ids: made.solids.map(({ solid }) => solid.id), faults, stopped, read: true, made };
}

it('the shop sheet leaves out a form that cannot be made', async () => {
  const { made, ids } = await build(plan('diameter: 9 in', 'dome: { diameter: 80 }'));
  expect(ids).toEqual([]);
  expect(made && (await shopSheet(made, await readFonts())).length).toBeGreaterThan(10_000);
});

/** Given in the environment for a longer run. */
const runs = Number(process.env.FUZZ_RUNS ?? 100);

it(`${runs} random discs and sprue forms give solids or findings, never a fault`, {
  timeout: 600_000 + 400 * runs,
}, async () => {
  const tally = { made: 0, stopped: 0 };
  await fc.assert(
    fc.asyncProperty(
      discs,
      sprues,
      fc.constantFrom('rubber', 'rigid', 'poured'),
      async (disc, sprue, process) => {
        const { ids, faults, stopped, read } = await build(
          `process: ${process}\ndisc: ${flow(disc)}\nsprue: ${flow(sprue)}\nfixture: { chordError: 0.2 }\n`,
        );
        expect(read || stopped).toBe(true);
        expect(faults.map(({ values }) => values)).toEqual([]);
        if (!stopped) expect(ids).toEqual(expect.arrayContaining(['lower-blank', 'upper-blank', 'plug']));
        tally[stopped ? 'stopped' : 'made']++;
      },
    ),
    { numRuns: runs, seed: 11 },
  );
  // Of both there are enough for the claim to mean something.
  expect(Math.min(tally.made, tally.stopped), JSON.stringify(tally)).toBeGreaterThan(runs / 20);
});
