import { describe, expect, it, test } from 'vitest';
import { sayFinding } from '../../../src/wording/index.ts';
import {
  asciiStl,
  binaryStl,
  codesOf,
  type Face,
  facesOf,
  read,
  tetrahedron,
  volumeOf,
} from '../mesh-files.ts';

const text = asciiStl(tetrahedron);
const longer = (bytes: Uint8Array, by: number): Uint8Array => {
  const out = new Uint8Array(bytes.length + by);
  out.set(bytes);
  return out;
};
const utf16 = (content: string, order: 'le' | 'be', mark: boolean): Uint8Array => {
  const codes = [...(mark ? '\ufeff' : ''), ...content].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from(
    codes.flatMap((code) => (order === 'le' ? [code & 255, code >> 8] : [code >> 8, code & 255])),
  );
};
/** The tetrahedron, `n` times, with one number of the first face replaced. */
const spoiled = (value: number, times: number, every = times): Face[] =>
  Array.from({ length: times }, (_, i) =>
    tetrahedron.map((face): Face => {
      const [[, b, c], ...rest] = face;
      return i % every === 0 && face === tetrahedron[0] ? [[value, b, c], ...rest] : face;
    }),
  ).flat();

describe('STL that is read, without a remark', () => {
  test.each<[string, string | Uint8Array]>([
    ['binary', binaryStl(tetrahedron)],
    ['binary that begins with "solid"', binaryStl(tetrahedron, { header: 'solid leaf' })],
    [
      'binary that begins with "solid" and goes on as ASCII does',
      binaryStl(tetrahedron, { header: 'solid a\nfacet normal 0 0 0\nouter loop' }),
    ],
    ['ASCII', text],
    ['ASCII with CRLF', asciiStl(tetrahedron, 'leaf', '\r\n')],
    ['ASCII with CR', asciiStl(tetrahedron, 'leaf', '\r')],
    ['ASCII in upper case', text.toUpperCase()],
    ['ASCII with a byte order mark', `\ufeff${text}`],
    ['ASCII in one line', text.replaceAll(/\s+/g, ' ')],
    ['ASCII with tabs and empty lines', text.replaceAll(' ', '\t').replaceAll('\n', '\n\n')],
    ['ASCII with leading blanks', `\n  ${text}`],
    ['ASCII without a name', asciiStl(tetrahedron, '')],
    ['ASCII with a Unicode name', asciiStl(tetrahedron, 'Käfer 甲虫 🪲')],
    ['ASCII whose name has keywords', asciiStl(tetrahedron, 'solid facet vertex endsolid')],
    ['ASCII whose end has another name', text.replace('endsolid leaf', 'endsolid fern')],
    ['ASCII with scientific notation', text.replaceAll(' 1', ' +1.000E+00').replaceAll(' 0', ' 0.0e-1')],
    ['ASCII with many digits', text.replaceAll(' 1', ' 1.00000000000000000000')],
    ['ASCII without normals', text.replaceAll('facet normal 0 0 0', 'facet')],
    ['ASCII with normals that are no numbers', text.replaceAll('normal 0 0 0', 'normal nan -nan(ind) nan')],
  ])('%s', (_, content) => {
    const outcome = read(content, 'leaf.stl');
    expect(outcome.findings).toEqual([]);
    expect(facesOf(outcome)).toBe(4);
    expect(volumeOf(outcome)).toBeCloseTo(1 / 6, 12);
    expect(outcome.mesh).not.toHaveProperty('unit');
  });

  it('keeps three points a face, in the order of the file', () => {
    const { mesh } = read(binaryStl(tetrahedron), 'leaf.stl');
    expect([...(mesh?.positions ?? [])]).toEqual(tetrahedron.flat(2));
    expect([...(mesh?.triangles ?? [])]).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
  });

  it('reads bytes that are a window into a larger buffer', () => {
    const bytes = binaryStl(tetrahedron);
    const buffer = new Uint8Array(bytes.length + 7);
    buffer.set(bytes, 7);
    expect(read(buffer.subarray(7), 'leaf.stl').mesh).toEqual(read(bytes, 'leaf.stl').mesh);
  });
});

