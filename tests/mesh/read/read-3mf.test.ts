import { zipSync } from 'fflate';
import { describe, expect, it, test } from 'vitest';
import { MeshFault, MeshFile } from '../../../src/mesh/read/mesh-file.ts';
import { ZipParts } from '../../../src/mesh/read/zip-parts.ts';
import {
  codesOf,
  coreNamespace,
  facesOf,
  meshXml,
  modelXml,
  package3mf,
  read,
  relations,
  volumeOf,
} from '../mesh-files.ts';

const object = (id: number, inner = meshXml, more = ''): string =>
  `<object id="${id}" ${more}>${inner}</object>`;
const item = (id: number, transform?: string): string =>
  `<item objectid="${id}"${transform === undefined ? '' : ` transform="${transform}"`}/>`;
const component = (id: number, transform?: string): string =>
  `<component objectid="${id}"${transform === undefined ? '' : ` transform="${transform}"`}/>`;
const components = (...list: string[]): string => `<components>${list.join('')}</components>`;
const simple = modelXml(object(1), item(1));
const read3mf = (model: string | Uint8Array, parts = {}) => read(package3mf(model, parts), 'leaf.3mf');
const pointsOf = (outcome: ReturnType<typeof read>): number[] => [...(outcome.mesh?.positions ?? [])];

