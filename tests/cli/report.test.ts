import { describe, expect, it } from 'vitest';
import { showFindings } from '../../cli/show-findings.ts';
import { showFigures } from '../../cli/show-report.ts';
import { fitColumn, plain, shorten, table, widthOf, wrap } from '../../cli/terminal.ts';
import { type Figure, type FigureName, type Finding, joinReport } from '../../src/findings/index.ts';
import { thinCover } from '../example-findings.ts';
import { run, workbench } from './workbench.ts';

const bench = workbench();
const lineWidth = 100;

describe('text on the page', () => {
  it('is wrapped at spaces, and nothing of it is lost', () => {
    const text = 'one two three four five six seven eight nine ten eleven';
    const lines = wrap(text, 20, '  ', '    ').split('\n');
    expect(lines.map((line) => line.length).every((length) => length <= 20)).toBe(true);
    expect(lines.map((line) => line.trim()).join(' ')).toBe(text);
    expect(lines[0]).toMatch(/^ {2}\S/);
    expect(lines[1]).toMatch(/^ {4}\S/);
  });

  it('keeps a word that is too long whole', () => {
    expect(wrap('a /very/long/path/to/a/file b', 10)).toBe('a\n/very/long/path/to/a/file\nb');
  });

  it('leaves no number at the end of a line without its unit', () => {
    expect(wrap('a wall of 3.00 mm (0.118 in), 12 % of it', 24).split('\n')).toEqual([
      'a wall of 3.00 mm',
      '(0.118 in), 12 % of it',
    ]);
    expect(wrap('a wall of 3.00 mm wide', 15).split('\n')).toEqual(['a wall of', '3.00 mm wide']);
  });

  it('is as wide as the terminal, within what can be read; a file is 100 wide', () => {
    expect([20, 80, 132, 400].map((columns) => widthOf({ columns }))).toEqual([72, 80, 132, 140]);
    expect(widthOf({})).toBe(100);
  });

  it('in a table gives up the middle of names for the width', () => {
    const rows = [
      ['wall', '1.00 mm', 'a-rather-long-name-1'],
      ['cover', '12.00 mm', 'leaf-2'],
    ];
    expect(table(fitColumn(rows, 2, 29)).split('\n')).toEqual([
      'wall   1.00 mm   a-rat..ame-1',
      'cover  12.00 mm  leaf-2',
    ]);
  });

  it('is cut in the middle, by characters', () => {
    expect(shorten('hedgerow', 8)).toBe('hedgerow');
    expect(shorten('hedgerows', 8)).toBe('hed..ows');
    expect([...shorten('🪲'.repeat(30), 9)]).toHaveLength(9);
  });
});

const figure = (name: FigureName, subject: string, value: number): Figure => ({
  name,
  subject,
  value,
  unit: 'mm',
  source: 'a ruler',
  estimated: false,
});
const figures = (...some: readonly Figure[]): string =>
  showFigures(joinReport('', 'metric', [{ figures: some }]), lineWidth);

describe('figures', () => {
  it('of one name are the least and the most with what they are of', () => {
    expect(
      plain(figures(figure('walls.rim', 'a', 3), figure('walls.rim', 'b', 1), figure('walls.rim', 'c', 2))),
    ).toBe(
      [
        'Walls',
        '  cavity or boss to rim  least  1.00 mm (0.039 in)  b',
        '                         most   3.00 mm (0.118 in)  a',
      ].join('\n'),
    );
  });

  it('stand under the headings of their checks, in one order whatever order they come in', () => {
    const lines = plain(
      figures(figure('fit.canGap', 'can', 2), figure('walls.rim', 'a', 3), figure('cover.least', 'mold', 3)),
    ).split('\n');
    expect(lines.filter((line) => /^\S/.test(line))).toEqual(['Thickness and cover', 'Walls', 'Fit']);
  });

  it('of one value are one line', () => {
    const lines = figures(figure('walls.rim', 'a', 3), figure('walls.rim', 'b', 3.001)).split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/3\.00 mm \(0\.118 in\) {2}a and 1 more$/);
  });
});

const thin = (subject: string, needed = 9) => thinCover(subject, { place: [1, 2, 3], needed });
const says = (subject: string): string =>
  `${subject} leaves 1.00 mm (0.039 in) in the lower half, where 3.00 mm (0.118 in) is wanted.`;

