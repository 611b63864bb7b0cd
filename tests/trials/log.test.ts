import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { changesByPour, columns, readLog, trialLogJsonSchema, withPour } from '../../src/trials/index.ts';

const planText = (gate = '3 mm') => `process: rubber
disc: { diameter: 230 mm, thickness: 12 mm }
masters:
  snail: { width: 12 mm, length: 16 mm, above: 4 mm, below: 3 mm }
placements:
  - { master: snail, ring: { count: 3, radius: 70 mm } }
gates: [{ placements: [snail], width: ${gate}, depth: 2 mm }]
vents: []
`;

function planOf(text = planText()) {
  const { plan, findings } = readPlan(text, 'plan.yaml');
  if (!plan) throw new Error(JSON.stringify(findings));
  return plan;
}

const read = (text: string) => readLog(text, 'charms.trials.yaml', planOf());
const codesOf = (text: string): string[] => read(text).findings.map(({ code }) => code);

describe('a trial log', () => {
  it('is read in the units it is written in', () => {
    const { log, findings } = read(`pours:
  - { pour: 1, date: Monday, metal: 554 F, mold: 60, speed: 500 rpm, shot: 8 oz, cavities: { snail-1: short, snail-2: { came: short, where: tip, missing: 20 % } }, others: good }
`);
    expect(findings).toEqual([]);
    const [pour] = log?.pours ?? [];
    expect(pour.metalC).toBeCloseTo(290, 9);
    expect(pour.shotKg).toBeCloseTo(0.226796185, 9);
    expect(pour.cavities?.['snail-2']).toEqual([{ came: 'short', where: 'tip', missing: 0.2 }]);
    expect(pour.cavities?.['snail-1']).toEqual([{ came: 'short' }]);
  });

  it.each([
    [
      'a cavity that is not there',
      'pours: [{ pour: 1, cavities: { snial-1: short } }]',
      'trials.unknown-cavity',
    ],
    ['a number twice', 'pours: [{ pour: 1 }, { pour: 1 }]', 'trials.pour-twice'],
    ['good and bad', 'pours: [{ pour: 1, cavities: { snail-1: [good, short] } }]', 'trials.good-and-bad'],
    ['a file cut off', 'pours:\n  - { pour: 1, cavities: { snail-1: sh', 'plan.unreadable'],
    ['another kind of file', 'hello', 'plan.wrong-kind'],
    ['a name mistyped', 'pours: [{ pour: 1, sped: 500 }]', 'plan.unknown-key'],
    ['a word that is no outcome', 'pours: [{ pour: 1, cavities: { snail-1: shrt } }]', 'plan.wrong-kind'],
    ['a wrong unit', 'pours: [{ pour: 1, speed: 500 mm }]', 'plan.wrong-unit'],
  ])('says one thing of %s', (_, text, code) => {
    const { log, findings } = read(text);
    expect(log).toBeUndefined();
    expect(findings.map((one) => one.code)).toEqual([code]);
    expect(findings[0].at).toMatchObject({ file: 'charms.trials.yaml' });
  });

  it('says which names it knows and what is meant', () => {
    const [unknown] = read('pours: [{ pour: 1, cavities: { snial-1: short } }]').findings;
    expect(unknown.values).toMatchObject({ meant: 'snail-1', known: ['snail-1', 'snail-2', 'snail-3'] });
    const [key] = read('pour: []\npours: []').findings;
    expect(key.values).toMatchObject({ section: 'a trial log', meant: 'pours' });
    const [word] = read('pours: [{ pour: 1, cavities: { snail-1: shrt } }]').findings;
    expect(word.values.about).toContain('`short`');
  });

  it('keeps cavities the plan no longer has, and says so', () => {
    const text = `pours:
  - { pour: 1, cavities: { beetle-1: short }, cut: [{ kind: gate, of: [beetle-1], width: 3, depth: 2 }] }
`;
    expect(codesOf(text)).toEqual(['trials.gone']);
    expect(read(text).log?.pours[0].cavities).toHaveProperty('beetle-1');
  });
});

describe('the record on paper', () => {
  it('has its columns in the order of the fields of the log', () => {
    const pours = trialLogJsonSchema().properties?.pours as { items: { properties: object } };
    const fields = Object.keys(pours.items.properties);
    expect(fields.filter((field) => columns.some((one) => one.field === field))).toEqual(
      columns.map(({ field }) => field),
    );
  });
});

describe('writing a pour', () => {
  it('begins a log, keeps comments, and writes gates and vents only where they are other', () => {
    const first = withPour(undefined, { pour: 1, speed: '500 rpm', others: 'good' }, planOf());
    const noted = first.replace('speed: 500 rpm', 'speed: 500 rpm # by the dial');
    const second = withPour(noted, { pour: 2, others: 'good' }, planOf());
    const third = withPour(second, { pour: 3, cavities: { 'snail-1': 'short' } }, planOf(planText('4 mm')));
    expect(third).toContain('# by the dial');
    expect(third.match(/kind: gate/g)).toHaveLength(2);
    const { log, findings } = readLog(third, 'log', planOf());
    expect(findings).toEqual([]);
    expect(log?.pours.map(({ pour }) => pour)).toEqual([1, 2, 3]);
    expect(log && changesByPour(log)).toEqual([
      [],
      [],
      [{ kind: 'gate opened', from: 6, to: 8, of: ['snail-1', 'snail-2', 'snail-3'] }],
    ]);
  });

  it('writes the same for the same', () => {
    const once = withPour(undefined, { pour: 1, note: 'damp: rain' }, planOf());
    expect(withPour(undefined, { pour: 1, note: 'damp: rain' }, planOf())).toBe(once);
    expect(readLog(once, 'log', planOf()).log?.pours[0].note).toBe('damp: rain');
  });
});

describe('what was changed', () => {
  const changes = (text: string) => {
    const { log } = read(text);
    return log ? changesByPour(log).flat() : undefined;
  };
  it('is told of settings beyond how readings scatter', () => {
    expect(
      changes(
        'pours: [{ pour: 1, speed: 500, metal: 290, mold: 40 }, { pour: 2, speed: 530, metal: 293, mold: 60 }]',
      ),
    ).toEqual([
      { kind: 'faster', from: 500, to: 530 },
      { kind: 'mold warmer', from: 40, to: 60 },
    ]);
  });
  it('is told of gates and vents once both pours say how they were cut', () => {
    const cut = (list: string) => `cut: [${list}]`;
    const gate = '{ kind: gate, of: [snail-1, snail-2], width: 3, depth: 2 }';
    expect(
      changes(
        `pours: [{ pour: 1 }, { pour: 2, ${cut(gate)} }, { pour: 3, ${cut(`${gate}, { kind: vent, of: [snail-2] }`)} }]`,
      ),
    ).toEqual([{ kind: 'vent more', of: ['snail-2'] }]);
  });
});
