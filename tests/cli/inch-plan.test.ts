import { readFileSync } from 'node:fs';
import modeling from '@jscad/modeling';
import { beforeAll, expect, it, test, vi } from 'vitest';
import { hasPoppler, pageTexts } from '../rendered-page.ts';
import { filesIn, run, workbench } from './workbench.ts';

/** How much of a unit one of the other system is; from the exact inch, pound and standard gravity. */
const inMetric: Readonly<Record<string, readonly [inch: string, factor: number]>> = {
  mm: ['in', 25.4],
  mm2: ['in2', 645.16],
  cm2: ['in2', 6.4516],
  mm3: ['in3', 16387.064],
  cm3: ['in3', 16.387064],
  g: ['oz', 28.349523125],
  kg: ['lb', 0.45359237],
  'g.mm': ['oz.in', 720.0778874],
  N: ['lbf', 4.4482216152605],
  kN: ['lbf', 0.0044482216152605],
  'N m': ['lbf ft', 1.3558179483314],
  K: ['deg F', 1 / 1.8],
  kPa: ['psi', 6.894757293168],
  MPa: ['psi', 0.006894757293168],
  'm/s': ['ft/s', 0.3048],
};

const quantity =
  /(?<![\w./])(-?\d*\.?\d+) ?(mm[23]?|cm[23]?|g\.mm|kg|g|kN|N m|N|kPa|MPa|C|K|m\/s|W\/m2K|W\/mK|kg\/m3|g\/cm3|in[23]?|oz\.in|oz|lbf ft|lbf|lb|psi|deg F|F|ft\/s)(?![\w./])/g;

/** Units that have no twin in inches: none of them may be said to a person at all. */
const never = ['W/m2K', 'W/mK', 'kg/m3', 'g/cm3'];

interface Said {
  readonly value: number;
  readonly unit: string;
  /** Half a step of its last decimal: how far it may be from what it stands for. */
  readonly rounding: number;
}

const saidIn = (text: string): Said[] =>
  [...text.matchAll(quantity)].map(([, number, unit]) => ({
    value: Number(number),
    unit,
    rounding: 0.5 / 10 ** (number.split('.')[1]?.length ?? 0),
  }));

/** Whether what is said in one system is the same as what is said in the other, as far as both are rounded. */
function same(metric: Said, inch: Said): boolean {
  if (metric.unit === 'C')
    return (
      inch.unit === 'F' &&
      Math.abs(metric.value * 1.8 + 32 - inch.value) < 1.8 * metric.rounding + inch.rounding
    );
  const [unit, factor] = inMetric[metric.unit] ?? ['', 1];
  return (
    unit === inch.unit &&
    Math.abs(inch.value * factor - metric.value) <= 1.01 * (factor * inch.rounding + metric.rounding)
  );
}

/** What a text says in metric alone: nowhere in a line, or the one before or after it, which wraps it, as inches. */
function metricAlone(text: string): string[] {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  return lines.flatMap((line, i) => {
    const near = saidIn(
      lines
        .slice(Math.max(0, i - 1), i + 2)
        .join(' ')
        .replaceAll(/\s+/g, ' '),
    );
    const own = saidIn(line);
    return own
      .filter((one) => one.unit === 'C' || one.unit in inMetric || never.includes(one.unit))
      .filter((one) => !near.some((other) => same(one, other)))
      .map((one) => `${one.value} ${one.unit}: ${line.trim()}`);
  });
}

test('what is metric alone is found', () => {
  expect(metricAlone('a wall of 3.00 mm (0.118 in)\n\nheld by 12 kN')).toEqual(['12 kN: held by 12 kN']);
  expect(metricAlone('2.438 in\n61.93 mm')).toEqual([]);
  expect(metricAlone('2.5 in\n61.93 mm')).toHaveLength(1);
  expect(metricAlone('33.9 lbf ft (46.0 N m), 113 deg F (63 K)')).toEqual([]);
  expect(metricAlone('tighten to 46.0 N m')).toEqual(['46 N m: tighten to 46.0 N m']);
  expect(metricAlone('33.9 lbf ft (46.0 N m), 63 K above')).toEqual([
    '63 K: 33.9 lbf ft (46.0 N m), 63 K above',
  ]);
  expect(metricAlone('a contact of 500 W/m2K')).toHaveLength(1);
  expect(metricAlone('at 311 F (155 C)\n400 rpm, 95 %, 8 clamps, 3 deg')).toEqual([]);
});

const bench = workbench();

/** The whole bench in inches: every figure is told. */
const plan = 'presets/bench-9-in.yaml';
const lettered: string[] = [];
const out = bench.path('out');
let files: Map<string, Uint8Array>;
let terminal: string;

beforeAll(async () => {
  const write = modeling.text.vectorText;
  const spy = vi.spyOn(modeling.text, 'vectorText').mockImplementation((options, text) => {
    lettered.push(text);
    return write(options, text);
  });
  const [checked, built] = [
    await run('check', plan),
    // Made here and now, or nothing is lettered.
    await run('build', plan, '--out', out, '--no-cache'),
  ];
  spy.mockRestore();
  terminal = `${checked.out}\n${checked.err}\n${built.out}\n${built.err}`;
  files = filesIn(out);
}, 300_000);

const fileOf = (name: string): Uint8Array => {
  const found = [...files].find(([path]) => path.endsWith(name));
  if (!found) throw new Error(`${name} was not written`);
  return found[1];
};

it('is about a plan that says nothing in metric but what no unit of inches names', () => {
  const own = readFileSync(plan, 'utf8')
    .split('\n')
    .filter((line) => !line.startsWith('#'));
  expect(own.flatMap(metricAlone)).toEqual([]);
});

it('tells torque and superheat in both systems', () => {
  expect(terminal).toMatch(/\d lbf ft \(\d+\.\d N m\)/);
  expect(terminal).toMatch(/superheat of the metal +~?80 deg F \(44 K\)/);
});

it('says nothing in metric alone in the sentences of its report', () => {
  const { findings } = JSON.parse(new TextDecoder().decode(fileOf('report.json')));
  expect(findings.length).toBeGreaterThan(3);
  for (const { says, remedy } of findings) expect(metricAlone(`${says} ${remedy}`)).toEqual([]);
});

it('says nothing in metric alone on the terminal', () => {
  expect(saidIn(terminal).length).toBeGreaterThan(100);
  expect(metricAlone(terminal)).toEqual([]);
});

it.runIf(hasPoppler())('says nothing in metric alone on its shop sheet, which is of Letter size', () => {
  const pages = pageTexts(fileOf('shop-sheet.pdf'));
  expect(saidIn(pages.join('\n')).length).toBeGreaterThan(100);
  expect(pages.flatMap(metricAlone)).toEqual([]);
});

it('engraves nothing in mm alone: the diameter, depths and sizes in inches', () => {
  const words = lettered.map((text) => text.replaceAll('\n', ' '));
  expect(words.some((text) => text.includes('9 IN R1'))).toBe(true);
  // The charms reach 2.42 mm down: the tooth is 2.4 mm.
  expect(words).toContain('.094');
  // The bars that show the scale of a drawing stand beside one another.
  expect(words).toContain('4 in');
  expect(words.filter((text) => text !== '100 mm').flatMap(metricAlone)).toEqual([]);
});
