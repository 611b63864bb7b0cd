import { zipSync } from 'fflate';
import { describe, expect, it, test } from 'vitest';
import { MeshFault, MeshFile } from '../../../src/mesh/read/mesh-file.ts';
import { ZipParts } from '../../../src/mesh/read/zip-parts.ts';
import { coreNamespace, package3mf, read, relations } from '../mesh-files.ts';
import { simple } from './models-3mf.ts';

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

  test.each<[string, Uint8Array, string, object]>([
    [
      'no relationships',
      zip({ '3D/3dmodel.model': simple }),
      'mesh.part-missing',
      { which: 'relations', part: '_rels/.rels' },
    ],
    [
      'no model part',
      zip({ '_rels/.rels': relations() }),
      'mesh.part-missing',
      { which: 'part', part: '/3D/3dmodel.model' },
    ],
    [
      'no start',
      package3mf(simple, { '_rels/.rels': relations('/3D/3dmodel.model', 'urn:other') }),
      'mesh.part-missing',
      { which: 'start' },
    ],
    [
      'two starts',
      package3mf(simple, { '_rels/.rels': relations().replace(/<Relationship .*?>/, '$&$&') }),
      'mesh.unreadable',
      { which: 'starts', count: 2 },
    ],
    [
      'relationships that are no XML',
      package3mf(simple, { '_rels/.rels': 'nothing' }),
      'mesh.unreadable',
      { which: 'xml', part: '_rels/.rels' },
    ],
    ['an empty archive', zip({}), 'mesh.part-missing', { which: 'relations' }],
    [
      'an encrypted part',
      changed(central, (at, bytes) => bytes.setUint16(at + 8, 1, true)),
      'mesh.encrypted',
      { which: 'part' },
    ],
    [
      'an unknown packing',
      changed(central, (at, bytes) => bytes.setUint16(at + 10, 99, true)),
      'mesh.unreadable',
      { which: 'zip-method', count: 99 },
    ],
    [
      'a wrong checksum',
      changed(central, (at, bytes) => bytes.setUint32(at + 16, 1, true)),
      'mesh.unreadable',
      { which: 'zip-checksum' },
    ],
    [
      'a broken directory',
      changed(central, (at, bytes) => bytes.setUint32(at, 7, true)),
      'mesh.unreadable',
      { which: 'zip-directory' },
    ],
    [
      'parts not where they should be',
      changed(local, (at, bytes) => at > 0 && bytes.setUint32(at, 7, true)),
      'mesh.unreadable',
      { which: 'zip-place' },
    ],
    [
      'a part past the end',
      changed(central, (at, bytes) => bytes.setUint32(at + 20, 0x7fffffff, true)),
      'mesh.unreadable',
      { which: 'zip-past-end' },
    ],
    [
      'a directory of 65 535 parts',
      changed(end, (at, bytes) => bytes.setUint16(at + 10, 65_535, true)),
      'mesh.unreadable',
      { which: 'zip-entries', count: 65_535 },
    ],
    [
      'a directory too long',
      changed(end, (at, bytes) => bytes.setUint16(at + 10, 9, true)),
      'mesh.unreadable',
      { which: 'zip-directory' },
    ],
    [
      'packed bytes that are rubbish',
      changed(local, (at, bytes) => {
        for (let i = 40; i < 90; i++) bytes.setUint8(at + i + 20, 0xff);
      }),
      'mesh.unreadable',
      { which: expect.stringMatching(/zip-rubbish|zip-checksum/) },
    ],
    ['a file cut off', good.subarray(0, good.length - 30), 'mesh.truncated', { which: 'zip' }],
    [
      'a locked package',
      Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...good]),
      'mesh.encrypted',
      { which: 'package', promised: '3MF' },
    ],
    [
      'XML that is not packed',
      new TextEncoder().encode(simple),
      'mesh.unknown-kind',
      { which: 'foreign', holds: 'xml' },
    ],
    ['something else', new TextEncoder().encode('a leaf'), 'mesh.unreadable', { which: 'not-zip' }],
  ])('%s', (_, bytes, code, values) => {
    const outcome = read(bytes, 'leaf.3mf');
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings.at(-1)).toMatchObject({ code, severity: 'stop', values });
  });

  it('breaks off where nothing but text comes for a long time', () => {
    const comment = new TextEncoder().encode(
      simple.replace('<resources>', `<!--${'leaf '.repeat(4_000_000)}--><resources>`),
    );
    const parts = { '_rels/.rels': new TextEncoder().encode(relations()), '3D/3dmodel.model': comment };
    const outcome = read(zipSync(parts, { level: 0 }), 'leaf.3mf');
    expect(outcome.findings).toMatchObject([
      { code: 'mesh.unreadable', severity: 'stop', values: { which: 'xml-between' } },
    ]);
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
      { code: 'mesh.unpacks-too-large', severity: 'stop', values: { limit: expect.any(Number) } },
    ]);
    expect(outcome.findings[0].values.measured).toBeLessThan(50_000_000);
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
