import { type Document, DomHandler, type Element, isTag } from 'domhandler';
import { SaxesParser } from 'saxes';
import { SvgFault } from './svg-fault.ts';

/** Elements nested deeper are no drawing. */
const mostDepth = 500;

/** More elements are no drawing of one part; each is held against every rule of the style sheets. */
const mostElements = 50_000;

/** The elements of an XML text, without the prefixes of their names. */
export function readDocument(text: string): { readonly document: Document; readonly root: Element } {
  const handler = new DomHandler();
  let depth = 0;
  let elements = 0;
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw new SvgFault({ which: 'xml', fault: error.message.replace(/^undefined:/, 'line ') });
  });
  parser.on('opentag', ({ name, attributes }) => {
    if (++depth > mostDepth) throw new SvgFault({ which: 'deep', limit: mostDepth });
    if (++elements > mostElements) throw new SvgFault({ which: 'elements', limit: mostElements });
    const plain = localName(name);
    if (depth === 1 && plain !== 'svg') throw new SvgFault({ which: 'root', element: plain });
    handler.onopentag(plain, attributes);
  });
  parser.on('closetag', () => {
    depth--;
    handler.onclosetag();
  });
  parser.on('text', (data) => handler.ontext(data));
  parser.on('cdata', (data) => handler.ontext(data));
  parser.write(text).close();
  const root = handler.root.children.find(isTag);
  if (!root) throw new SvgFault({ which: 'no-svg' });
  return { document: handler.root, root };
}

const localName = (name: string): string => name.slice(name.indexOf(':') + 1);
