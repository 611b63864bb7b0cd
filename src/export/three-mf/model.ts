import type { TriangleMesh } from '../../geometry/index.ts';
import { type SolidKind, type SolidRole, solidKinds } from '../../kinds/index.ts';

/** A solid as the model names it: where its frame's origin is put, mm, no turn and no mirror. */
export interface ModelItem {
  readonly id: string;
  readonly title: string;
  readonly role: SolidRole;
  readonly mesh: TriangleMesh;
  readonly at: readonly [number, number, number];
}

/** Text is handed on in pieces of about this many elements, so that a large model is never one string. */
const elementsAtOnce = 8192;

const roles = solidKinds.map(({ role }) => role);
const materialsId = 1;

/**
 * The model part of a 3MF package (3MF Core Specification): millimeters, one object for each item, then the build.
 * Coordinates are the shortest decimals that read back as the same float32; vertex indices are the mesh's own.
 */
export function* modelText(title: string, items: readonly ModelItem[]): Generator<string> {
  yield '<?xml version="1.0" encoding="UTF-8"?>\n' +
    '<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">\n' +
    `<metadata name="Title">${escaped(title)}</metadata>\n<metadata name="Application">discwright</metadata>\n` +
    `<resources>\n<basematerials id="${materialsId}">\n${solidKinds.map(baseText).join('')}</basematerials>\n`;
  for (const [i, item] of items.entries()) yield* objectText(item, objectId(i));
  yield `</resources>\n<build>\n${items.map(itemText).join('')}</build>\n</model>\n`;
}

const objectId = (index: number): number => materialsId + 1 + index;

const baseText = ({ role, color }: SolidKind): string => `<base name="${role}" displaycolor="${color}"/>\n`;

const itemText = ({ id, at }: ModelItem, index: number): string =>
  `<item objectid="${objectId(index)}" partnumber="${escaped(id)}" transform="1 0 0 0 1 0 0 0 1 ${at.join(' ')}"/>\n`;

function* objectText({ id, title, role, mesh }: ModelItem, number: number): Generator<string> {
  const { positions: p, triangles: t } = mesh;
  const naming = `name="${escaped(title)}" partnumber="${escaped(id)}"`;
  yield `<object id="${number}" type="model" ${naming} pid="${materialsId}" pindex="${roles.indexOf(role)}">\n` +
    '<mesh>\n<vertices>\n';
  yield* elements(
    p.length / 3,
    (i) => `<vertex x="${decimal(p[i * 3])}" y="${decimal(p[i * 3 + 1])}" z="${decimal(p[i * 3 + 2])}"/>\n`,
  );
  yield '</vertices>\n<triangles>\n';
  yield* elements(
    t.length / 3,
    (i) => `<triangle v1="${t[i * 3]}" v2="${t[i * 3 + 1]}" v3="${t[i * 3 + 2]}"/>\n`,
  );
  yield '</triangles>\n</mesh>\n</object>\n';
}

function* elements(count: number, write: (index: number) => string): Generator<string> {
  for (let from = 0; from < count; from += elementsAtOnce) {
    let text = '';
    for (let i = from; i < Math.min(count, from + elementsAtOnce); i++) text += write(i);
    yield text;
  }
}

/** Few digits that give the same float32 again; nine always do (IEEE 754). */
function decimal(value: number): string {
  for (const digits of [7, 8]) {
    const short = Number(value.toPrecision(digits));
    if (Math.fround(short) === value) return String(short);
  }
  return String(Number(value.toPrecision(9)));
}

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
