import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { readFonts } from '../../cli/fonts.ts';
import {
  type Build,
  exporters,
  exportSolid,
  reportJson,
  sha256Hex,
  smallSolidFacets,
  writeBuild,
} from '../../src/export/index.ts';
import { joinReport } from '../../src/findings/index.ts';
import { circle, translation } from '../../src/geometry/index.ts';
import { flatPartingSurface, type Mold } from '../../src/mold/index.ts';
import { openRim, thinCover } from '../example-findings.ts';
import { masterOf } from '../parts/example-masters.ts';
import { saysOf } from '../said.ts';
import { box, openBox, solidOf, torus } from './shapes.ts';

const supplies = { fonts: readFonts };

const mold: Mold = {
  title: 'Hedgerow charms',
  units: 'metric',
  revision: 'A',
  paper: 'A4',
  process: 'rubber',
  disc: { radius: 125, lower: 12, upper: 12, rimChamfer: 1, label: '' },
  masters: [],
  placements: [],
  bosses: [],
  supports: [],
  tabs: [],
  notches: [],
  ventPins: [],
  channels: [],
  parting: flatPartingSurface(125),
  fixture: { material: 'PETG', clearance: 0.2, chordError: 0.01, relieve: false },
  bench: {},
  places: {},
  limits: {
    cover: 3,
    wall: 3,
    web: 1,
    cavityToWell: 3,
    cavityToBoss: 3,
    cavityToRim: 3,
    bossToRim: 3,
    falseSeat: 3,
    mismatch: 0.4,
    undercutShare: 0.1,
    slenderness: 4,
  },
};

async function build(): Promise<Build> {
  const report = joinReport('Hedgerow charms', 'metric', [
    {
      findings: [thinCover('leaf', { needed: 0.1 + 0.2 })],
      figures: [
        { name: 'cover.least', subject: 'leaf', value: Infinity, unit: 'mm', source: 'x', estimated: true },
      ],
      fields: [{ name: 'wall', subject: 'leaf', unit: 'mm', values: Float32Array.from([3, 1, 2]) }],
    },
  ]);
  return {
    mold,
    planHash: await sha256Hex(new TextEncoder().encode('process: rubber')),
    version: '0.1.0',
    solids: [
      await exportSolid(solidOf('lower-half', box([10, 20, 30]), { toMold: translation(0, 0, -30) })),
      await exportSolid(solidOf('ring', torus(20, 5, 64, 32), { estimated: true, role: 'plug' })),
    ],
    drawings: [],
    withheld: [{ id: 'tab', title: 'Tab', subjects: ['tab-1'], reasons: [openRim('tab-1')] }],
    report,
  };
}

const json = (bytes: Uint8Array) => JSON.parse(new TextDecoder().decode(bytes));

describe('a build as files', () => {
  test('every format, then the manifest; equal bytes each time', async () => {
    const first = await writeBuild(await build(), supplies);
    const second = await writeBuild(await build(), supplies);
    expect(first.map(({ path }) => path)).toEqual([
      'look/lower-half.stl',
      'print/ring.stl',
      'print/all-solids.3mf',
      'shop-sheet.pdf',
      'report.json',
      'manifest.json',
    ]);
    expect(second).toEqual(first);
  });

  test('only the formats asked for', async () => {
    const files = await writeBuild(await build(), supplies, ['report']);
    expect(files.map(({ path }) => path)).toEqual(['report.json', 'manifest.json']);
    await expect(writeBuild(await build(), supplies, ['papyrus'])).rejects.toThrow(RangeError);
    expect(new Set(exporters.map(({ id }) => id)).size).toBe(exporters.length);
  });

  test('two files of one name are a programmer error', async () => {
    const whole = await build();
    const twice = { ...whole, solids: [...whole.solids, whole.solids[0]] };
    await expect(writeBuild(twice, supplies)).rejects.toThrow(/lower-half\.stl/);
  });

  test('the manifest tells each file: hash by Node, facets, volume, box, matrix', async () => {
    const files = await writeBuild(await build(), supplies);
    const manifest = json(files[5].bytes);
    expect(manifest.plan).toEqual({
      title: 'Hedgerow charms',
      revision: 'A',
      process: 'rubber',
      sha256: createHash('sha256').update('process: rubber').digest('hex'),
    });
    for (const [i, listed] of manifest.files.entries()) {
      expect(listed.sha256).toBe(createHash('sha256').update(files[i].bytes).digest('hex'));
      expect(listed.bytes).toBe(files[i].bytes.length);
    }
    expect(manifest.files[0].solid).toEqual({
      id: 'lower-half',
      title: 'lower-half',
      role: 'half',
      material: 'rubber',
      use: 'One half of the mold: to print or mill as a test half, to look at, or to cut rubber by.',
      estimated: false,
      subjects: [],
      triangles: 12,
      shells: 1,
      eulerCharacteristic: 2,
      volumeMm3: 6000,
      boundsMm: { min: [0, 0, 0], max: [10, 20, 30] },
      toMold: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, -30, 1],
    });
    expect(manifest.files[1].solid).toMatchObject({
      estimated: true,
      material: 'PETG',
      eulerCharacteristic: 0,
    });
    expect(manifest.files[2].solid).toBeUndefined();
    expect(manifest.withheld).toEqual([
      {
        id: 'tab',
        title: 'Tab',
        subjects: ['tab-1'],
        reasons: ['tab-1 reaches 2.00 mm (0.079 in) beyond the rim.'],
      },
    ]);
  });
});

