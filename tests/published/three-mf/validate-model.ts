import { readFileSync } from 'node:fs';
import {
  XmlBufferInputProvider,
  XmlDocument,
  XmlLibError,
  XsdValidator,
  xmlRegisterInputProvider,
} from 'libxml2-wasm';

const fileBeside = (name: string): Buffer => readFileSync(new URL(name, import.meta.url));

/**
 * The consortium's own schema where THREE_MF_XSD names it; else the grammar beside this file. The consortium's allows
 * 2147483647 of a kind, which is more than libxml2 can count to.
 */
const grammar = (): string =>
  (process.env.THREE_MF_XSD ? readFileSync(process.env.THREE_MF_XSD) : fileBeside('./model.xsd'))
    .toString()
    .replaceAll('maxOccurs="2147483647"', 'maxOccurs="unbounded"');

let validator: XsdValidator | undefined;

/** What libxml2's schema validator has against the text of a 3MF model part; nothing where it is valid. */
export function schemaFaults(model: string): string[] {
  validator ??= load();
  let document: XmlDocument | undefined;
  try {
    document = XmlDocument.fromString(model);
    validator.validate(document);
    return [];
  } catch (error) {
    if (!(error instanceof XmlLibError)) throw error;
    return error.details.map(({ line, message }) => `line ${line}: ${message.trim()}`);
  } finally {
    document?.dispose();
  }
}

function load(): XsdValidator {
  // Nothing is fetched: what the grammar imports lies beside it.
  const imported = { 'http://www.w3.org/2001/xml.xsd': fileBeside('./xml-lang.xsd') };
  xmlRegisterInputProvider(new XmlBufferInputProvider(imported));
  const schema = XmlDocument.fromString(grammar());
  const loaded = XsdValidator.fromDoc(schema);
  schema.dispose();
  return loaded;
}
