import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { combine, readAxis, readPlan, setInPlan } from '../../../src/plan/index.ts';

describe('what takes which values', () => {
  test.each([
    ['disc.diameter=6in,9in,12in', ['6in', '9in', '12in']],
    ['disc.diameter=6 in', ['6 in']],
    ['disc.diameter=150..300/50', ['150', '200', '250', '300']],
    ['disc.diameter=6..9/1.5in', ['6in', '7.5in', '9in']],
    ['disc.diameter=0.1..0.5/0.1', ['0.1', '0.2', '0.3', '0.4', '0.5']],
    ['disc.diameter=1..3', ['1', '2', '3']],
    ['disc.thickness=1/2in..1in step 1/8in', ['1/2in', '5/8in', '3/4in', '7/8in', '1in']],
    ['disc.thickness=1/2in..1in/1/8in', ['1/2in', '5/8in', '3/4in', '7/8in', '1in']],
    ['disc.thickness=1/2..3/4 step 1/8"', ['1/2"', '5/8"', '3/4"']],
    ['disc.thickness=1 1/4in..1-3/4in step 1/4in', ['1 1/4in', '1 1/2in', '1 3/4in']],
    ['disc.diameter=150 .. 300 step 50', ['150', '200', '250', '300']],
    ['disc.diameter=6in..6.5in step 0.25in', ['6in', '6.25in', '6.5in']],
    ['x=-1/2..1/2 step 1/2', ['-1/2', '0', '1/2']],
    ['title="a, b",c', ['a, b', 'c']],
    ['disc.thickness=1/2",3/4", 1"', ['1/2"', '3/4"', '1"']],
  ])('%s', (text, values) => {
    expect(readAxis(text)).toMatchObject({ values });
  });

  test.each([
    ['disc.diameter', /does not say/],
    ['=6in', /does not say/],
    ['disc.diameter=', /empty/],
    ['disc.diameter=6in,,9in', /empty/],
    ['disc.diameter=6in,', /empty/],
    ['disc.diameter=6in..300mm/1', /units in and mm/],
    ['disc.diameter=9..6/1', /backward/],
    ['disc.diameter=6..9/0', /step/],
    ['disc.diameter=6..9/x', /no range/],
    ['disc.thickness=1/2in..3/4in', /two ways.*step/],
    ['disc.thickness=1/0in..3in', /divides by 0/],
    ['disc.thickness=1..2 step 0/4', /step/],
    ['disc.diameter=0..1/0.00001', /at most/],
    ['disc.diameter=6in,6in', /twice/],
  ])('%s is refused', (text, says) => {
    expect(readAxis(text)).toMatchObject({ fault: expect.stringMatching(says) });
  });
});

describe('combinations', () => {
  const axes = [
    { path: 'a', values: ['1', '2'] },
    { path: 'b', values: ['x', 'y', 'z'] },
  ];

  test('all of them', () => {
    const all = combine(axes, false);
    expect('rows' in all && all.rows.map((row) => row.map(({ value }) => value).join(''))).toEqual([
      '1x',
      '1y',
      '1z',
      '2x',
      '2y',
      '2z',
    ]);
  });

  test('together', () => {
    expect(combine(axes, true)).toMatchObject({ fault: expect.stringContaining('a 2, b 3') });
    const two = combine([axes[0], { path: 'b', values: ['x', 'y'] }], true);
    expect('rows' in two && two.rows.map((row) => row.map(({ value }) => value).join(''))).toEqual([
      '1x',
      '2y',
    ]);
  });

  test('of one field twice are refused', () => {
    expect(combine([axes[0], axes[0]], false)).toMatchObject({ fault: expect.stringContaining('twice') });
  });
});

const plan = `# A leaf on a disc.
process: rubber
disc: { diameter: 250, thickness: 3/4 in } # two halves
masters:
  leaf: { length: 20, width: 10, above: 2, below: 1 }
placements:
  - { master: leaf, ring: { count: 3, radius: 60 % } }
  - { master: leaf, at: { radius: 30, angle: 0 } }
`;

const set = (path: string, value: string, text = plan) => setInPlan(text, [{ path, value }]);

