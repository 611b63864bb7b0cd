import { describe, expect, test } from 'vitest';
import { combine, readAxis, readPlan, setInPlan } from '../../../src/plan/index.ts';

describe('what takes which values', () => {
  test.each([
    ['disc.diameter=6in,9in,12in', ['6in', '9in', '12in']],
    ['disc.diameter=6 in', ['6 in']],
    ['disc.diameter=150..300/50', ['150', '200', '250', '300']],
    ['disc.diameter=6..9/1.5in', ['6in', '7.5in', '9in']],
    ['disc.diameter=0.1..0.5/0.1', ['0.1', '0.2', '0.3', '0.4', '0.5']],
    ['disc.diameter=1..3', ['1', '2', '3']],
    ['title="a, b",c', ['a, b', 'c']],
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
