import { Ajv2020 } from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { openPlan } from '../../cli/plan-files.ts';
import { reportJson } from '../../src/export/index.ts';
import { reportJsonSchema, reportSchema } from '../../src/export/report-schema.ts';
import { figureCatalogue, joinReport, makeFigure, type Report } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { checkMold, readMold } from '../../src/pipeline/index.ts';
import { thinCover } from '../example-findings.ts';

// Held to a JSON Schema validator that knows nothing of this program.
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(reportJsonSchema());
const asJson = (report: Report): unknown => JSON.parse(new TextDecoder().decode(reportJson(report)));
const faults = (json: unknown): string[] => {
  validate(json);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
};

let demo: Report;
beforeAll(async () => {
  const kernel = await loadKernel();
  const { mold, findings } = await readMold(await openPlan('presets/hedgerow'), kernel);
  if (!mold) throw new Error('the demo cannot be read');
  demo = checkMold(mold, findings, kernel);
});

describe('report.json against its schema', () => {
  it('of the demo is valid', () => {
    expect(demo.figures.length).toBeGreaterThan(50);
    expect(faults(asJson(demo))).toEqual([]);
    expect(reportSchema.safeParse(asJson(demo)).success).toBe(true);
  });

  it('gives every figure of the demo the unit of the catalogue', () => {
    for (const { name, unit } of demo.figures)
      expect([name, unit]).toEqual([name, figureCatalogue[name].unit]);
  });

  it('with everything a finding, a series and a field may hold is valid', () => {
    const full = thinCover('beetle', {
      place: [1, 2, 3],
      at: { file: 'plan.yaml', line: 1, column: 1 },
    });
    const changed = { ...full, severity: 'note', changed: { from: 'warn', reason: 'Flat back.' } } as const;
    const places = [[0, 0, 0]] as const;
    const x = { label: 'turned by', unit: 'deg', values: [0, 1] } as const;
    const field = { name: 'wall', subject: 'beetle', unit: 'mm', values: Float32Array.of(1, 2) } as const;
    const report = joinReport('Hedgerow charms', 'metric', [
      { findings: [full, changed], fields: [field, { ...field, values: new Float32Array() }] },
      {
        figures: [makeFigure('walls.rim', { subject: 'a', value: 1, source: 'b', estimated: true, places })],
      },
      { series: [{ name: 'misfit', subject: 'mold', x, y: x, limit: { value: 3, says: 'wanted' } }] },
    ]);
    expect(faults(asJson(report))).toEqual([]);
  });

  it.each([
    [
      'an unknown code',
      { findings: [{ code: 'cover.odd', severity: 'stop', subject: 'a', says: '', remedy: '' }] },
    ],
    [
      'an unknown figure',
      { figures: [{ name: 'odd', subject: 'a', value: 1, unit: 'mm', source: '', estimated: false }] },
    ],
    ['a unit that is none', { fields: [{ name: 'a', subject: 'a', unit: 'ell', count: 0 }] }],
    [
      'what is no number',
      { series: [{ name: 'a', subject: 'a', x: { label: '', unit: 'mm', values: [null] } }] },
    ],
    ['an unknown section', { remarks: [] }],
  ])('refuses %s', (_, part) => {
    const empty = {
      schema: 2,
      title: '',
      units: 'metric',
      findings: [],
      figures: [],
      series: [],
      fields: [],
    };
    expect(faults(empty)).toEqual([]);
    expect(faults({ ...empty, ...part }).length).toBeGreaterThan(0);
  });
});
