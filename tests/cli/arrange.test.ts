import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runCompiled } from './compiled.ts';
import { run, workbench } from './workbench.ts';

const { put } = workbench();

const head = `# A small disc.
process: rubber
disc: { diameter: 150 } # of scrap
sprue: { hole: 20, well: { diameter: 34, depth: 6 } }
masters:
  bar: { width: 9, length: 22, above: 2, below: 2, mass: 4 g }
  tile: { width: 12, length: 12, above: 2, below: 2, mass: 3 g }
  same: { width: 12, length: 12, above: 2, below: 2, mass: 3 g }
  plate: { width: 60, length: 60, above: 2, below: 2, mass: 30 g }
  rod: { width: 4, length: 140, above: 2, below: 2, mass: 8 g }
limits: { wall: 3, cavityToWell: 5, cavityToBoss: 4, cavityToRim: 6 }
`;
const few = (pieces: string, more = ''): string =>
  `${head}arrange:\n  effort: little\n  pieces: ${pieces}\n${more}`;

let files = 0;
const plan = (text: string): string => put(`plan-${++files}.yaml`, text);
const arranged = async (text: string, ...more: readonly string[]) => {
  const path = plan(text);
  const ran = await run('arrange', path, '--no-cache', '--quiet', ...more);
  return { ...ran, path, text: readFileSync(path, 'utf8') };
};

const order = few(
  '{ bar: { count: 6 }, tile: { count: 3 } } # the order',
  `placements:
  - { master: tile, at: { radius: 45, angle: 0 }, locked: true } # by hand
gates:
  - { placements: [bar, tile], width: 2.5, depth: 1.2 } # with the knife
`,
);

describe('arrange', () => {
  it('leaves the plan alone where it is not asked to write', async () => {
    const { code, out, text } = await arranged(order);
    expect(code).toBe(0);
    expect(out).toContain('bar: 6');
    expect(text).toBe(order);
  });

  it('writes placements and gates that keep all walls, with comments kept, and the same again', async () => {
    const { code, path, text } = await arranged(order, '--write');
    expect(code).toBe(0);
    for (const comment of ['# A small disc.', '# of scrap', '# the order', '# by hand'])
      expect(text).toContain(comment);
    expect(text.match(/arranged: true/g)?.length).toBeGreaterThan(1);
    const checked = await run('check', path, '--json', '--no-cache', '--quiet');
    const { findings } = JSON.parse(checked.out) as {
      findings: { code: string; subject: string }[];
    };
    const bad = findings.filter(({ code }) => /^(walls|channels|layout)/.test(code));
    expect(bad).toEqual([]);
    // What was arranged is laid anew and comes out as it was.
    await run('arrange', path, '--write', '--no-cache', '--quiet');
    expect(readFileSync(path, 'utf8')).toBe(text);
  });

  it('is the same in another process', async () => {
    const path = plan(order);
    const one = () => runCompiled('arrange', path, '--json', '--no-cache', '--quiet');
    const [first, second] = [await one(), await one()];
    expect(first.code).toBe(0);
    expect(second.out).toBe(first.out);
  });

  it('says in JSON what lies where', async () => {
    const { out } = await arranged(few('{ bar: { count: as many as fit, most: 4 } }'), '--json');
    const { placements, left, wall } = JSON.parse(out);
    const laid = placements.reduce((sum: number, one: { copies: number }) => sum + one.copies, 0);
    expect(laid).toBe(4);
    expect(left).toEqual([]);
    expect(wall).toBeGreaterThan(3);
  });
});

describe('what does not go', () => {
  it.each([
    ['arrange.no-sprue', few('{ bar: { count: 2 } }').replace(/sprue:.*\n/, '')],
    ['arrange.no-ring', few('{ bar: { count: 2 } }').replace('diameter: 150', 'diameter: 40')],
    ['arrange.too-large', few('{ plate: { count: 1 } }')],
    ['arrange.too-large', few('{ rod: { count: 1 } }')],
    ['arrange.gates', few('{ bar: { count: 30 } }')],
    [
      'arrange.area',
      few('{ plate: { count: 4 } }').replace(/width: 60, length: 60/, 'width: 40, length: 90'),
    ],
    [
      'arrange.collide',
      few(
        '{ bar: { count: 2 } }',
        'placements: [{ master: tile, at: { radius: 45, angle: 0 } }, { master: tile, at: { radius: 45, angle: 10 } }]\n',
      ),
    ],
  ])('is told of without a search: %s', async (code, text) => {
    const { code: exit, out, text: after } = await arranged(text, '--write');
    expect(out.match(/arrange\.[a-z-]+/g)?.filter((one) => one !== 'arrange.larger-disc')).toEqual([code]);
    expect(exit).toBe(1);
    expect(after).toBe(text);
  });

  it('is laid as far as it goes, and a disc named that was found to hold it', async () => {
    const { out } = await arranged(few('{ tile: { count: 12 } }').replace('diameter: 150', 'diameter: 88'));
    expect(out).toContain('arrange.left');
    expect(out).toMatch(/found to hold all is one of 152\.40 mm.*least diameter found\s+to is \d/s);
  });

  it('are two masters of one outline without being told so', async () => {
    const { out } = await arranged(few('{ tile: { count: 2 }, same: { count: 2 } }'));
    expect(out).toContain('arrange.alike');
  });

  it.each([
    ['plan.out-of-range', '{ bar: { count: 0 } }'],
    ['plan.out-of-range', '{ bar: { count: -3 } }'],
    ['plan.out-of-range', '{ bar: { count: 10000 } }'],
    ['plan.choose-one', '{ bar: { count: 4, most: 2 } }'],
    ['plan.unknown-id', '{ bur: { count: 4 } }'],
  ])('are wishes that cannot be: %s', async (code, pieces) => {
    const { code: exit, err } = await arranged(few(pieces));
    expect(exit).toBe(2);
    expect(err.match(/plan\.[a-z-]+/g)).toEqual([code]);
  });

  it('is a plan that wishes for nothing', async () => {
    const { code, err } = await arranged(head);
    expect(code).toBe(2);
    expect(err).toContain('wishes for nothing');
  });
});