describe('3MF that is read', () => {
  it('reads one object in its own unit', () => {
    const outcome = read3mf(simple);
    expect(outcome.findings).toEqual([]);
    expect(outcome.mesh?.unit).toBe('mm');
    expect(facesOf(outcome)).toBe(4);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
  });

  // The six units of 3MF core 1.4, ST_Unit; millimeter where none is named.
  test.each([
    ['unit="micron"', 'micron'],
    ['unit="millimeter"', 'mm'],
    ['unit="centimeter"', 'cm'],
    ['unit="inch"', 'in'],
    ['unit="foot"', 'ft'],
    ['unit="meter"', 'm'],
    ['', 'mm'],
  ])('obeys %s', (head, unit) => {
    expect(read3mf(modelXml(object(1), item(1), head)).mesh?.unit).toBe(unit);
  });

  // 3MF core specification 1.4, 3.3: "m00 ... m32" are rows of a matrix that points, as rows, are multiplied by.
  it('multiplies points as rows from the left: turn, stretch and translation last', () => {
    // x -> y, y -> 2 z, z -> 3 x, then moved by 10, 20, 30.
    const outcome = read3mf(modelXml(object(1), item(1, '0 1 0 0 0 2 3 0 0 10 20 30')));
    expect(pointsOf(outcome)).toEqual([10, 20, 30, 10, 21, 30, 10, 20, 32, 13, 20, 30]);
    // The determinant is 6.
    expect(volumeOf(outcome)).toBeCloseTo(1, 12);
    expect(outcome.findings).toEqual([]);
  });

  it('applies a component before what it is part of, at every level', () => {
    const double = '2 0 0 0 2 0 0 0 2 0 0 0';
    const shift = '1 0 0 0 1 0 0 0 1 5 0 0';
    const outcome = read3mf(
      modelXml(
        object(1) +
          object(2, components(component(1, double))) +
          object(3, components(component(2, shift), component(1))),
        item(3, '0 1 0 -1 0 0 0 0 1 0 0 0'),
      ),
    );
    // Doubled, then moved by 5 along x, then turned by a quarter: the corner at x lands at y = 5 + 2.
    expect(pointsOf(outcome).slice(0, 12)).toEqual(
      [-0, 5, 0, -0, 7, 0, -2, 5, 0, -0, 5, 2].map((v) => v + 0),
    );
    expect(facesOf(outcome)).toBe(8);
    expect(volumeOf(outcome)).toBeCloseTo(8 / 6 + 1 / 6, 12);
    expect(outcome.findings).toEqual([]);
  });

  it('turns the faces of a mirrored mesh over, and says so', () => {
    const outcome = read3mf(modelXml(object(1), item(1, '-1 0 0 0 1 0 0 0 1 0 0 0')));
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.findings).toMatchObject([
      { code: 'mesh.mirrored', severity: 'note', measured: { value: 1 } },
    ]);
  });

  it('takes a mesh mirrored twice as it is', () => {
    const mirror = '-1 0 0 0 1 0 0 0 1 0 0 0';
    const outcome = read3mf(
      modelXml(object(1) + object(2, components(component(1, mirror))), item(2, mirror)),
    );
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.findings).toEqual([]);
  });

  it('reads several items into one, and says so', () => {
    const outcome = read3mf(modelXml(object(1), item(1) + item(1, '1 0 0 0 1 0 0 0 1 9 0 0')));
    expect(facesOf(outcome)).toBe(8);
    expect(codesOf(outcome)).toEqual(['mesh.several-solids']);
  });

  it('reads only what is to be built', () => {
    expect(facesOf(read3mf(modelXml(object(1) + object(2), item(2))))).toBe(4);
  });

  test.each(['support', 'solidsupport', 'surface', 'other'])(
    'leaves out an object of type %s, and says so',
    (type) => {
      const outcome = read3mf(
        modelXml(
          object(1) +
            object(2, meshXml, `type="${type}"`) +
            object(3, components(component(1), component(2)), 'type="support"'),
          item(3),
        ),
      );
      expect(facesOf(outcome)).toBe(4);
      expect(outcome.findings).toMatchObject([{ code: 'mesh.skipped', severity: 'note' }]);
      expect(outcome.findings[0].says).toContain(`1 of type "${type}"`);
    },
  );

  it('follows objects into other parts (production extension)', () => {
    const head =
      'unit="inch" xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06" requiredextensions="p"';
    const outcome = read3mf(
      modelXml(
        object(2, components('<component objectid="7" p:path="/3D/Objects/snail.model"/>')),
        item(2),
        head,
      ),
      { '3D/Objects/snail.model': modelXml(object(7), '') },
    );
    expect(outcome.findings).toEqual([]);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.mesh?.unit).toBe('in');
  });

  it('passes over elements of extensions, whatever they are called', () => {
    const foreign = '<x:vertices xmlns:x="urn:other"><vertex x="a" y="b" z="c"/></x:vertices>';
    const outcome = read3mf(
      modelXml(`${foreign}${object(1, meshXml.replace('<mesh>', `<mesh>${foreign}`))}`, item(1)),
    );
    expect(outcome.findings).toEqual([]);
    expect(facesOf(outcome)).toBe(4);
  });

  it('reads a model whose elements carry a prefix', () => {
    const model = simple.replaceAll(/<(\/?)(?=[a-z])/g, '<$1m:').replace('xmlns=', 'xmlns:m=');
    expect(facesOf(read3mf(model))).toBe(4);
  });

  it('reads UTF-16, as a package may hold it', () => {
    const text = `\ufeff${simple.replace('UTF-8', 'UTF-16')}`;
    expect(
      facesOf(
        read3mf(Uint8Array.from([...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]))),
      ),
    ).toBe(4);
  });

  it('finds parts whatever the case of their names, packed or stored', () => {
    const parts = { '_RELS/.rels': relations('/3d/3DModel.model'), '3D/3dmodel.model': simple };
    const bytes = zipSync(
      Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, new TextEncoder().encode(text)])),
      { level: 0 },
    );
    expect(facesOf(read(bytes, 'leaf.3mf'))).toBe(4);
  });

  it('leaves out points no triangle names', () => {
    const outcome = read3mf(simple.replace('</vertices>', '<vertex x="500" y="0" z="0"/></vertices>'));
    expect(outcome.mesh?.positions).toHaveLength(12);
    expect(codesOf(outcome)).toEqual(['mesh.skipped']);
  });
});

/** A chain of objects, each made of two of the one before: 2^n times the first. */
const doubling = (n: number, first = meshXml): string =>
  Array.from({ length: n }, (_, i) => object(i + 2, components(component(i + 1), component(i + 1)))).reduce(
    (all, one) => all + one,
    object(1, first),
  );
const chain = (n: number): string =>
  Array.from({ length: n }, (_, i) => object(i + 2, components(component(i + 1)))).reduce(
    (all, one) => all + one,
    object(1),
  );

