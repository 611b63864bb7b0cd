import type { CodeValues } from '../../findings/index.ts';
import { isBinaryStl } from './read-stl.ts';

export type MeshKind = 'binary STL' | 'ASCII STL' | 'OBJ' | '3MF';

/** Formats that people mistake for meshes we read, or that meshes come wrapped in. */
type Foreign = NonNullable<CodeValues<'mesh.unknown-kind'>['holds']>;

/** What a file is by what it holds: one of our formats, one that is none of ours, locked, or a text in UTF-16. */
export type Sniffed =
  | { readonly kind: MeshKind }
  | { readonly foreign: Foreign }
  | { readonly locked: true }
  | { readonly utf16: true }
  | { readonly unknown: true };

/** How much of the beginning is looked at. */
const lookAt = 65_536;

const signatures: readonly (readonly [RegExp, Foreign])[] = [
  [/^ply\s/, 'ply'],
  [/^glTF/, 'glb'],
  [/^\s*\{/, 'json'],
  [/^ISO-10303-21/, 'step'],
  [/^\s*(C?N?4?n?OFF)\s/, 'off'],
  [/^\s*<(!DOCTYPE )?html/i, 'html'],
  [/^\s*</, 'xml'],
  [/^%PDF/, 'pdf'],
  [/^(\x89PNG|\xff\xd8\xff|GIF8)/, 'picture'],
  [/^(7z\xbc\xaf|Rar!)/, 'archive'],
  [/^AC10\d\d/, 'dwg'],
  [/^Kaydara FBX/, 'fbx'],
  [/^BLENDER/, 'blend'],
];

/** Tells the format of a file by its content. A file of the exact size of a binary STL is one, whatever it begins with. */
export function sniff(bytes: Uint8Array): Sniffed {
  if (isBinaryStl(bytes)) return { kind: 'binary STL' };
  const head = latin1(bytes.subarray(0, lookAt));
  if (head.startsWith('PK\x03\x04') || head.startsWith('PK\x05\x06')) return { kind: '3MF' };
  // What office programs and 3MF viewers wrap a password-protected package in.
  if (head.startsWith('\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1')) return { locked: true };
  if (isUtf16(head)) return { utf16: true };
  const text = head.replace(/^\xef\xbb\xbf/, '');
  if (/^\s*solid(\s|$)/i.test(text) && looksLikeText(text)) return { kind: 'ASCII STL' };
  if (/^\s*facet\s+normal\s/i.test(text)) return { kind: 'ASCII STL' };
  if (head.startsWith('\x1f\x8b')) return { foreign: 'gzip' };
  for (const [signature, foreign] of signatures) if (signature.test(text)) return { foreign };
  if (looksLikeText(text) && /(^|[\r\n])[ \t]*(v|f)[ \t]+[-+.\d]/.test(text)) return { kind: 'OBJ' };
  return { unknown: true };
}

/** Binary files that begin with "solid" have zero bytes in their header or soon after it. */
const looksLikeText = (head: string): boolean => !head.includes('\0');

function isUtf16(head: string): boolean {
  if (/^(\xff\xfe|\xfe\xff)/.test(head)) return true;
  // Without a byte order mark: every other byte of plain letters is zero.
  return /^([\t\n\r -~]\0){4}/.test(head) || /^(\0[\t\n\r -~]){4}/.test(head);
}

function latin1(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 4096) {
    text += String.fromCharCode(...bytes.subarray(at, at + 4096));
  }
  return text;
}

/** The format a file's name promises, if it is one of ours. */
export function kindByName(name: string): 'STL' | 'OBJ' | '3MF' | undefined {
  const ending = /\.(stl|obj|3mf)$/i.exec(name);
  return ending ? (ending[1].toUpperCase() as 'STL' | 'OBJ' | '3MF') : undefined;
}
