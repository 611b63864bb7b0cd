import { zipSync } from 'fflate';
import { asciiStl, binaryStl, type Face, meshXml, modelXml, package3mf } from '../mesh/mesh-files.ts';
import { ball, box, insideOut, mapped, type Shape, together, without } from '../mesh/rough-shapes.ts';

/** A mesh file handed to the program, and what must be said about it. */
export interface MeshCase {
  readonly title: string;
  readonly name: string;
  readonly content: string | Uint8Array;
  /** 0: a usable master came of it; 2: none did. */
  readonly exit: 0 | 2;
  /** Codes that must be among the findings; none: nothing is wrong with it. */
  readonly codes: readonly string[];
  /** Something the message must name: a place, a count, a size. */
  readonly says?: RegExp;
}

const faces = ({ points, faces }: Shape): Face[] =>
  faces.map(([a, b, c]): Face => [points[a], points[b], points[c]]);

/** A button of 14 x 10 x 4 mm. */
const button = box([14, 10, 4]);
const text = asciiStl(faces(button));
const bytes = binaryStl(faces(button));
const scaled = (factor: number, shape: Shape = button): Shape =>
  mapped(shape, ([x, y, z]) => [x * factor, y * factor, z * factor]);
const moved = (by: number, shape: Shape = button): Shape => mapped(shape, ([x, y, z]) => [x + by, y, z]);
const stl = (shape: Shape): Uint8Array => binaryStl(faces(shape));
const boxObj = (list: string): string =>
  `${button.points.map((point) => `v ${point.join(' ')}`).join('\n')}\n${list}\n`;
const triangles = button.faces.map((face) => `f ${face.map((v) => v + 1).join(' ')}`).join('\n');
const quads = 'f 1 3 4 2\nf 5 6 8 7\nf 1 2 6 5\nf 3 7 8 4\nf 1 5 7 3\nf 2 4 8 6';
const utf16 = (content: string): Uint8Array =>
  Uint8Array.from(
    [...`\ufeff${content}`].flatMap((letter) => [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8]),
  );

