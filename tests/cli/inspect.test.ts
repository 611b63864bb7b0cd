import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { run, stackTrace } from './workbench.ts';

const require = createRequire(import.meta.url);
const stlModels = dirname(require.resolve('stl-models/package.json'));
const nodeStl = join(dirname(require.resolve('node-stl/package.json')), 'test', 'test_data');

interface Inspected {
  readonly unit: string;
  readonly triangles: number;
  readonly findings: readonly { readonly code: string }[];
  readonly measures: {
    readonly volume: number;
    readonly area: number;
    readonly centroid: readonly number[];
    readonly inertia: readonly number[];
    readonly bounds: { readonly min: readonly number[]; readonly max: readonly number[] };
  };
}

async function inspect(...args: readonly string[]): Promise<Inspected & { readonly code: number }> {
  const { code, out } = await run('inspect', '--json', ...args);
  return { ...JSON.parse(out)[0], code };
}

describe('inspect of meshes that others made', () => {
  // A box a x b x c: V = abc, A = 2 (ab + bc + ca), Ixx = V (b2 + c2) / 12 about its middle.
  it('measures a box of 2 x 3 x 4 by the closed form', async () => {
    const { code, measures, triangles } = await inspect(join(nodeStl, 'box_2x3x4.stl'), '--unit', 'mm');
    expect(code).toBe(0);
    expect(triangles).toBe(12);
    const { min, max } = measures.bounds;
    const sides = max.map((high, axis) => high - min[axis]);
    expect([...sides].sort()).toEqual([2, 3, 4]);
    expect(measures.volume).toBeCloseTo(24, 6);
    expect(measures.area).toBeCloseTo(52, 6);
    for (const [axis, middle] of measures.centroid.entries())
      expect(middle).toBeCloseTo((min[axis] + max[axis]) / 2, 6);
    const [a, b, c] = sides;
    const moments = [b * b + c * c, a * a + c * c, a * a + b * b].map((sum) => (24 * sum) / 12);
    for (const [i, moment] of moments.entries()) expect(measures.inertia[i]).toBeCloseTo(moment, 5);
  });

  it('takes the unit from --unit, 1 in = 25.4 mm', async () => {
    const { measures, unit } = await inspect(join(nodeStl, 'box_2x3x4.stl'), '--unit', 'in');
    expect(unit).toBe('in');
    expect(measures.volume / (24 * 25.4 ** 3)).toBeCloseTo(1, 6);
  });

  // 2 x 3 x 4 with its longer side from above, 3, made 30 long: 10 times, 24 cm3; 7.28 g/cm3 of tin.
  it('measures and weighs it as large as it is to be', async () => {
    const box = join(nodeStl, 'box_2x3x4.stl');
    const { code, out } = await run('inspect', '--json', box, '--length', '30', '--alloy', 'tin');
    const [{ measures, massG }] = JSON.parse(out);
    expect(code).toBe(0);
    expect(measures.volume / 24_000).toBeCloseTo(1, 6);
    expect(massG / (24 * 7.31)).toBeCloseTo(1, 6);
    expect((await run('inspect', box, '--height', '2 in', '--alloy', '7.28 g/cm3')).out).toMatch(
      /height z +50\.80 mm/,
    );
    expect((await run('inspect', box, '--unit', 'mm', '--scale', '50%')).out).toMatch(/volume +3\.00 mm3/);
  });

  it.each([
    [['--length', '30', '--scale', '2'], /use one of them/],
    [['--alloy', 'wood'], /no density of wood/],
    [['--height', 'tall'], /`tall`/],
    [['--length', '0'], /more than 0/],
  ])('says what is wrong with %j', async (options, says) => {
    const { code, err } = await run('inspect', join(nodeStl, 'box_2x3x4.stl'), ...options);
    expect(code).toBe(2);
    expect(err).toMatch(says);
  });

  it('says in both systems what it measured', async () => {
    const { out } = await run('inspect', join(nodeStl, 'box_2x3x4.stl'), '--unit', 'in');
    expect(out).toMatch(/volume +24\.0000 in3 \(393\.290 cm3\)/);
    expect(out).toMatch(/2\.000 in \(50\.80 mm\)/);
    expect(out).toMatch(/widest contour/);
  });

  it('mends the bunny of 69 451 triangles and five holes, and says so', async () => {
    const { code, findings, measures } = await inspect(
      join(stlModels, 'objects', 'bunny.bin.stl'),
      '--unit',
      'm',
    );
    expect(code).toBe(0);
    expect(findings.map((one) => one.code)).toContain('repair.holes-closed');
    // About 156 mm long, as its makers say: Stanford's scan is in meters.
    expect(measures.bounds.max[0] - measures.bounds.min[0]).toBeCloseTo(155.7, 0);
  });

  test.each([
    'empty.stl',
    'incorrectFaceCounter.bin.stl',
    'fourVertices.ascii.stl',
    'twoVertices.ascii.stl',
    'singleFace.ascii.stl',
    'quad.ascii.stl',
    'missingFace.ascii.stl',
  ])('says what is wrong with %s', async (name) => {
    const { code, out, err } = await run('inspect', join(stlModels, 'broken', name));
    expect(err).toBe('');
    expect(out).toMatch(/(stop|warn) {2}(mesh|repair)\./);
    expect(out).not.toMatch(stackTrace);
    expect(code === 2).toBe(out.includes('stop  '));
  });

  it('reads a file that is longer than its count says, and says so', async () => {
    // 97 368 bytes, where 84 + 50 n with its n of 1656 gives 82 884.
    const { code, out } = await run('inspect', join(nodeStl, 'box.stl'));
    expect(out).toMatch(/warn {2}mesh\.extra-bytes {2}box\.stl/);
    expect(code).toBe(out.includes('stop  ') ? 2 : 0);
  });
});

test('--lie ranks the ways a master can lie, and shows them as lines for the plan', async () => {
  const path = join(nodeStl, 'box_2x3x4.stl');
  const { code, out } = await run('inspect', '--lie', '--unit', 'mm', path);
  expect(code).toBe(0);
  expect(out).toMatch(/lie: \{ turnX: -?\d+, turnY: -?\d+ \} {2,}sink: \d/);
  expect(out).toContain('in the file');
  const rows = out.split('\n').filter((line) => line.includes('sink:'));
  for (const row of rows) expect(row.length).toBeLessThanOrEqual(100);
  const { lies } = JSON.parse((await run('inspect', '--lie', '--json', '--unit', 'mm', path)).out)[0];
  expect(lies.length).toBeGreaterThanOrEqual(2);
  expect(lies.filter(({ asInFile }: { asInFile: boolean }) => asInFile)).toHaveLength(1);
});
