import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it, test } from 'vitest';
import { readMesh } from '../../../src/mesh/index.ts';
import { numberIn } from '../../../src/mesh/read/number-text.ts';
import { triangulate } from '../../../src/mesh/read/triangulate.ts';
import {
  asciiStl,
  binaryStl,
  codesOf,
  facesOf,
  meshXml,
  modelXml,
  package3mf,
  read,
  tetrahedron,
  tetrahedronObj,
  volumeOf,
} from '../mesh-files.ts';

const text = asciiStl(tetrahedron);
const packed = package3mf(modelXml(`<object id="1">${meshXml}</object>`, '<item objectid="1"/>'));

describe('the format is told by what a file holds, then by its name', () => {
  const contents: readonly [string, string | Uint8Array, string][] = [
    ['binary STL', binaryStl(tetrahedron), 'STL'],
    ['ASCII STL', text, 'STL'],
    ['OBJ', tetrahedronObj, 'OBJ'],
    ['3MF', packed, '3MF'],
  ];
  const cases = contents.flatMap(([kind, content, format]) =>
    ['leaf.stl', 'leaf.OBJ', 'leaf.3mf', 'leaf', 'leaf.dat', 'stl'].map(
      (name) => [kind, name, content, format] as const,
    ),
  );
  test.each(cases)('%s named %s', (_, name, content, format) => {
    const outcome = read(content, name);
    expect(facesOf(outcome)).toBe(4);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    const promised = /\.(stl|obj|3mf)$/i.exec(name)?.[1].toUpperCase();
    const differs = promised !== undefined && promised !== format;
    expect(codesOf(outcome)).toEqual(differs ? ['mesh.kind-differs'] : []);
    if (differs) expect(outcome.findings[0].severity).toBe('note');
  });

  test.each<[string, string | Uint8Array, string, object]>([
    ['PLY', 'ply\nformat ascii 1.0\n', 'mesh.unknown-kind', { holds: 'ply', promised: 'STL' }],
    ['STEP', 'ISO-10303-21;\nHEADER;', 'mesh.unknown-kind', { holds: 'step' }],
    ['OFF', 'OFF\n4 4 6\n', 'mesh.unknown-kind', { holds: 'off' }],
    ['glTF', '{"asset": {"version": "2.0"}}', 'mesh.unknown-kind', { holds: 'json' }],
    ['binary glTF', 'glTF\u0002\0\0\0', 'mesh.unknown-kind', { holds: 'glb' }],
    ['a web page', '<!DOCTYPE html><html><body>404</body></html>', 'mesh.unknown-kind', { holds: 'html' }],
    [
      'a picture',
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0]),
      'mesh.unknown-kind',
      { holds: 'picture' },
    ],
    ['a gzip archive', Uint8Array.from([0x1f, 0x8b, 8, 0, 0]), 'mesh.unknown-kind', { holds: 'gzip' }],
    [
      'a ZIP archive of other things',
      readFileSync(new URL('../../../package.json', import.meta.url)),
      'mesh.unknown-kind',
      { holds: 'json' },
    ],
  ])('names %s for what it is', (_, content, code, values) => {
    const outcome = read(content, 'leaf.stl');
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings).toMatchObject([
      { code, severity: 'stop', values: { which: 'foreign', ...values } },
    ]);
  });

  it('says that a file without a known name or content is none of the three', () => {
    expect(read('once upon a time', 'tale.txt').findings).toMatchObject([
      { code: 'mesh.unknown-kind', severity: 'stop', values: { which: 'unknown' } },
    ]);
  });

  it('refuses a file past the limit before looking at it', () => {
    // Virtual memory only: no page of it is touched.
    const huge = new Uint8Array(2 ** 30 + 1);
    expect(readMesh(huge, 'leaf.stl').findings).toMatchObject([
      { code: 'mesh.file-too-large', severity: 'stop', values: { limit: 2 ** 30 } },
    ]);
  });
});

/**
 * Files of the packages node-stl 0.7.3 and stl-models 0.12, made by others. Triangle counts: for binary files their
 * own header, for ASCII the number of lines that begin with "facet", and published in the packages' own tests where
 * those state them. Volumes: node-stl's tests (test/parse.js, in cm3 there).
 */
