import { describe, expect, it } from 'vitest';
import { showMasters } from '../../cli/show-masters.ts';
import { plain } from '../../cli/terminal.ts';
import { masterSizes } from '../../src/export/index.ts';
import { masterTable } from '../../src/export/shop-sheet/lists.ts';
import type { Paper } from '../../src/export/shop-sheet/paper.ts';
import { writeStl } from '../../src/export/stl.ts';
import type { Report } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { checkMold, type FileAccess, readMold } from '../../src/pipeline/index.ts';
import { box, single } from '../revolved-solids.ts';

/** 10 x 6 x 4, in the file's own unit: 0.24 cm3 where that is the millimeter. */
const bar = writeStl(single(box([-5, -3, -2], [5, 3, 2])), 'bar');
const files: FileAccess = async (path) => ({ bytes: bar, name: path, outside: false });

const kernel = await loadKernel();

async function judged(
  master: string,
  shrink = '',
): Promise<{ report: Report; row: readonly string[]; table: string }> {
  const text = `
process: rubber
disc: { diameter: 300, thickness: 90 }
alloy: { density: 7300 kg/m3 }
${shrink}
masters: { bar: { file: bar.stl, ${master} } }
placements: [{ master: bar, at: { radius: 90, angle: 0 } }]
`;
  const { plan, mold, findings } = await readMold(
    { bytes: new TextEncoder().encode(text), name: 'plan.yaml', files },
    kernel,
  );
  if (!plan || !mold) throw new Error(`no mold: ${findings.map(({ code }) => code)}`);
  const report = checkMold(mold, findings, kernel);
  let row: readonly string[] = [];
  const paper = { section: () => {}, table: (_: unknown, rows: string[][]) => ([row] = rows) };
  masterTable(paper as unknown as Paper, mold, report, '');
  return { report, row, table: plain(showMasters(masterSizes(plan, mold, report), report.units, 100)) };
}

const figure = ({ figures }: Report, name: string): number =>
  figures.find((one) => one.name === name)?.value ?? Number.NaN;

describe("the person's own scale of a master", () => {
  // 0.24 cm3 x 7.3 g/cm3, times the cube of the scale, whatever the unit beside it.
  it.each([
    ['unit: mm', 1],
    ['unit: mm, scale: 2', 2],
    ['unit: mm, scale: 50 %', 0.5],
    ['unit: cm, scale: 20 %', 2],
    ['unit: cm', 10],
    ['unit: micron, scale: 2000', 2],
  ])('weighs a casting of %s by its size', async (master, times) => {
    const { report } = await judged(master);
    expect(figure(report, 'shot.casting') / (0.24 * 7.3 * times ** 3)).toBeCloseTo(1, 6);
  });

  it('takes out shrink, and it alone', async () => {
    const { report } = await judged('unit: mm, scale: 2', 'shrink: { alloy: 1 %, rubber: 2 % }');
    expect(figure(report, 'shot.casting') / (8 * 0.24 * 7.3)).toBeCloseTo(1, 6);
    // The cavity is larger than the casting by both shrinks.
    expect(figure(report, 'ledger.displaced') / ((8 * 240) / (0.99 * 0.98) ** 3)).toBeCloseTo(1, 6);
  });

  it('prints the volume of the casting on the sheet', async () => {
    const { row } = await judged('unit: micron, scale: 2000');
    expect(row[4]).toBe('1.920 cm3 (0.1172 in3)');
  });

  it('is judged, and told, as large as it is made', async () => {
    expect((await judged('unit: micron, scale: 2000')).report.findings.map(({ code }) => code)).not.toContain(
      'repair.size-absurd',
    );
    const { findings } = (await judged('unit: mm, scale: 5 %')).report;
    const doubtful = findings.find(({ code }) => code === 'repair.size-doubtful');
    expect(doubtful?.values.measured).toBeCloseTo(0.5, 9);
  });

  it('goes before the guess of a unit', async () => {
    const guess = async (master: string) =>
      (await judged(master)).report.findings.find(({ code }) => code === 'repair.unit-guessed')?.values;
    expect(await guess('scale: 3')).toMatchObject({ unit: 'mm', measured: 30, x: 30, y: 18, z: 12 });
    // 10 x 0.1 is 1: an inch rather than a millimeter.
    expect(await guess('scale: 10 %')).toMatchObject({ unit: 'in' });
  });
});

describe('a master by the size wanted', () => {
  // The bar is 10 x 6 x 4 as in its file, 10 x 4 x 6 tipped about x, 4 x 6 x 10 about y.
  it.each([
    ['length: 1 1/4 in', 31.75 / 10],
    ['unit: in, length: 20', 2],
    ['height: 28', 7],
    ['height: 28, lie: { turnX: 90 }', 28 / 6],
    ['height: 28, lie: { turnY: 90 }', 2.8],
    ['length: 30, lie: { turnY: 90 }', 5],
    ['length: 30, lie: { turnZ: 45 }', 3],
  ])('%s is so large, whatever unit its file is in', async (master, times) => {
    const { report } = await judged(master, 'shrink: { alloy: 1 % }');
    expect(figure(report, 'shot.casting') / (0.24 * 7.3 * times ** 3)).toBeCloseTo(1, 5);
    expect(report.findings.map(({ code }) => code)).not.toContain('repair.unit-guessed');
  });

  it('tells size, volume and mass of each master', async () => {
    const { table } = await judged('length: 4 cm');
    expect(table.split('\n').map((line) => line.trim().split(/ {2,}/))).toEqual([
      ['Masters', 'length x width x height', 'volume', 'one casting'],
      ['bar', '40.00 x 24.00 x 16.00 mm', '15.360 cm3 (0.9373 in3)', '112.13 g (3.955 oz)'],
    ]);
  });
});