describe('findings', () => {
  const shown = (...some: readonly Finding[]): string => plain(showFindings(some, 'metric', lineWidth));

  it('of one code stand together in the order they come, what to do once', () => {
    expect(shown(thin('b'), thin('a')).split('\n')).toEqual([
      'warn  cover.thin  2 places',
      ...['b', 'a'].flatMap((one) =>
        wrap(`at (1.0, 2.0, 3.0) mm: ${says(one)}`, lineWidth, '      ', '        ').split('\n'),
      ),
      '      Make the lower half at least 9.00 mm (0.354 in) thick, or sink the master differently.',
    ]);
    const apart = shown(thin('b', 9), thin('a', 10)).replaceAll(/\s+/g, ' ');
    expect(apart).toMatch(/b leaves .* at least 9\.00 mm .* a leaves .* at least 10\.00 mm/);
  });

  it('of copies of one thing are one: all its places, and the worst said', () => {
    const measured = [1, 0.5, 2, 1];
    const some = measured.map((mm, i) => {
      const one = thin(`leaf-${i + 1}`);
      return { ...one, place: [i, 2, 3] as const, values: { ...one.values, measured: mm } };
    });
    const text = shown(...some);
    expect(text.split('\n')[0]).toBe('warn  cover.thin  leaf-1 to 4');
    expect(text.replaceAll(/\s+/g, ' ')).toContain(
      '4 places, the worst at (1.0, 2.0, 3.0) mm: leaf-2 leaves 0.50 mm (0.020 in) in the lower half',
    );
    expect(text).not.toContain('leaf-3');
    expect(shown(some[0], some[3]).replaceAll(/\s+/g, ' ')).toContain(
      '2 places alike, the first at (0.0, 2.0, 3.0) mm: leaf-1 leaves 1.00 mm',
    );
  });

  it('of one code in one file name the file once', () => {
    const at = (line: number) => ({ at: { file: 'plan.yaml', line, column: 5 } });
    const text = shown({ ...thin('a'), ...at(7) }, { ...thin('b'), ...at(8) });
    expect(text.split('\n')[0]).toBe('warn  cover.thin  2 places in plan.yaml');
    expect(text).toContain('\n      line 7, at (1.0, 2.0, 3.0) mm: a leaves 1.00 mm');
    expect(text).toContain('\n      line 8, at (1.0, 2.0, 3.0) mm: b leaves 1.00 mm');
  });

  it('are cut short where there are many causes of one code, but never stops', () => {
    const many = Array.from({ length: 20 }, (_, i) => thin(`a${i}`));
    expect(shown(...many)).toContain('... and 14 more like these; --json shows all.');
    const stops = many.map((one) => ({ ...one, severity: 'stop' as const }));
    for (const { subject } of stops) expect(shown(...stops)).toContain(` ${subject} `);
  });
});

describe('check of 25 placements', () => {
  const plan = `title: Twenty-five charms
process: rubber
disc: { diameter: 230, thickness: 12 }
sprue: {}
parting: { surface: flat }
masters:
  button: { length: 14, width: 14, above: 10, below: 4 }
  a-rather-long-name-for-a-leaf-of-common-ivy: { length: 22, width: 14, above: 10, below: 3 }
placements:
  - { master: button, ring: { count: 15, radius: 93 } }
  - { master: a-rather-long-name-for-a-leaf-of-common-ivy, ring: { count: 10, radius: 55, start: 10 } }
registration:
  flex: 0.1
  bosses:
    - { kind: cap nut, size: M6, at: { radius: 75, angle: 60 } }
    - { kind: cap nut, size: M5, at: { radius: 75, angle: 180 } }
    - { kind: cap nut, size: M6, at: { radius: 75, angle: 290 } }
gates:
  - { placements: a-rather-long-name-for-a-leaf-of-common-ivy }
vents:
  - { placements: button }
# What lies in the hot can stands it: this is about many placements.
fixture: { material: aluminum }
`;

  it('fits a page of 100 columns, however many placements there are, worst first', async () => {
    const { code, out } = await run('check', bench.put('many.yaml', plan));
    expect(code).toBe(0);
    const lines = out.split('\n');
    // The notes say what the plan leaves out; each check has its own.
    expect(lines[0]).toMatch(/^Twenty-five charms: 0 stops, 26 warnings, \d+ notes$/);
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(lineWidth);
    // Findings of one code are together, and a figure is at most two lines for all 25.
    const table = lines.findIndex((line) => line.startsWith('Masters '));
    const answers = lines.indexOf('', 2);
    expect(answers).toBeLessThanOrEqual(24);
    expect(table).toBeGreaterThan(answers);
    expect(table - answers).toBeLessThanOrEqual(34);
    const shown = lines.slice(table);
    // A heading is flush left; a label is set in, and may be followed by a second line.
    const labels = shown.filter((line) => /^ {2}\S/.test(line)).length;
    const headings = shown.filter((line) => /^\S/.test(line));
    expect(headings).toEqual([...new Set(headings)]);
    expect(shown.length).toBeLessThanOrEqual(headings.length + 2 * labels);
    expect(out).toMatch(/warn {2}cover\.thin {2}25 places/);
  });

  it('gives all of it as JSON', async () => {
    const { out } = await run('check', bench.put('many.yaml', plan), '--json');
    const { findings, figures: all } = JSON.parse(out);
    expect(findings.filter(({ code }: { code: string }) => code === 'cover.thin')).toHaveLength(25);
    expect(all.filter(({ name }: { name: string }) => name === 'walls.rim')).toHaveLength(28);
  });
});
