import { SaxesParser, type SaxesTagNS } from 'saxes';
import type { TextPlace } from '../../findings/index.ts';
import type { MeshFile } from './mesh-file.ts';
import type { ZipParts } from './zip-parts.ts';

/** No element of a mesh needs more bytes than this from one tag to the next. */
const mostBetweenTags = 2 ** 23;
/** Deeper nesting than any mesh needs. */
const mostDepth = 1000;

/** Where the parser is, and how to end the reading there. */
export interface XmlPlace {
  /** Line and column within the part; the file is the package. */
  textPlace(): TextPlace;
  /** Prefix to namespace as declared on the element being opened or above it. */
  namespaceOf(prefix: string): string | undefined;
}

export interface XmlHandler {
  open(tag: SaxesTagNS, place: XmlPlace): void;
  close(): void;
}

/**
 * Reads an XML part of a package piece by piece and hands over its elements. Document types and entities of one's
 * own are refused, as the Open Packaging Conventions ask; so is what is not well-formed.
 */
export function readXmlPart(file: MeshFile, zip: ZipParts, part: string, handler: XmlHandler): void {
  const parser = new SaxesParser({ xmlns: true });
  const textPlace = (): TextPlace => ({ file: file.name, line: parser.line, column: parser.column + 1 });
  const place: XmlPlace = { textPlace, namespaceOf: (prefix) => parser.resolve(prefix) };
  let sinceTag = 0;
  let depth = 0;
  parser.on('doctype', () => file.stop('mesh.not-allowed', { which: 'doctype', part }, textPlace()));
  parser.on('error', ({ message }) => {
    const fault = message.replace(/^(undefined:)?\d+:\d+: /, '').replace(/\.$/, '');
    if (/undefined entity/.test(message))
      file.stop('mesh.not-allowed', { which: 'entity', part, fault }, textPlace());
    file.stop('mesh.unreadable', { which: 'xml', part, fault }, textPlace());
  });
  parser.on('opentag', (tag) => {
    sinceTag = 0;
    if (++depth > mostDepth) file.stop('mesh.unreadable', { which: 'xml-deep', part }, textPlace());
    handler.open(tag, place);
  });
  parser.on('closetag', () => {
    sinceTag = 0;
    depth--;
    handler.close();
  });
  let decoder: TextDecoder | undefined;
  zip.unpack(part, (piece) => {
    decoder ??= new TextDecoder(encodingOf(piece));
    sinceTag += piece.length;
    parser.write(decoder.decode(piece, { stream: true }));
    if (sinceTag > mostBetweenTags + piece.length)
      file.stop('mesh.unreadable', { which: 'xml-between', part }, textPlace());
  });
  parser.write(decoder?.decode() ?? '').close();
}

/** XML in a package is UTF-8 or UTF-16; the latter begins with a byte order mark. */
function encodingOf([a, b]: Uint8Array): string {
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  return a === 0xfe && b === 0xff ? 'utf-16be' : 'utf-8';
}