describe('STL that is read, with a remark', () => {
  test.each<[string, string | Uint8Array, string, string, object, number]>([
    [
      'longer than its count',
      longer(binaryStl(tetrahedron), 17),
      'mesh.extra-bytes',
      'warn',
      { triangles: 4, limit: 284, measured: 301 },
      4,
    ],
    [
      'a count smaller than its faces',
      binaryStl(tetrahedron, { count: 3 }),
      'mesh.extra-bytes',
      'warn',
      { triangles: 3 },
      3,
    ],
    ['no endsolid', text.slice(0, text.indexOf('endsolid')), 'mesh.no-end', 'warn', { triangles: 4 }, 4],
    [
      'several solids',
      text + asciiStl(tetrahedron, 'fern'),
      'mesh.several-solids',
      'note',
      { which: 'solids', measured: 2 },
      8,
    ],
    [
      'one face that is not a number',
      binaryStl(spoiled(Number.NaN, 1)),
      'mesh.not-finite',
      'warn',
      { which: 'face', measured: 1, total: 4, face: 1, byte: 84 },
      3,
    ],
    [
      'Infinity in a hundredth of the faces',
      binaryStl(spoiled(Number.POSITIVE_INFINITY, 50, 25)),
      'mesh.not-finite',
      'warn',
      { which: 'face', measured: 2, total: 200 },
      198,
    ],
    [
      'nan in ASCII',
      text.replace('vertex 0 1 0', 'vertex 0 nan 0'),
      'mesh.not-finite',
      'warn',
      { which: 'line', measured: 1, total: 4, line: 2 },
      3,
    ],
    [
      'what Microsoft C writes for infinity',
      text.replace('vertex 0 1 0', 'vertex 0 -1.#INF 0'),
      'mesh.not-finite',
      'warn',
      { which: 'line', measured: 1, total: 4 },
      3,
    ],
  ])('%s', (_, content, code, severity, values, faces) => {
    const outcome = read(content, 'leaf.stl');
    expect(outcome.findings).toMatchObject([{ code, severity, subject: 'leaf.stl', values }]);
    expect(sayFinding(outcome.findings[0], 'metric').says.startsWith('leaf.stl: ')).toBe(true);
    // Broken faces are left out as long as they are few, which a limit beside them would deny.
    if (code === 'mesh.not-finite') expect(outcome.findings[0].values).not.toHaveProperty('limit');
    expect(facesOf(outcome)).toBe(faces);
    expect(outcome.mesh?.positions.every(Number.isFinite)).toBe(true);
  });
});