describe('meshes that others made', () => {
  const packages = createRequire(import.meta.url);
  const folder = (name: string): string =>
    packages.resolve(`${name}/package.json`).replace(/package\.json$/, '');
  const file = (path: string): Uint8Array =>
    readFileSync(folder(path.slice(0, path.indexOf('/'))) + path.slice(path.indexOf('/')));

  test.each([
    ['node-stl/test/test_data/002.STL', 40, [], 48625.1],
    ['node-stl/test/test_data/box_2x3x4.stl', 12, [], 24],
    ['node-stl/test/test_data/WALLY_1plate.stl', 382, [], 22863.823],
    ['node-stl/test/test_data/Pterosaur_FDM.stl', 201_286, [], undefined],
    ['node-stl/test/test_data/RasPiCaseLight.stl', 248, [], 1091.9298],
    ['node-stl/test/test_data/box_3x3x3_offset.stl', 12, [], 27],
    ['node-stl/test/test_data/box.stl', 1656, ['mesh.extra-bytes'], undefined],
    ['stl-models/objects/bunny.bin.stl', 69_451, [], undefined],
    ['stl-models/objects/bunny.ascii.stl', 69_451, [], undefined],
    ['stl-models/objects/gearwheel.bin.stl', 2444, [], 8922.637],
    ['stl-models/objects/gearwheel.ascii.stl', 2444, [], 8922.637],
    ['stl-models/polytopes/cube.ascii.stl', 12, [], undefined],
    ['stl-models/misc/multiWordName.bin.stl', 4, ['mesh.extra-bytes'], undefined],
    ['stl-models/broken/missingEndsolid.ascii.stl', 4, ['mesh.no-end'], undefined],
    ['stl-models/broken/missingNormal.ascii.stl', 4, [], 1 / 6],
    ['stl-models/broken/notANumberNormal.ascii.stl', 4, [], 1 / 6],
    ['stl-models/broken/wrongHeader.bin.stl', 12, [], undefined],
  ])('%s has %i triangles', (path, triangles, codes, volume) => {
    const outcome = readMesh(file(path), path);
    expect(facesOf(outcome)).toBe(triangles);
    expect(codesOf(outcome)).toEqual(codes);
    expect(outcome.mesh?.positions.length).toBe(triangles * 9);
    if (volume !== undefined) expect(volumeOf(outcome) / volume).toBeCloseTo(1, 5);
  });

  it('reads the same triangles from both forms of a file', () => {
    const [binary, ascii] = ['bin', 'ascii'].map(
      (form) => readMesh(file(`stl-models/objects/gearwheel.${form}.stl`), 'gearwheel.stl').mesh,
    );
    // The ASCII form has six or more digits of what the binary one has as float32.
    const farthest = binary?.positions.reduce(
      (most, value, i) => Math.max(most, Math.abs(value - (ascii?.positions[i] ?? Number.NaN))),
      0,
    );
    expect(farthest).toBeLessThan(1e-5);
  });

  test.each([
    ['empty.stl', 'mesh.file-empty'],
    ['fourVertices.ascii.stl', 'mesh.unreadable'],
    ['quad.ascii.stl', 'mesh.unreadable'],
    ['twoVertices.ascii.stl', 'mesh.unreadable'],
    ['incorrectFaceCounter.bin.stl', 'mesh.truncated'],
  ])('broken/%s is refused', (name, code) => {
    expect(readMesh(file(`stl-models/broken/${name}`), name)).toMatchObject({
      findings: [{ code, severity: 'stop' }],
    });
  });
});

describe('numbers as text', () => {
  const numberOf = (word: string): number | undefined => {
    const bytes = new TextEncoder().encode(` ${word} `);
    return numberIn(bytes, 1, bytes.length - 1);
  };

  it('are rounded as the language itself does, 50 000 of them (seed 7)', () => {
    let state = 7;
    const random = (): number => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    for (let i = 0; i < 50_000; i++) {
      const value = (random() - 0.5) * 10 ** Math.floor(random() * 60 - 30);
      const words = [
        String(value),
        value.toExponential(),
        value.toPrecision(1 + Math.floor(random() * 20)),
        value.toFixed(Math.floor(random() * 20)),
      ];
      const word = words[i % 4];
      if (numberOf(word) !== Number(word))
        expect(`${word} = ${numberOf(word)}`).toBe(`${word} = ${Number(word)}`);
    }
  });

  test.each([
    ['1.', 1],
    ['.5', 0.5],
    ['-.5e+1', -5],
    ['+0', 0],
    ['-0', -0],
    ['1D3', 1000],
    ['1e400', Number.POSITIVE_INFINITY],
    ['1e-400', 0],
    ['inf', Number.POSITIVE_INFINITY],
    ['-Infinity', Number.NEGATIVE_INFINITY],
    ['nan', Number.NaN],
    ['-1.#IND', Number.NaN],
    ['000000000000000000000001', 1],
    ['0.00000000000000000000001', 1e-23],
  ])('%s', (word, value) => {
    expect(numberOf(word)).toBe(value);
  });

  test.each([
    '',
    '.',
    '-',
    '+',
    'e5',
    '1e',
    '1e+',
    '1.2.3',
    '1-2',
    '0x10',
    '1,5',
    '١',
    'infinite',
    'nanny',
    '1_000',
    '5e1e1',
    `${'1'.repeat(500)}`,
  ])('"%s" is none', (word) => {
    expect(numberOf(word)).toBeUndefined();
  });
});

it('cuts the largest polygon allowed, one long spiral', () => {
  const half = 2000;
  const points = Array.from({ length: 2 * half }, (_, i): [number, number, number] => {
    const k = i < half ? i : 2 * half - 1 - i;
    const radius = k * 0.5 + (i < half ? 0 : 1.5);
    return [radius * Math.cos(k * 0.5), radius * Math.sin(k * 0.5), 0];
  });
  expect(triangulate(points).corners.length).toBe(3 * (2 * half - 2));
});
