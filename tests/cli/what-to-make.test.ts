import { beforeAll, expect, it } from 'vitest';
import { hasPoppler, pageTexts } from '../rendered-page.ts';
import { filesIn, run, workbench } from './workbench.ts';

const bench = workbench();

const charms = `
title: Sloe charms
process: rubber
disc: { diameter: 6 in, thickness: 3/4 in }
sprue: { puller: { screw: M6, hole: insert } }
rubber: { density: 1.0 g/cm3 }
masters:
  sloe: { length: 20, width: 10, above: 5, below: 3 }
placements:
  - { master: sloe, ring: { count: 4, radius: 50 } }
registration:
  bosses:
    - { kind: cap nut, size: M6, at: { radius: 65, angle: 45 } }
    - { kind: hexagon, size: M8, at: { radius: 65, angle: 165 } }
    - { kind: hexagon, size: M8, at: { radius: 60, angle: 300 } }
closing: { bolts: { size: M10, grade: 8.8, count: 6 } }
fixture: { material: PLA, chordError: 0.1, make: [halves, sprue-form, plug, bosses, layout-plate] }
`;

let said: string;
let files: ReadonlyMap<string, Uint8Array>;

beforeAll(async () => {
  const out = bench.path('out');
  const ran = await run('build', bench.put('sloe.yaml', charms), '--out', out);
  expect(ran.err).toBe('');
  said = ran.out;
  files = filesIn(`${out}/sloe-charms`);
}, 60_000);

it('each file lies in the folder of its first use; what is read first lies on top', () => {
  expect([...files.keys()]).toEqual([
    'cut/layout-plate.dxf',
    'cut/layout-plate.svg',
    'look/lower-half.stl',
    'look/upper-half.stl',
    'manifest.json',
    'paper/parting-paper.dxf',
    'paper/parting-paper.svg',
    'print/all-solids.3mf',
    'print/boss-cap-nut-m6.stl',
    'print/boss-hexagon-m8.stl',
    'print/layout-plate.stl',
    'print/plug.stl',
    'print/sprue-form.stl',
    'report.json',
    'shop-sheet.pdf',
  ]);
});

const sections = [
  'To print, in the folder print',
  'To cut by a drawing',
  'Rubber to cut',
  'To take from stock',
] as const;

/** Lines of a section of the list, spaces run together. */
function linesOf(title: string): string[] {
  const block = said.split('\n\n').find((one) => one.startsWith(title)) ?? '';
  return block.split('\n').map((line) => line.replaceAll(/ +/g, ' ').trim());
}

it('says how many of each solid, of what and how large, the person’s unit first; cap nuts are not made', () => {
  const lines = linesOf(sections[0]);
  expect(lines.some((line) => /^boss-hexagon-m8.stl 2 PLA 0\.59 x 0\.51 x 0\.5\d in 0\.0/.test(line))).toBe(
    true,
  );
  expect(lines.some((line) => line.startsWith('plug.stl 1 PLA '))).toBe(true);
  expect(lines.join()).not.toMatch(/half|cap-nut/);
  expect(said).toContain('Only to look at, in the folder look: lower-half.stl, upper-half.stl.');
});

it('says what to take: nuts, insert, screw, bolts', () => {
  expect(linesOf(sections[3]).slice(2)).toEqual([
    '1 cap nut M6 boss-1; or make print/boss-cap-nut-m6.stl',
    '1 screw M6 to pull sprue form and plug',
    '2 heat-set inserts M6 in sprue form and plug',
    '6 bolts M10, grade 8.8 to draw the can shut',
    '6 hex nuts M10 on the bolts, where the can is not tapped',
  ]);
});

// By hand: a disc 6 in across and 3/4 in thick is 347.5 cm3, four boxes of 20 x 10 x 8 mm are 6.4.
it('says what rubber to cut: blanks with stock and weight, and what comes out for the masters', () => {
  expect(linesOf(sections[2]).slice(2)).toEqual([
    '1 blank, lower half 6.000 in across, 0.750 in thick 3/4 in 0.766 lb (0.347 kg)',
    '1 blank, upper half 6.000 in across, 0.750 in thick 3/4 in 0.766 lb (0.347 kg)',
    expect.stringMatching(/^1 well, lower half /),
    expect.stringMatching(/^1 hole, upper half /),
    '4 cut out for the masters all together ~0.3906 in3 (6.400 cm3)',
  ]);
});

it('keeps to the width of a line', () => {
  for (const line of said.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100);
});

it.runIf(hasPoppler())(
  'has the same list on the second page of the shop sheet, sizes in both systems',
  () => {
    const page = pageTexts(files.get('shop-sheet.pdf') ?? new Uint8Array())[1].replaceAll(/\s+/g, ' ');
    expect(page).toContain('What to make');
    for (const title of sections) expect(page).toContain(title);
    expect(page).toContain('0.766 lb (0.347 kg)');
    expect(page).toContain('heat-set inserts M6');
  },
);