describe('3MF that is refused', () => {
  const secure =
    'xmlns:sc="http://schemas.microsoft.com/3dmanufacturing/securecontent/2019/04" requiredextensions="sc"';
  const beams =
    'xmlns:b="http://schemas.microsoft.com/3dmanufacturing/beamlattice/2017/02" requiredextensions="b"';
  test.each<[string, string, string, RegExp, object?]>([
    [
      'a point number past the end',
      simple.replace('v3="3"', 'v3="4"'),
      'mesh.bad-index',
      /names point 4, but its object has 4/,
      { line: 3 },
    ],
    [
      'a negative point number',
      simple.replace('v3="3"', 'v3="-1"'),
      'mesh.unreadable',
      /"-1" is no point number/,
      { line: 3 },
    ],
    [
      'triangles before points',
      modelXml(object(1, meshXml.replace(/<mesh>(.*)(<triangles>.*)<\/mesh>/, '<mesh>$2$1</mesh>')), item(1)),
      'mesh.bad-index',
      /object has 0/,
    ],
    ['a unit that does not exist', modelXml(object(1), item(1), 'unit="ell"'), 'mesh.unit-unknown', /"ell"/],
    [
      'a unit named like a function',
      modelXml(object(1), item(1), 'unit="toString"'),
      'mesh.unit-unknown',
      /"toString"/,
    ],
    ['a missing object', modelXml(object(1), item(2)), 'mesh.part-missing', /object "2", which is not in/],
    [
      'an object made of itself',
      modelXml(object(1, components(component(1))), item(1)),
      'mesh.component-circle',
      /made of itself/,
    ],
    [
      'a circle of objects',
      modelXml(object(1, components(component(2))) + object(2, components(component(1))), item(1)),
      'mesh.component-circle',
      /made of itself/,
    ],
    [
      'a thousand million triangles out of nothing',
      modelXml(doubling(28), item(29)),
      'mesh.too-many-triangles',
      /more than 20000000 triangles/,
    ],
    [
      'endless empty objects',
      modelXml(doubling(60, components()), item(61)),
      'mesh.component-circle',
      /more than 1000000 times/,
    ],
    [
      'objects nested very deep',
      modelXml(chain(2000), item(2001)),
      'mesh.component-circle',
      /nested more than 100 deep/,
    ],
    [
      'objects nested very deep, counted from below',
      modelXml(chain(200), Array.from({ length: 200 }, (_, i) => item(i + 1)).join('')),
      'mesh.component-circle',
      /nested more than 100 deep/,
    ],
    [
      'two objects of one name',
      modelXml(object(1) + object(1), item(1)),
      'mesh.unreadable',
      /two objects have the id "1"/,
    ],
    [
      'an object without a name',
      modelXml(`<object>${meshXml}</object>`, item(1)),
      'mesh.unreadable',
      /lacks its attribute "id"/,
    ],
    [
      'a point without a height',
      simple.replace(' z="1"', ''),
      'mesh.unreadable',
      /lacks its attribute "z"/,
      { line: 3 },
    ],
    [
      'a coordinate that is no number',
      simple.replace('z="1"', 'z="one"'),
      'mesh.unreadable',
      /"one" stands where a finite number/,
    ],
    ['a coordinate that is infinite', simple.replace('z="1"', 'z="1e999"'), 'mesh.unreadable', /"1e999"/],
    ['a coordinate that is NaN', simple.replace('z="1"', 'z="NaN"'), 'mesh.unreadable', /"NaN"/],
    ['an empty coordinate', simple.replace('z="1"', 'z=""'), 'mesh.unreadable', /""/],
    ['a decimal comma', simple.replace('z="1"', 'z="1,5"'), 'mesh.decimal-comma', /"1,5"/],
    [
      'a short transform',
      modelXml(object(1), item(1, '1 0 0 0 1 0 0 0 1')),
      'mesh.unreadable',
      /fewer than 12/,
    ],
    [
      'a long transform',
      modelXml(object(1), item(1, '1 0 0 0 1 0 0 0 1 0 0 0 0 0 0 1')),
      'mesh.unreadable',
      /more than 12/,
    ],
    [
      'a flattening transform',
      modelXml(object(1), item(1, '1 0 0 0 1 0 0 0 0 0 0 0')),
      'mesh.unreadable',
      /flattens/,
    ],
    [
      'transforms beyond all numbers',
      modelXml(
        object(1) +
          object(2, components(component(1, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'))) +
          object(3, components(component(2, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'))) +
          object(4, components(component(3, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'))),
        item(4, '1e100 0 0 0 1e100 0 0 0 1e100 0 0 0'),
      ),
      'mesh.not-finite',
      /beyond all numbers/,
    ],
    ['nothing to build', modelXml(object(1), ''), 'mesh.no-faces', /nothing is listed/],
    [
      'nothing but supports',
      modelXml(object(1, meshXml, 'type="support"'), item(1)),
      'mesh.no-faces',
      /no triangles/,
    ],
    ['an object without a mesh', modelXml(object(1, ''), item(1)), 'mesh.no-faces', /no triangles/],
    ['encrypted content', modelXml(object(1), item(1), secure), 'mesh.encrypted', /encrypted/],
    ['an extension it needs', modelXml(object(1), item(1), beams), 'mesh.extension-needed', /beamlattice/],
    [
      'an extension it does not declare',
      modelXml(object(1), item(1), 'requiredextensions="q"'),
      'mesh.extension-needed',
      /extension q/,
    ],
    [
      'a document type',
      simple.replace('<model', '<!DOCTYPE model SYSTEM "file:///etc/hostname"><model'),
      'mesh.not-allowed',
      /document type/,
      { line: 2 },
    ],
    [
      'entities that grow',
      simple.replace('<model', '<!DOCTYPE m [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><model'),
      'mesh.not-allowed',
      /document type/,
    ],
    ['an entity', simple.replace('z="1"', 'z="&one;"'), 'mesh.not-allowed', /undefined entity/],
    ['XML cut off', simple.slice(0, -30), 'mesh.unreadable', /not well-formed XML: unclosed tag/],
    [
      'another root',
      simple.replaceAll('model', 'muddle').replaceAll('3dmuddle', '3dmodel'),
      'mesh.unreadable',
      /outermost element is "muddle"/,
    ],
    [
      'a root of another namespace',
      simple.replace(coreNamespace, 'urn:other'),
      'mesh.unreadable',
      /not "model" of 3MF/,
    ],
    ['an empty model part', '', 'mesh.unreadable', /not well-formed/],
    [
      'a part in another that is not there',
      modelXml(
        object(2, components('<component objectid="7" p:path="/3D/none.model"/>')),
        item(2),
        'xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06"',
      ),
      'mesh.part-missing',
      /lacks its part "\/3D\/none.model"/,
    ],
    [
      'elements nested very deep',
      modelXml('<metadata>'.repeat(3000), ''),
      'mesh.unreadable',
      /nested too deep/,
    ],
  ])('%s', (_, model, code, says, at) => {
    const outcome = read3mf(model);
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.at(-1)).toMatchObject({ code, severity: 'stop', subject: 'leaf.3mf' });
    expect(outcome.findings.at(-1)?.says).toMatch(says);
    if (at) expect(outcome.findings.at(-1)?.at).toMatchObject({ file: 'leaf.3mf', ...at });
  });
});

describe('packages that are refused', () => {
  const good = package3mf(simple);
  const view = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset);
  /** The package with something changed at every header of the kind with this signature. */
  const changed = (
    signature: number,
    change: (at: number, bytes: DataView) => void,
    of = good,
  ): Uint8Array => {
    const bytes = of.slice();
    for (let at = 0; at + 4 <= bytes.length; at++) {
      if (view(bytes).getUint32(at, true) === signature) change(at, view(bytes));
    }
    return bytes;
  };
  const [local, central, end] = [0x04034b50, 0x02014b50, 0x06054b50];
  const zip = (parts: Record<string, string>): Uint8Array =>
    zipSync(
      Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, new TextEncoder().encode(text)])),
    );

  test.each<[string, Uint8Array, string, RegExp]>([
    [
      'no relationships',
      zip({ '3D/3dmodel.model': simple }),
      'mesh.part-missing',
      /without the part _rels\/\.rels/,
    ],
    [
      'no model part',
      zip({ '_rels/.rels': relations() }),
      'mesh.part-missing',
      /lacks its part "\/3D\/3dmodel.model"/,
    ],
    [
      'no start',
      package3mf(simple, { '_rels/.rels': relations('/3D/3dmodel.model', 'urn:other') }),
      'mesh.part-missing',
      /no 3D model/,
    ],
    [
      'two starts',
      package3mf(simple, { '_rels/.rels': relations().replace(/<Relationship .*?>/, '$&$&') }),
      'mesh.unreadable',
      /2 3D models/,
    ],
    [
      'relationships that are no XML',
      package3mf(simple, { '_rels/.rels': 'nothing' }),
      'mesh.unreadable',
      /not well-formed/,
    ],
    ['an empty archive', zip({}), 'mesh.part-missing', /_rels/],
    [
      'an encrypted part',
      changed(central, (at, bytes) => bytes.setUint16(at + 8, 1, true)),
      'mesh.encrypted',
      /is encrypted/,
    ],
    [
      'an unknown packing',
      changed(central, (at, bytes) => bytes.setUint16(at + 10, 99, true)),
      'mesh.unreadable',
      /method 99/,
    ],
    [
      'a wrong checksum',
      changed(central, (at, bytes) => bytes.setUint32(at + 16, 1, true)),
      'mesh.unreadable',
      /checksum/,
    ],
    [
      'a broken directory',
      changed(central, (at, bytes) => bytes.setUint32(at, 7, true)),
      'mesh.unreadable',
      /directory is broken/,
    ],
    [
      'parts not where they should be',
      changed(local, (at, bytes) => at > 0 && bytes.setUint32(at, 7, true)),
      'mesh.unreadable',
      /not where the directory says/,
    ],
    [
      'a part past the end',
      changed(central, (at, bytes) => bytes.setUint32(at + 20, 0x7fffffff, true)),
      'mesh.unreadable',
      /past the end/,
    ],
    [
      'a directory of 65 535 parts',
      changed(end, (at, bytes) => bytes.setUint16(at + 10, 65_535, true)),
      'mesh.unreadable',
      /lists 65535 parts/,
    ],
    [
      'a directory too long',
      changed(end, (at, bytes) => bytes.setUint16(at + 10, 9, true)),
      'mesh.unreadable',
      /directory is broken/,
    ],
    [
      'packed bytes that are rubbish',
      changed(local, (at, bytes) => {
        for (let i = 40; i < 90; i++) bytes.setUint8(at + i + 20, 0xff);
      }),
      'mesh.unreadable',
      /cannot be unpacked|checksum/,
    ],
    ['a file cut off', good.subarray(0, good.length - 30), 'mesh.truncated', /without its directory/],
    [
      'a locked package',
      Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...good]),
      'mesh.encrypted',
      /locked/,
    ],
    ['XML that is not packed', new TextEncoder().encode(simple), 'mesh.unknown-kind', /not packed/],
    ['something else', new TextEncoder().encode('a leaf'), 'mesh.unreadable', /not a ZIP archive/],
  ])('%s', (_, bytes, code, says) => {
    const outcome = read(bytes, 'leaf.3mf');
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.at(-1)).toMatchObject({ code, severity: 'stop' });
    expect(outcome.findings.at(-1)?.says).toMatch(says);
  });

  it('breaks off where nothing but text comes for a long time', () => {
    const comment = new TextEncoder().encode(
      simple.replace('<resources>', `<!--${'leaf '.repeat(4_000_000)}--><resources>`),
    );
    const parts = { '_rels/.rels': new TextEncoder().encode(relations()), '3D/3dmodel.model': comment };
    const outcome = read(zipSync(parts, { level: 0 }), 'leaf.3mf');
    expect(outcome.findings).toMatchObject([{ code: 'mesh.unreadable', severity: 'stop' }]);
    expect(outcome.findings[0].says).toContain('too much between two tags');
  });

  it('breaks off unpacking what grows as no mesh does', () => {
    // A tag in every megabyte of blanks; the directory says that it unpacks to 100 bytes.
    const block = new TextEncoder().encode(`${' '.repeat(999_990)}<x/>`);
    const model = new Uint8Array(block.length * 40);
    for (let i = 0; i < 40; i++) model.set(block, i * block.length);
    model.set(new TextEncoder().encode(`<model xmlns="${coreNamespace}">`));
    const bomb = changed(central, (at, bytes) => bytes.setUint32(at + 24, 100, true), package3mf(model));
    expect(bomb.length).toBeLessThan(200_000);
    const outcome = read(bomb, 'leaf.3mf');
    expect(outcome.findings).toMatchObject([
      { code: 'mesh.unpacks-too-large', severity: 'stop', limit: { unit: 'bytes' } },
    ]);
    expect(outcome.findings[0].measured?.value).toBeLessThan(50_000_000);
  });

  it('counts what all parts unpack to against one limit', () => {
    const file = new MeshFile('leaf.3mf', good);
    const zip = new ZipParts(file, simple.length + 10);
    let bytes = 0;
    const take = (piece: Uint8Array): void => {
      bytes += piece.length;
    };
    zip.unpack('3D/3dmodel.model', take);
    expect(bytes).toBe(simple.length);
    expect(() => zip.unpack('_rels/.rels', take)).toThrow(MeshFault);
    expect(bytes).toBe(simple.length);
  });
});