/** ASCII and binary STL as programs, mail and hands spoil them. */
export const stlCases: readonly MeshCase[] = [
  { title: 'a sound binary STL', name: 'a.stl', content: bytes, exit: 0, codes: [] },
  { title: 'a sound ASCII STL', name: 'a.stl', content: text, exit: 0, codes: [] },
  { title: 'an empty file', name: 'a.stl', content: '', exit: 2, codes: ['mesh.file-empty'], says: /empty/ },
  {
    title: 'a truncated binary STL',
    name: 'a.stl',
    content: bytes.subarray(0, 84 + 50 * 7 + 13),
    exit: 2,
    codes: ['mesh.truncated'],
    says: /12/,
  },
  {
    title: 'a binary STL that counts more than it holds',
    name: 'a.stl',
    content: binaryStl(faces(button), { count: 4_000_000_000 }),
    exit: 2,
    codes: ['mesh.truncated'],
    says: /4,000,000,000/,
  },
  {
    title: 'a binary STL that counts fewer than it holds',
    name: 'a.stl',
    content: binaryStl(faces(button), { count: 11 }),
    exit: 0,
    codes: ['mesh.extra-bytes'],
  },
  {
    title: 'a truncated ASCII STL',
    name: 'a.stl',
    content: text.slice(0, text.indexOf('vertex', 500) + 9),
    exit: 2,
    codes: ['mesh.truncated'],
    says: /a\.stl:\d+:\d+/,
  },
  {
    title: 'coordinates that are not numbers',
    name: 'a.stl',
    content: text.replace('vertex 14', 'vertex NaN').replaceAll('vertex 0 0 4', 'vertex inf 0 4'),
    exit: 2,
    codes: ['mesh.not-finite'],
    says: /of 12 faces/,
  },
  {
    title: 'a binary STL that begins with "solid"',
    name: 'a.stl',
    content: binaryStl(faces(button), { header: 'solid leaf exported by hand' }),
    exit: 0,
    codes: [],
  },
  { title: 'CRLF line ends', name: 'a.stl', content: text.replaceAll('\n', '\r\n'), exit: 0, codes: [] },
  { title: 'CR line ends', name: 'a.stl', content: text.replaceAll('\n', '\r'), exit: 0, codes: [] },
  { title: 'upper case', name: 'A.STL', content: text.toUpperCase(), exit: 0, codes: [] },
  {
    title: 'no endsolid',
    name: 'a.stl',
    content: text.slice(0, text.indexOf('endsolid')),
    exit: 0,
    codes: ['mesh.no-end'],
  },
  { title: 'a byte order mark', name: 'a.stl', content: `\ufeff${text}`, exit: 0, codes: [] },
  {
    title: 'decimal commas',
    name: 'a.stl',
    content: text.replaceAll(/vertex (\d+) (\d+) (\d+)/g, 'vertex $1,5 $2,5 $3,5'),
    exit: 2,
    codes: ['mesh.decimal-comma'],
    says: /a\.stl:4:\d+/,
  },
  {
    title: 'a Unicode solid name',
    name: 'a.stl',
    content: asciiStl(faces(button), 'käfer 甲虫'),
    exit: 0,
    codes: [],
  },
  { title: 'a Unicode file name', name: 'Käfer 甲虫 ö.stl', content: bytes, exit: 0, codes: [] },
  {
    title: 'a picture called STL',
    name: 'a.stl',
    content: '\u0089PNG\r\n\u001a\n',
    exit: 2,
    codes: ['mesh.'],
  },
  {
    title: 'a web page called STL',
    name: 'a.stl',
    content: '<!DOCTYPE html><html></html>',
    exit: 2,
    codes: ['mesh.unknown-kind'],
    says: /web page/,
  },
  { title: 'text called STL', name: 'a.stl', content: 'Dear Anna,\n', exit: 2, codes: ['mesh.unreadable'] },
];

export const objCases: readonly MeshCase[] = [
  { title: 'a sound OBJ', name: 'a.obj', content: boxObj(triangles), exit: 0, codes: [] },
  { title: 'polygons', name: 'a.obj', content: boxObj(quads), exit: 0, codes: ['mesh.polygons-cut'] },
  {
    title: 'negative indices',
    name: 'a.obj',
    content: boxObj(triangles.replaceAll(/\d+/g, (index) => String(Number(index) - 9))),
    exit: 0,
    codes: [],
  },
  {
    title: 'an index of zero',
    name: 'a.obj',
    content: boxObj(`${triangles}\nf 0 1 2`),
    exit: 2,
    codes: ['mesh.bad-index'],
    says: /a\.obj:21:\d+/,
  },
  {
    title: 'an index past the last point',
    name: 'a.obj',
    content: boxObj(`${triangles}\nf 1 2 99`),
    exit: 2,
    codes: ['mesh.bad-index'],
    says: /99/,
  },
  { title: 'no faces', name: 'a.obj', content: boxObj(''), exit: 2, codes: ['mesh.no-faces'] },
  { title: 'UTF-16 text', name: 'a.obj', content: utf16(boxObj(triangles)), exit: 2, codes: ['mesh.utf16'] },
  {
    title: 'the name of another format',
    name: 'a.stl',
    content: boxObj(triangles),
    exit: 0,
    codes: ['mesh.kind-differs'],
  },
];

const object = `<object id="1" type="model">${meshXml}</object>`;
const millimeters = (build: string, resources = object): string => modelXml(resources, build);
const item = '<item objectid="1" transform="10 0 0 0 10 0 0 0 10 0 0 0"/>';

/** A package of some kilobytes whose model part unpacks to `blocks` times 100 kB. */
const bomb = (blocks: number): Uint8Array =>
  package3mf(modelXml(`${' '.repeat(99_996)}<x/>`.repeat(blocks), ''));