test('build-ups and masters are of what the plan says of them, drawings of what they are cut from', async () => {
  const whole = await build();
  const supports = [
    { placement: 'leaf', clearance: 0.2, material: 'rubber' },
    { placement: 'frond', clearance: 0.2 },
  ];
  const masters = [{ ...masterOf('oak', box([1, 1, 1])), material: 'pewter' }];
  const made = [
    ['build-up-01', 'build-up', 'leaf'],
    ['build-up-02', 'build-up', 'frond'],
    ['scaled-oak', 'scaled master', 'oak'],
    ['jig', 'jig', 'leaf'],
  ] as const;
  const solids = await Promise.all(
    made.map(([id, role, subject]) =>
      exportSolid({ ...solidOf(id, box([1, 1, 1]), { role }), subjects: [subject] }),
    ),
  );
  const square = { layer: 'cut' as const, outline: [circle([0, 0], 5)], texts: [] };
  const drawing = { id: 'sheet', title: 'sheet', subjects: [], marks: [square], estimated: false };
  const drawings = [{ ...drawing, id: 'foot', material: 'rubber' }, drawing];
  const changed = { ...whole, mold: { ...mold, supports, masters }, solids, drawings };
  const files = await writeBuild(changed, supplies, ['stl', 'svg']);
  const manifest = json(files[files.length - 1].bytes);
  const materials = manifest.files.map((file: { solid?: Material; drawing?: Material }) => [
    (file.solid ?? file.drawing)?.id,
    (file.solid ?? file.drawing)?.material,
  ]);
  expect(Object.fromEntries(materials)).toMatchObject({
    'build-up-01': 'rubber',
    'build-up-02': 'PETG',
    'scaled-oak': 'pewter',
    jig: 'PETG',
    foot: 'rubber',
    sheet: 'PETG',
  });
});

interface Material {
  readonly id: string;
  readonly material: string;
}

test('SHA-256 of "abc" as in FIPS 180-4', async () => {
  expect(await sha256Hex(new TextEncoder().encode('abc'))).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  );
});

test('report.json keeps every digit, says Infinity, and summarizes fields', async () => {
  const report = json(reportJson((await build()).report));
  expect(report.findings[0].values.needed).toEqual({ value: 0.1 + 0.2, unit: 'mm' });
  expect(report.figures[0].value).toBe('Infinity');
  expect(report.fields).toEqual([
    { name: 'wall', subject: 'leaf', unit: 'mm', count: 3, least: 1, greatest: 3, mean: 2 },
  ]);
});

describe('a solid before it goes out', () => {
  test.each([
    ['small', torus(20, 5, 20, 20)],
    ['big', torus(20, 5, 64, 32)],
  ])('a %s closed one has no finding', async (_, mesh) => {
    const checked = await exportSolid(solidOf('ring', mesh));
    expect(checked).toMatchObject({ name: 'ring.stl', findings: [], audit: { euler: 0 } });
    expect(String.fromCharCode(...checked.bytes.subarray(0, 20))).toBe('discwright ring, mm ');
  });

  test('the two above take the two ways of writing', () => {
    expect(2 * 20 * 20).toBeLessThanOrEqual(smallSolidFacets);
    expect(2 * 64 * 32).toBeGreaterThan(smallSolidFacets);
  });

  test.each(['', '../plug', 'a/b', 'a\\b', 'a:b', '.hidden', 'a\nb'])(
    'id %j cannot be a file name',
    async (id) => {
      await expect(exportSolid(solidOf(id, box([1, 1, 1])))).rejects.toThrow(RangeError);
    },
  );

  test('an open one gets a stop with its place in the mold frame', async () => {
    const { findings } = await exportSolid(solidOf('half', openBox(), { toMold: translation(0, 0, -12) }));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code: 'solid.not-closed',
      severity: 'stop',
      subject: 'half',
      values: { openEdges: 3 },
    });
    expect(saysOf(findings[0])).toMatch(/it has \d+ faces, 3 open edges\.$/);
    expect(findings[0].place?.[2]).toBe(-12);
  });
});

test('the overview is drawn when asked for: a PNG of what was built, the same each time', async () => {
  const usual = await writeBuild(await build(), supplies);
  expect(usual.map(({ path }) => path)).not.toContain('look/overview.png');
  const [picture] = await writeBuild(await build(), supplies, ['overview']);
  expect(picture.path).toBe('look/overview.png');
  // PNG signature and header (ISO/IEC 15948): 480 x 360.
  const view = new DataView(picture.bytes.buffer, picture.bytes.byteOffset);
  expect([...picture.bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect([view.getUint32(16), view.getUint32(20)]).toEqual([480, 360]);
  const [again] = await writeBuild(await build(), supplies, ['overview']);
  expect(again.bytes).toEqual(picture.bytes);
});
