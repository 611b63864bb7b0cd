import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { run, workbench } from './workbench.ts';

const { put, path, folder } = workbench();

/** A lens with as many sides, seen from above an ellipse: mm, or what a unit of the file is. */
function lens(long: number, wide: number, high: number, sides = 16): string {
  const rim = Array.from({ length: sides }, (_, k) => {
    const angle = (2 * Math.PI * k) / sides;
    return [(long / 2) * Math.cos(angle), (wide / 2) * Math.sin(angle), 0];
  });
  const facet = (...corners: readonly (readonly number[])[]) =>
    `facet normal 0 0 0\nouter loop\n${corners.map((at) => `vertex ${at.join(' ')}`).join('\n')}\nendloop\nendfacet`;
  const facets = rim.flatMap((at, k) => {
    const next = rim[(k + 1) % sides];
    return [facet(at, next, [0, 0, high / 2]), facet(next, at, [0, 0, -high / 2])];
  });
  return `solid lens\n${facets.join('\n')}\nendsolid lens\n`;
}

put('Hazel nut.stl', lens(16, 12, 6));
put('pea.stl', lens(10, 10, 5));
put('log.stl', lens(400, 20, 10));
put('nothing.stl', 'solid nothing\nendsolid nothing\n');
const mesh = (name: string): string => path(name);
const counted = (text: string) => {
  const { plan } = readPlan(text, 'plan');
  return Object.keys(plan?.masters ?? {});
};

describe('new --from', () => {
  it('makes a plan that passes the checks without a stop, and builds', async () => {
    const file = path('nuts.yaml');
    const made = await run(
      ...['new', file, '--diameter', '6in', '--count', '4', 'pea=2'],
      ...['--from', mesh('Hazel nut.stl'), mesh('pea.stl')],
    );
    expect(made).toMatchObject({ code: 0, err: expect.not.stringContaining('discwright:') });
    expect(made.out).toContain('6 pieces: 4 hazel-nut, 2 pea');
    expect(made.out).toContain('repair.unit-guessed');
    const text = readFileSync(file, 'utf8');
    expect(text).toContain(
      'hazel-nut: { file: "Hazel nut.stl", unit: mm } # 16 x 12 x 6, unit guessed; undercut 0.0 %',
    );
    const checked = await run('check', file, '--no-cache', '--quiet', '--json');
    const { findings } = JSON.parse(checked.out) as { findings: { code: string; severity: string }[] };
    expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
    const bad = findings.filter(({ code }) => /^(walls|channels|layout|registration)\./.test(code));
    expect(bad).toEqual([]);
    // Arranged anew it is the same.
    await run('arrange', file, '--write', '--no-cache', '--quiet');
    const places = (one: string) => one.slice(one.indexOf('placements:'), one.indexOf('gates:'));
    expect(places(readFileSync(file, 'utf8'))).toBe(places(text));
  });

  it('says in one list what it left out and why, and lays the rest', async () => {
    const file = path('mixed.yaml');
    const made = await run(
      ...['new', file, '--diameter', '6in', '--process', 'rigid', '--count', '2'],
      ...['--from', mesh('log.stl'), mesh('nothing.stl'), mesh('pea.stl')],
    );
    expect(made.code).toBe(1);
    expect(made.out).toContain('2 pieces: 2 pea');
    const [, list] = made.out.split('To be decided by you:');
    expect(list).toContain('arrange.too-large');
    expect(list).toMatch(/mesh\.[a-z-]+ +nothing/);
    expect(counted(readFileSync(file, 'utf8'))).toEqual(['pea']);
  });

  it.each([
    ['a plan that is there', ['nuts.yaml', '--from', 'pea.stl'], 'is there already'],
    ['a mesh that is not', ['a.yaml', '--from', 'bean.stl'], 'there is no file'],
    ['a count of none', ['a.yaml', '--count', '0', '--from', 'pea.stl'], '--count 0'],
    [
      'a count of an unknown one',
      ['a.yaml', '--count', 'bean=2', '--from', 'pea.stl'],
      'the meshes are called pea',
    ],
    ['a count without meshes', ['a.yaml', '--count', '2'], 'there are none'],
  ])('refuses %s', async (_, [file, ...more], says) => {
    put('nuts.yaml', 'process: rubber\n');
    const full = more.map((one) => (one.endsWith('.stl') ? `${folder}/${one}` : one));
    const { code, err } = await run('new', path(file), ...full);
    expect(code).toBe(2);
    expect(err).toContain(says);
  });
});