/** The general purpose bit 0 of every entry set: encrypted (APPNOTE 4.4.4). */
function locked(archive: Uint8Array): Uint8Array {
  const out = archive.slice();
  for (let i = 0; i + 10 < out.length; i++) {
    if (out[i] !== 0x50 || out[i + 1] !== 0x4b) continue;
    if (out[i + 2] === 3 && out[i + 3] === 4) out[i + 6] |= 1;
    if (out[i + 2] === 1 && out[i + 3] === 2) out[i + 8] |= 1;
  }
  return out;
}

export const packageCases: readonly MeshCase[] = [
  { title: 'a sound 3MF', name: 'a.3mf', content: package3mf(millimeters(item)), exit: 0, codes: [] },
  {
    title: 'a mirrored transform',
    name: 'a.3mf',
    content: package3mf(millimeters('<item objectid="1" transform="-10 0 0 0 10 0 0 0 10 0 0 0"/>')),
    exit: 0,
    codes: ['mesh.mirrored'],
  },
  { title: 'a zip bomb', name: 'a.3mf', content: bomb(300), exit: 2, codes: ['mesh.unpacks-too-large'] },
  {
    title: 'an encrypted 3MF',
    name: 'a.3mf',
    content: locked(package3mf(millimeters(item))),
    exit: 2,
    codes: ['mesh.encrypted'],
  },
  {
    title: 'a 3MF without its model',
    name: 'a.3mf',
    content: zipSync({ 'readme.txt': new TextEncoder().encode('nothing here') }),
    exit: 2,
    codes: ['mesh.part-missing'],
  },
  {
    title: 'a 3MF with a bad index',
    name: 'a.3mf',
    content: package3mf(millimeters(item).replace('v1="0" v2="2"', 'v1="0" v2="77"')),
    exit: 2,
    codes: ['mesh.bad-index'],
    says: /77/,
  },
  {
    title: 'a truncated 3MF',
    name: 'a.3mf',
    content: package3mf(millimeters(item)).subarray(0, 200),
    exit: 2,
    codes: ['mesh.'],
  },
];

const ballOf4 = ball(4, 16);

/** Sound files that hold something a master should not be. */
export const shapeCases: readonly MeshCase[] = [
  {
    title: 'an inverted body',
    name: 'a.stl',
    content: stl(insideOut(button)),
    exit: 0,
    codes: ['repair.inside-out'],
  },
  {
    title: 'several bodies',
    name: 'a.stl',
    content: stl(together(button, moved(30))),
    exit: 0,
    codes: ['repair.several-bodies'],
  },
  {
    title: 'overlapping bodies',
    name: 'a.stl',
    content: stl(together(button, moved(7.03, ballOf4))),
    exit: 0,
    codes: ['repair.shells-united'],
  },
  {
    title: 'a hole',
    name: 'a.stl',
    content: stl(without(ballOf4, (face) => face === 30)),
    exit: 0,
    codes: ['repair.holes-closed'],
  },
  { title: 'microns', name: 'a.stl', content: stl(scaled(1e-7)), exit: 2, codes: ['repair.size-absurd'] },
  { title: 'kilometers', name: 'a.stl', content: stl(scaled(1e6)), exit: 2, codes: ['repair.size-absurd'] },
  {
    title: 'far from the origin',
    name: 'a.stl',
    content: stl(moved(1e6)),
    exit: 0,
    codes: ['repair.recentered', 'repair.coarse'],
  },
  {
    title: 'a flat sheet',
    name: 'a.stl',
    content: stl(without(button, (face) => face > 1)),
    exit: 2,
    codes: ['repair.flat'],
  },
  { title: 'one point many times', name: 'a.stl', content: stl(scaled(0)), exit: 2, codes: ['repair.empty'] },
];
