import { describe, expect, it } from 'vitest';
import { joinReport, makeFigure } from '../../src/findings/index.ts';
import { thinCover } from '../example-findings.ts';
import { asJson, faultsIn } from './report-faults.ts';

// Reports of whole plans are held to it where they are made: tests/presets/plans.test.ts.

describe('report.json against its schema', () => {
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
    expect(faultsIn(asJson(report))).toEqual([]);
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
    expect(faultsIn(empty)).toEqual([]);
    expect(faultsIn({ ...empty, ...part }).length).toBeGreaterThan(0);
  });
});