describe('STL that is refused', () => {
  const line = (wanted: string): number => text.slice(0, text.indexOf(wanted)).split('\n').length;
  test.each<[string, string | Uint8Array, string, object, object?]>([
    ['an empty file', '', 'mesh.file-empty', {}],
    [
      'a binary file cut in its header',
      binaryStl(tetrahedron).subarray(0, 83),
      'mesh.truncated',
      { which: 'header', size: 83 },
    ],
    [
      'a truncated binary file',
      binaryStl(tetrahedron).subarray(0, 283),
      'mesh.truncated',
      { which: 'faces', measured: 3, limit: 4, size: 283 },
    ],
    [
      'a binary "solid" file, truncated',
      binaryStl(tetrahedron, { header: 'solid x' }).subarray(0, 200),
      'mesh.truncated',
      { which: 'faces', measured: 2 },
    ],
    [
      'a count far too large',
      binaryStl(tetrahedron, { count: 4_000_000_000 }),
      'mesh.truncated',
      { which: 'faces', limit: 4_000_000_000 },
    ],
    ['a count of zero', binaryStl([]), 'mesh.no-faces', { which: 'header' }],
    [
      'a count of zero before faces',
      binaryStl(tetrahedron, { count: 0 }),
      'mesh.no-faces',
      { which: 'header', room: 4 },
    ],
    [
      'nothing but numbers that are none',
      binaryStl(spoiled(Number.NaN, 1).slice(0, 1)),
      'mesh.not-finite',
      { which: 'face', measured: 1, total: 1 },
    ],
    [
      'many faces that are not numbers',
      binaryStl(spoiled(Number.NaN, 50, 5)),
      'mesh.not-finite',
      { which: 'face', measured: 10, limit: 2, total: 200 },
    ],
    ['an ASCII file without facets', 'solid a\nendsolid a\n', 'mesh.no-faces', { which: 'facets' }],
    ['the word solid alone', 'solid', 'mesh.no-faces', { which: 'facets' }],
    [
      'decimal commas',
      text.replace('vertex 1 0 0', 'vertex 1,0 0,0 0,0'),
      'mesh.decimal-comma',
      { text: '1,0' },
      { line: line('vertex 1 0 0'), column: 14 },
    ],
    [
      'an ASCII file cut in a number',
      text.slice(0, text.indexOf('vertex 0 0 1') + 9),
      'mesh.truncated',
      { which: 'middle', triangle: 2, measured: 1 },
    ],
    [
      'an ASCII file cut in a word',
      text.slice(0, text.indexOf('endfacet')),
      'mesh.truncated',
      { which: 'middle', triangle: 1, measured: 0 },
    ],
    [
      'a facet with two corners',
      text.replace('vertex 1 0 0\n', '\n'),
      'mesh.unreadable',
      { which: 'facet-few', facet: 1, count: 2 },
      { line: 2, column: 3 },
    ],
    [
      'a facet with four corners',
      text.replace('endloop', 'vertex 1 1 1\nendloop'),
      'mesh.unreadable',
      { which: 'facet-many', facet: 1 },
      { line: 2 },
    ],
    [
      'a vertex with two numbers',
      text.replace('vertex 1 0 0', 'vertex 1 0'),
      'mesh.unreadable',
      { which: 'number', text: 'endloop', statement: 'vertex' },
      { line: 7 },
    ],
    [
      'letters for numbers',
      text.replace('vertex 1 0 0', 'vertex 1 O 0'),
      'mesh.unreadable',
      { which: 'number', text: 'O', statement: 'vertex' },
      { line: 6, column: 16 },
    ],
    [
      'hexadecimal numbers',
      text.replace('vertex 1 0 0', 'vertex 0x1 0 0'),
      'mesh.unreadable',
      { which: 'number', text: '0x1' },
    ],
    [
      'other words',
      text.replace('outer loop', 'inner loop'),
      'mesh.unreadable',
      { which: 'unexpected', text: 'inner', wanted: 'outer loop' },
    ],
    [
      'rubbish after the end',
      `${text}rubbish`,
      'mesh.unreadable',
      { which: 'unexpected', text: 'rubbish', wanted: 'facet', orWanted: 'endsolid' },
    ],
    ['text that is no STL', 'once upon a time there was a snail', 'mesh.unreadable', { which: 'not-solid' }],
    ['UTF-16 with a byte order mark, little end first', utf16(text, 'le', true), 'mesh.utf16', {}],
    ['UTF-16 with a byte order mark, big end first', utf16(text, 'be', true), 'mesh.utf16', {}],
    ['UTF-16 without a byte order mark', utf16(text, 'le', false), 'mesh.utf16', {}],
  ])('%s', (_, content, code, values, at) => {
    const outcome = read(content, 'leaf.stl');
    expect(outcome.mesh).toBeUndefined();
    expect(outcome.findings).toMatchObject([{ code, severity: 'stop', subject: 'leaf.stl', values }]);
    if (at) expect(outcome.findings[0].at).toMatchObject({ file: 'leaf.stl', ...at });
  });

  it('says no more of a word than fits in a line, without control characters', () => {
    const outcome = read(text.replace('outer loop', `\u0007${'x'.repeat(5000)}`), 'leaf.stl');
    const { says } = sayFinding(outcome.findings[0], 'metric');
    expect(says.length).toBeLessThan(150);
    expect(says).not.toContain('\u0007');
  });

  it('counts columns by letters and lines by CR, LF or both', () => {
    for (const newline of ['\n', '\r', '\r\n']) {
      const outcome = read(
        asciiStl(tetrahedron, 'ä', newline).replace('facet normal', 'ä facet normal'),
        'leaf.stl',
      );
      expect(outcome.findings[0].at).toEqual({ file: 'leaf.stl', line: 2, column: 3 });
    }
  });

  it('refuses a byte order mark before nothing', () => {
    expect(codesOf(read('\ufeff', 'leaf.stl'))).toEqual(['mesh.unreadable']);
  });
});
