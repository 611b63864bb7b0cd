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
