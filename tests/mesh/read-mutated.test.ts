import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readMesh } from '../../src/mesh/index.ts';
import { sayFinding } from '../../src/wording/index.ts';
import {
  asciiStl,
  binaryStl,
  meshXml,
  modelXml,
  package3mf,
  tetrahedron,
  tetrahedronObj,
} from './mesh-files.ts';

/** 10 000 inputs in all. A fixed seed, shown in the titles: a failure can be repeated. */
const seed = 20_240_607;
/** Slowest reading of any input of a few hundred bytes, s; a hang, not a slow machine, is what this finds. */
const slowest = 2;

const encode = (content: string): Uint8Array => new TextEncoder().encode(content);
const model = modelXml(
  `<object id="1">${meshXml}</object><object id="2"><components><component objectid="1" transform="1 0 0 0 -1 0 0 0 1 5 0 0"/><component objectid="1"/></components></object>`,
  '<item objectid="2"/><item objectid="1" transform="2 0 0 0 2 0 0 0 2 0 0 0"/>',
);
const obj = `# leaf\no leaf\n${tetrahedronObj}vt 0 0\nvn 0 0 1\nf 1/1/1 2/1/1 3/1/1 4/1/1\nf -1 -2 -3 -4 \\\n -1\n`;

/** Pieces that readers take to heart, put in at random places. */
const spice = [
  'nan',
  '-1.#IND',
  '1e999',
  '1,5',
  '\0',
  '\r',
  '\\\n',
  '\n',
  '0',
  '-1',
  '4294967295',
  '99999999999999999999',
  'solid ',
  'facet',
  'endsolid',
  'v ',
  'f ',
  '/',
  '//',
  '<',
  '>',
  '&x;',
  '"',
  '<!DOCTYPE a>',
  '<object id="1">',
  'transform="0"',
  'PK\u0001\u0002',
  '\ufeff',
  'ÿþ',
  ' '.repeat(300),
].map(encode);

type Mutation =
  | { readonly kind: 'flip'; readonly at: number; readonly value: number }
  | { readonly kind: 'cut'; readonly at: number; readonly length: number }
  | { readonly kind: 'digit'; readonly at: number; readonly value: number }
  | { readonly kind: 'end'; readonly at: number }
  | { readonly kind: 'repeat'; readonly at: number; readonly length: number }
  | { readonly kind: 'spice'; readonly at: number; readonly value: number };

const at = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });
const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({ kind: fc.constant('flip' as const), at, value: fc.integer({ min: 0, max: 255 }) }),
  fc.record({ kind: fc.constant('cut' as const), at, length: fc.integer({ min: 1, max: 60 }) }),
  fc.record({ kind: fc.constant('digit' as const), at, value: fc.integer({ min: 0, max: 9 }) }),
  fc.record({ kind: fc.constant('end' as const), at }),
  fc.record({ kind: fc.constant('repeat' as const), at, length: fc.integer({ min: 1, max: 200 }) }),
  fc.record({ kind: fc.constant('spice' as const), at, value: fc.nat({ max: spice.length - 1 }) }),
);

function mutate(bytes: Uint8Array, mutations: readonly Mutation[]): Uint8Array {
  let out = [...bytes];
  for (const change of mutations) {
    const i = Math.floor(change.at * out.length);
    if (change.kind === 'flip' && out.length > 0) out[i] = change.value;
    else if (change.kind === 'cut') out.splice(i, change.length);
    else if (change.kind === 'digit') {
      const digit = out.findIndex((byte, k) => k >= i && byte >= 48 && byte <= 57);
      if (digit >= 0) out[digit] = 48 + change.value;
    } else if (change.kind === 'end') out = out.slice(0, i);
    else if (change.kind === 'repeat') out.splice(i, 0, ...out.slice(i, i + change.length));
    else if (change.kind === 'spice') out.splice(i, 0, ...spice[change.value]);
  }
  return Uint8Array.from(out);
}

/** Either a sound mesh or a stop; whatever else is a fault of the reader. */
function judge(bytes: Uint8Array, name: string): 'mesh' | 'stop' {
  const before = performance.now();
  const { mesh, findings } = readMesh(bytes, name);
  expect((performance.now() - before) / 1000).toBeLessThan(slowest);
  const stops = findings.filter(({ severity }) => severity === 'stop');
  for (const one of findings) {
    const { subject, at: spot } = one;
    expect(subject).toBe(name);
    const { says, remedy } = sayFinding(one, 'metric');
    expect(says.startsWith(`${name}: `) && says.length < 400 && remedy.length > 0).toBe(true);
    if (spot) expect(spot.file === name && spot.line >= 1 && spot.column >= 1).toBe(true);
  }
  if (!mesh) {
    expect(stops.length).toBe(1);
    return 'stop';
  }
  expect(stops).toEqual([]);
  const points = mesh.positions.length / 3;
  expect(mesh.triangles.length).toBeGreaterThan(0);
  expect(mesh.triangles.length % 3).toBe(0);
  expect(Number.isInteger(points) && mesh.positions.every(Number.isFinite)).toBe(true);
  expect(mesh.triangles.every((v) => v < points)).toBe(true);
  return 'mesh';
}

interface Kind {
  readonly kind: string;
  readonly name: string;
  readonly good: Uint8Array;
  readonly runs: number;
  /** Most changes in one input: a checksum or a strict grammar lets few of them through. */
  readonly most: number;
  readonly pack: (bytes: Uint8Array) => Uint8Array;
}

const asIs = (bytes: Uint8Array): Uint8Array => bytes;
const kinds: readonly Kind[] = [
  { kind: 'binary STL', name: 'leaf.stl', good: binaryStl(tetrahedron), runs: 2000, most: 4, pack: asIs },
  {
    kind: 'ASCII STL',
    name: 'leaf.stl',
    good: encode(asciiStl(tetrahedron)),
    runs: 2500,
    most: 4,
    pack: asIs,
  },
  { kind: 'OBJ', name: 'leaf.obj', good: encode(obj), runs: 2500, most: 4, pack: asIs },
  { kind: '3MF package', name: 'leaf.3mf', good: package3mf(model), runs: 1200, most: 1, pack: asIs },
  {
    kind: '3MF model part',
    name: 'leaf.3mf',
    good: encode(model),
    runs: 1500,
    most: 2,
    pack: (bytes) => zipSync({ ...unzipSync(package3mf(model)), '3D/3dmodel.model': bytes }),
  },
];

describe('inputs spoiled at random are read or refused, never worse', () => {
  test.each(kinds)(`$kind: $runs inputs, seed ${seed}`, ({ name, good, runs, most, pack }) => {
    const seen = { mesh: 0, stop: 0 };
    expect(judge(pack(good), name)).toBe('mesh');
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: most }), (mutations) => {
        seen[judge(pack(mutate(good, mutations)), name)]++;
      }),
      { numRuns: runs, seed },
    );
    // Both ways must have been gone, or the mutations are too weak or too strong to show anything.
    expect(seen.mesh).toBeGreaterThan(runs / 100);
    expect(seen.stop).toBeGreaterThan(runs / 100);
  });

  test(`bytes without any sense: 300 inputs, seed ${seed}`, () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 400 }),
        fc.constantFrom('a.stl', 'a.obj', 'a.3mf', 'a'),
        (bytes, name) => {
          judge(bytes, name);
        },
      ),
      { numRuns: 300, seed },
    );
  });
});