describe('a plan with a field set', () => {
  test('has the value where the old one stood, and all else as it was', () => {
    expect(set('disc.diameter', '9 in')).toEqual({ text: plan.replace('250', '9 in') });
    expect(set('placements.1.ring.count', '5')).toEqual({ text: plan.replace('count: 3', 'count: 5') });
    expect(set('masters.leaf.length', '25')).toEqual({ text: plan.replace('length: 20', 'length: 25') });
  });

  test('says what the plan says when it is read', () => {
    const edited = set('disc.diameter', '9in');
    expect('text' in edited && readPlan(edited.text, 'p').plan?.disc.diameter).toBeCloseTo(228.6, 9);
  });

  test('gains a field that was not there, and keeps its comments', () => {
    const edited = set('fixture.bed.x', '220');
    if (!('text' in edited)) throw new Error(edited.fault);
    expect(edited.text).toContain('# two halves');
    const whole = setInPlan(plan, [
      { path: 'fixture.bed.x', value: '220' },
      { path: 'fixture.bed.y', value: '210' },
      { path: 'fixture.bed.z', value: '200' },
    ]);
    expect('text' in whole && readPlan(whole.text, 'p').plan?.fixture?.bed).toEqual({
      x: 220,
      y: 210,
      z: 200,
    });
  });

  test.each([
    ['disc.label', 'LEAF', 'thickness: 3/4 in }', 'thickness: 3/4 in, label: LEAF }'],
    ['masters.leaf.material', 'pewter', 'below: 1 }', 'below: 1, material: pewter }'],
    ['placements.2.sink', '2', 'angle: 0 } }', 'angle: 0 }, sink: 2 }'],
    ['fixture.bed.x', '220', 'angle: 0 } }\n', 'angle: 0 } }\nfixture: { bed: { x: 220 } }\n'],
  ])('gains %s at the end of its section, and nothing else is touched', (path, value, old, now) => {
    expect(set(path, value)).toEqual({ text: plan.replace(old, now) });
  });

  test('gains a field on a line of its own in a section of lines, behind comments on its last line', () => {
    const lines = 'process: rubber\ndisc:\n  diameter: 250 # whole\n\n# The end.\nsprue: {}';
    expect(set('disc.label', 'A', lines)).toEqual({ text: lines.replace('whole\n', 'whole\n  label: A\n') });
    expect(set('sprue.hole', '30', lines)).toEqual({ text: lines.replace('{}', '{ hole: 30 }') });
    expect(set('title', 'T', lines)).toEqual({ text: `${lines}\ntitle: T\n` });
  });

  test('takes values in place of nothing, of an alias and of text over several lines', () => {
    expect(set('disc.diameter', '9in', 'disc:\n  diameter:\n')).toEqual({ text: 'disc:\n  diameter: 9in\n' });
    const alias = 'disc: { lower: &t 10, upper: *t, diameter: 90 }\n';
    expect(set('disc.upper', '12', alias)).toEqual({ text: alias.replace('*t', '12') });
    const text = 'title: |\n  A\n  B\nprocess: rubber\n';
    expect(set('title', 'C', text)).toEqual({ text: 'title: C\nprocess: rubber\n' });
  });

  test('keeps the line of a fault in a value that was set', () => {
    const edited = set('placements.2.turn', 'askew');
    const { findings } = readPlan('text' in edited ? edited.text : '', 'p');
    expect(findings.map(({ code, at }) => [code, at?.line])).toEqual([['plan.quantity', 8]]);
  });

  test.each([
    ['sprue.hole', 'disc: { diameter: 90 }\nsprue:\n'],
    ['gates.1.width', 'disc: { diameter: 90 }\ngates: straight\n'],
    ['disc', 'disc: { diameter: 90 }\n'],
  ])('%s is refused where something else stands', (path, text) => {
    expect(set(path, '5', text)).toMatchObject({ fault: expect.stringContaining(path) });
  });

  test('takes texts that YAML would take for something else', () => {
    const edited = set('disc.label', 'A, B: #1');
    expect('text' in edited && readPlan(edited.text, 'p').plan?.disc.label).toBe('A, B: #1');
  });

  test.each([
    ['disc.diametre', /Did you mean `disc.diameter`/],
    ['disk.diameter', /Did you mean `disc`/],
    ['placements.first.turn', /is a list/],
    ['placements.0.turn', /is a list/],
    ['placements.7.turn', /no item 7 in placements/],
    ['masters.beetle.length', /no `beetle` in masters/],
    ['disc.diameter.mm', /holds no further names/],
  ])('%s is refused', (path, says) => {
    expect(set(path, '1')).toMatchObject({ fault: expect.stringMatching(says) });
  });

  test('that is no plan comes back as it is', () => {
    expect(set('disc.diameter', '6in', 'disc: [')).toEqual({ text: 'disc: [' });
  });
});

describe('the plans to start from', () => {
  const presets = join(import.meta.dirname, '../../../presets');
  const files = readdirSync(presets, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.yaml'),
  );

  // What the YAML package itself makes of the same change.
  test.each(files)('%s has one field more or another, as the YAML package sets it', (file) => {
    const text = readFileSync(join(presets, file), 'utf8');
    for (const path of [
      'disc.diameter',
      'disc.label',
      'sprue.grip',
      'limits.wall',
      'fixture.bed.x',
      'title',
    ]) {
      const wanted = parseDocument(text);
      wanted.setIn(path.split('.'), 123);
      const edited = set(path, '123', text);
      if (!('text' in edited)) throw new Error(edited.fault);
      expect(parseDocument(edited.text).toJS()).toEqual(wanted.toJS());
      expect(edited.text.split('\n').length - text.split('\n').length).toBeLessThanOrEqual(1);
    }
  });
});
