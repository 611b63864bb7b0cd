import type { TriangleMesh } from '../../geometry/index.ts';
import { type SolidKind, type SolidRole, solidKinds } from '../../kinds/index.ts';
import { TextBytes } from './text-bytes.ts';

/** A solid as the model names it: where its frame's origin is put, mm, no turn and no mirror. */
export interface ModelItem {
  readonly id: string;
  readonly title: string;
  readonly role: SolidRole;
  readonly mesh: TriangleMesh;
  readonly at: readonly [number, number, number];
}

/** Text is handed on in pieces of this many elements, so that a large model is never in memory whole. */
const elementsAtOnce = 8192;
/** No element is longer, bytes. */
const longestElement = 128;

const roles = solidKinds.map(({ role }) => role);
const materialsId = 1;

/**
 * The model part of a 3MF package (3MF Core Specification): millimeters, one object for each item, then the build.
 * Coordinates are the shortest decimals that read back as the same float32; vertex indices are the mesh's own.
 */
export function* modelText(title: string, items: readonly ModelItem[]): Generator<Uint8Array> {
  yield utf8(
    '<?xml version="1.0" encoding="UTF-8"?>\n' +
      '<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">\n' +
      `<metadata name="Title">${escaped(title)}</metadata>\n<metadata name="Application">discwright</metadata>\n` +
      `<resources>\n<basematerials id="${materialsId}">\n${solidKinds.map(baseText).join('')}</basematerials>\n`,
  );
  for (const [i, item] of items.entries()) yield* objectText(item, objectId(i));
  yield utf8(`</resources>\n<build>\n${items.map(itemText).join('')}</build>\n</model>\n`);
}

const objectId = (index: number): number => materialsId + 1 + index;

const baseText = ({ role, color }: SolidKind): string => `<base name="${role}" displaycolor="${color}"/>\n`;

const itemText = ({ id, at }: ModelItem, index: number): string =>
  `<item objectid="${objectId(index)}" partnumber="${escaped(id)}" transform="1 0 0 0 1 0 0 0 1 ${at.join(' ')}"/>\n`;

function* objectText({ id, title, role, mesh }: ModelItem, number: number): Generator<Uint8Array> {
  const naming = `name="${escaped(title)}" partnumber="${escaped(id)}"`;
  yield utf8(
    `<object id="${number}" type="model" ${naming} pid="${materialsId}" pindex="${roles.indexOf(role)}">\n` +
      '<mesh>\n<vertices>\n',
  );
  yield* elements(mesh.positions, 'vertex', ['x', 'y', 'z'], (text, value) => text.float32(value));
  yield utf8('</vertices>\n<triangles>\n');
  yield* elements(mesh.triangles, 'triangle', ['v1', 'v2', 'v3'], (text, value) => text.count(value));
  yield utf8('</triangles>\n</mesh>\n</object>\n');
}

/** An element with three attributes for every three of the values. */
function* elements(
  values: Float32Array | Uint32Array,
  name: string,
  [first, second, third]: readonly [string, string, string],
  write: (text: TextBytes, value: number) => void,
): Generator<Uint8Array> {
  const text = new TextBytes(elementsAtOnce * longestElement);
  const parts = [`<${name} ${first}="`, `" ${second}="`, `" ${third}="`, '"/>\n'].map(utf8);
  for (let i = 0; i < values.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      text.tag(parts[k]);
      write(text, values[i + k]);
    }
    text.tag(parts[3]);
    if ((i / 3 + 1) % elementsAtOnce === 0) yield text.take();
  }
  yield text.take();
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

const named: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** Text for XML 1.0; characters it does not allow are left out. */
const escaped = (text: string): string =>
  text
    .replace(/[&<>"]/g, (character) => named[character])
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '');
