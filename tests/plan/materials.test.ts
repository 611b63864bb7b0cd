import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';

const sheet = {
  kind: 'resin',
  heatLimit: '464 F',
  load: '1.8 MPa',
  strength: '7250 psi',
  density: '1.2 g/cm3',
  expansion: '5.5e-5 /K',
  source: 'data sheet, issue 3',
};
const planOf = (fields: Record<string, string>, name = 'vat 240') =>
  readPlan(
    `process: rubber\ndisc: { diameter: 160 }\nmaterials:\n  ${name}:\n${Object.entries(fields)
      .map(([key, value]) => `    ${key}: ${value}\n`)
      .join('')}`,
    'plan.yaml',
  );
const without = (key: string) => Object.fromEntries(Object.entries(sheet).filter(([name]) => name !== key));

describe('a material by its data sheet', () => {
  it('comes out in internal units', () => {
    const { plan, findings } = planOf(sheet);
    expect(findings).toEqual([]);
    expect(plan?.materials?.['vat 240']).toEqual({
      kind: 'resin',
      heatLimitC: expect.closeTo(240, 9),
      loadPa: 1.8e6,
      // 7250 x 6894.757 Pa (NIST SP 811).
      strengthPa: expect.closeTo(49_986_988, -1),
      densityKgM3: 1200,
      expansionPerK: 5.5e-5,
      source: 'data sheet, issue 3',
    });
  });
  it.each(['kind', 'heatLimit', 'load', 'strength', 'density', 'source'])('wants its %s', (key) => {
    const { plan, findings } = planOf(without(key));
    expect(plan).toBeUndefined();
    expect(findings).toMatchObject([{ code: 'plan.missing', severity: 'stop' }]);
    expect(findings[0].at?.line).toBe(4);
  });
  it('of plaster wants no load, and of no other its expansion', () => {
    expect(planOf({ ...without('load'), kind: 'plaster' }).findings).toEqual([]);
    expect(planOf(without('expansion')).findings).toEqual([]);
  });
  it.each(['strength', 'load', 'density', 'expansion'])('wants a unit with its %s', (key) => {
    const { findings } = planOf({ ...sheet, [key]: '0.00005' });
    expect(findings).toMatchObject([{ code: 'plan.wrong-unit', severity: 'stop' }]);
  });
  it.each(['PLA', 'aluminum', '6061-T6', 'Resin', 'steel'])(
    'does not take the place of %s in the tables',
    (name) => {
      expect(planOf(sheet, name).findings).toMatchObject([
        { code: 'plan.bad-id', values: { which: 'material' } },
      ]);
    },
  );
  it('may fill what the tables leave blank, once', () => {
    expect(planOf(sheet, 'HT resin').findings).toEqual([]);
    const { findings } = readPlan(
      `process: rubber\ndisc: { diameter: 160 }\nmaterials:\n${['HT resin', 'high-temp resin']
        .map(
          (name) =>
            `  ${name}: { kind: resin, heatLimit: 240, load: 1.8 MPa, strength: 50 MPa, density: 1.2 g/cm3, source: sheet }\n`,
        )
        .join('')}`,
      'plan.yaml',
    );
    expect(findings).toMatchObject([{ code: 'plan.duplicate-id' }]);
  });
});
