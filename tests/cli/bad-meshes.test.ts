import { mkdirSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { type MeshCase, objCases, packageCases, shapeCases, stlCases } from './mesh-cases.ts';
import { filesIn, run, stackTrace, workbench } from './workbench.ts';

const bench = workbench();
const cases = [...stlCases, ...objCases, ...packageCases, ...shapeCases];

describe.each<[string, readonly MeshCase[]]>([
  ['STL', stlCases],
  ['OBJ', objCases],
  ['3MF', packageCases],
  ['shape', shapeCases],
])('inspect of %s', (_, table) => {
  test.each(table.map((one) => [one.title, one] as const))('%s', async (title, one) => {
    const folder = `${cases.indexOf(one)}`;
    mkdirSync(bench.path(folder));
    const file = bench.put(`${folder}/${one.name}`, one.content);
    const { code, out, err } = await run('inspect', file, '--json');
    const said = `${title}: ${out}${err}`;
    expect(said).not.toMatch(stackTrace);
    expect(err).toBe('');
    const [{ findings, mesh }] = JSON.parse(out);
    expect(mesh, 'the mesh itself is not printed').toBe(undefined);
    const codes = findings.map((finding: { code: string }) => finding.code);
    for (const wanted of one.codes) {
      const met = codes.some(
        (met: string) => met === wanted || (wanted.endsWith('.') && met.startsWith(wanted)),
      );
      expect(met, `${wanted} in ${said}`).toBe(true);
    }
    // A good file gives nothing but perhaps a guess of its unit.
    if (one.codes.length === 0)
      expect(codes.filter((met: string) => met !== 'repair.unit-guessed')).toEqual([]);
    expect(code, said).toBe(one.exit);
    const text = await run('inspect', file);
    expect(text.code).toBe(one.exit);
    if (one.says) expect(text.out).toMatch(one.says);
    for (const line of text.out.split('\n').slice(1)) expect(line.length, line).toBeLessThanOrEqual(100);
  });
});

describe('inspect of what is no mesh file', () => {
  it('says that there is no file', async () => {
    const { code, out, err } = await run('inspect', bench.path('gone.stl'));
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^discwright: there is no file .*gone.stl$/);
  });

  it('says that a folder is no file', async () => {
    mkdirSync(bench.path('leaf.stl'));
    const { code, err } = await run('inspect', bench.path('leaf.stl'));
    expect(code).toBe(2);
    expect(err).toMatch(/^discwright: .*leaf.stl is a folder, not a file$/);
  });

  it('says that a device is no file, and does not read it without end', async () => {
    const { code, err } = await run('inspect', '/dev/zero');
    expect(code).toBe(2);
    expect(err).toBe('discwright: /dev/zero is a device, not a file');
  });

  it('goes on with the other files', async () => {
    const good = bench.put('good.stl', stlCases[0].content);
    const { code, out, err } = await run('inspect', bench.path('gone.stl'), good);
    expect(code).toBe(2);
    expect(err).toContain('there is no file');
    expect(out).toMatch(/volume +560 mm3/);
    const json = await run('inspect', bench.path('gone.stl'), good, '--json');
    const [gone, measured] = JSON.parse(json.out);
    expect(gone.fault).toMatch(/there is no file/);
    expect(measured.measures.volume).toBeCloseTo(14 * 10 * 4, 6);
  });
});

/** A plan that places one master from a file. */
const planOf = (file: string): string =>
  `process: rubber
disc: { diameter: 100, thickness: 12 }
sprue: {}
parting: { surface: flat }
masters:
  leaf: { file: ${file} }
placements:
  - { master: leaf, at: { radius: 30, angle: 0 } }
`;

describe('build of a plan whose master', () => {
  const build = async (file: string, folder: string) => {
    const plan = bench.put(`${folder}.yaml`, planOf(file));
    const out = bench.path(`out-${folder.replace('/', '-')}`);
    return { ...(await run('build', plan, '--out', out)), written: [...filesIn(out).keys()] };
  };

  it.each([
    ['is missing', 'gone.stl', /layout\.no-file {2}leaf .*:6:3\n.*there is no file gone\.stl/],
    ['is a folder', 'leaf.stl', /layout\.no-file {2}leaf .*\n.*leaf\.stl is a folder, not a file/],
    ['is truncated', 'cut.stl', /mesh\.truncated {2}leaf .*cut.yaml:6:3\n.*cut\.stl/],
  ])('%s writes nothing, exits 2 and names file and place', async (_, file, says) => {
    bench.put('cut.stl', stlCases[3].content);
    const { code, out, err, written } = await build(file, file.slice(0, 3));
    expect({ code, out, written }).toEqual({ code: 2, out: '', written: [] });
    expect(err).toMatch(says);
    expect(err).not.toMatch(stackTrace);
  });

  it("lies outside the plan's folder is built, and that is said", async () => {
    mkdirSync(bench.path('inner'));
    bench.put('good.stl', stlCases[0].content);
    const { code, out, written } = await build('../good.stl', 'inner/plan');
    expect(code).toBe(0);
    expect(out).toMatch(/note {2}layout\.outside-folder {2}leaf .*:6:3\n.*\.\.\/good\.stl/);
    expect(written).toContain('mold/look/upper-half.stl');
  });

  it('was mended says so on the terminal and in the report', async () => {
    bench.put('hole.stl', shapeCases[3].content);
    const { code, out, written } = await build('hole.stl', 'hole');
    expect(code).toBe(0);
    expect(out).toMatch(/warn {2}repair\.holes-closed {2}leaf/);
    expect(written).toContain('mold/look/lower-half.stl');
  });
});
