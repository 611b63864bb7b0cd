import { Composer, type CST, type Document, isScalar, LineCounter, Parser, type YAMLError } from 'yaml';
import { type CodeValues, type Finding, finding, type TextPlace } from '../findings/index.ts';

/** Deepest nesting read. A plan needs eight; beyond some thousands the YAML composer would run out of stack. */
const deepest = 40;

/** A plan as YAML: its document, with comments and order, and the place of every character of its text. */
export interface PlanDocument {
  readonly document: Document.Parsed;
  readonly text: string;
  place(offset: number): TextPlace;
}

/** Parses one YAML 1.2 document; the first fault in the text is given as one finding. */
export function planDocument(text: string, file: string): PlanDocument | { readonly fault: Finding } {
  const lines = new LineCounter();
  const place = (offset: number): TextPlace => spotIn(text, lines, file, offset);
  const about = (offset: number) => ({ subject: 'plan', at: place(offset) });
  const unreadable: Unreadable = (values, offset) => ({
    fault: finding('plan.unreadable', { ...about(offset), values }),
  });
  const control = text.search(controlCharacter);
  if (control >= 0) {
    // Not yet parsed, so the line counter has to be filled by hand.
    for (let at = 0; at >= 0; at = text.indexOf('\n', at) + 1 || -1) lines.addNewLine(at);
    const code = text.charCodeAt(control).toString(16).toUpperCase().padStart(4, '0');
    return unreadable({ which: 'control', character: `U+${code}` }, control);
  }
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const deep = tooDeepAt(tokens);
  if (deep !== undefined) {
    return { fault: finding('plan.too-deep', { ...about(deep), values: { limit: deepest } }) };
  }
  const [document, second] = firstTwo(tokens, text);
  const errors = [...(document?.errors ?? []), ...(document?.warnings ?? [])];
  if (errors.length > 0) return syntaxFault(errors, text, unreadable, about);
  if (second !== undefined) return { fault: finding('plan.several-documents', about(second)) };
  if (!document || isEmpty(document)) return { fault: finding('plan.empty', about(0)) };
  if (document.directives.yaml.explicit && document.directives.yaml.version !== '1.2') {
    return unreadable({ which: 'version' }, 0);
  }
  return { document, text, place };
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const controlCharacter = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/;

/** Composes the first document, and tells where a second one begins. */
function firstTwo(tokens: CST.Token[], text: string): [Document.Parsed | undefined, number | undefined] {
  // Duplicate keys are looked for by the tree, in linear time and with a place for each.
  const composer = new Composer({ prettyErrors: false, uniqueKeys: false, version: '1.2', schema: 'core' });
  let first: Document.Parsed | undefined;
  for (const document of composer.compose(tokens, true, text.length)) {
    if (first) return [first, document.range[0]];
    first = document as Document.Parsed;
  }
  return [first, undefined];
}

const isEmpty = ({ contents }: Document.Parsed): boolean =>
  contents === null || (isScalar(contents) && contents.value === null);

/** Offset of the first thing nested too deep. Iterative: the nesting is what is not trusted here. */
function tooDeepAt(tokens: readonly CST.Token[]): number | undefined {
  let level: readonly CST.Token[] = tokens;
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > deepest) return Math.min(...level.slice(0, 1000).map((token) => token.offset));
    level = level.flatMap(inside);
  }
  return undefined;
}

function inside(token: CST.Token): CST.Token[] {
  const found: CST.Token[] = [];
  if ('value' in token && typeof token.value === 'object' && token.value) found.push(token.value);
  if (!('items' in token)) return found;
  for (const item of token.items) {
    if ('key' in item && item.key) found.push(item.key);
    if (item.value) found.push(item.value);
  }
  return found;
}

type Unreadable = (values: CodeValues<'plan.unreadable'>, offset: number) => { fault: Finding };

function syntaxFault(
  errors: readonly YAMLError[],
  text: string,
  unreadable: Unreadable,
  about: (offset: number) => { subject: string; at: TextPlace },
): { fault: Finding } {
  const [error] = errors;
  const line = lineAt(text, placeOf(errors, text));
  const tab = /^ *\t/.exec(line.text);
  if (tab) {
    const at = about(line.start + tab[0].length - 1);
    return { fault: finding('plan.tab', { ...at, values: { text: clip(line.text.trim()) } }) };
  }
  if (indentation.includes(error.code)) {
    const shown = clip(line.text.trim());
    return unreadable({ which: 'indented', text: shown }, line.start + line.text.search(/\S|$/));
  }
  const offset = Math.min(error.pos[0], text.length);
  const reason = error.message.split('\n', 1)[0].replace(/\.$/, '');
  const shown = clip(text.slice(offset).split('\n', 1)[0].trim() || line.text.trim());
  return unreadable({ which: met[error.code] ?? 'other', reason, text: shown || undefined }, offset);
}

/** Faults that come of a line's indentation. */
const indentation: readonly YAMLError['code'][] = [
  'BAD_INDENT',
  'BLOCK_AS_IMPLICIT_KEY',
  'MULTILINE_IMPLICIT_KEY',
];

/** Where the first fault is. A text that runs on into an over-indented line is at fault in that line. */
function placeOf(errors: readonly YAMLError[], text: string): number {
  const [{ pos }] = errors;
  const runsOn = errors.find((error) => error.code === 'MULTILINE_IMPLICIT_KEY' && error.pos[0] === pos[0]);
  return Math.min(runsOn ? runsOn.pos[1] - 1 : pos[0], text.length);
}

function lineAt(text: string, offset: number): { start: number; text: string } {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  return { start, text: text.slice(start, end < 0 ? undefined : end).trimEnd() };
}

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}...` : text);

/** The faults met most, which are said in words for people who do not write YAML every day. */
const met: Partial<Record<YAMLError['code'], CodeValues<'plan.unreadable'>['which']>> = {
  MISSING_CHAR: 'missing character',
  UNEXPECTED_TOKEN: 'unexpected',
  TAG_RESOLVE_FAILED: 'tag',
};

/** Line and column of an offset; both count from 1, the column in characters as an editor shows it. */
function spotIn(text: string, lines: LineCounter, file: string, offset: number): TextPlace {
  const { line } = lines.linePos(offset);
  if (line === 0) return { file, line: 1, column: 1 };
  const start = lines.lineStarts[line - 1];
  return { file, line, column: [...text.slice(start, offset)].length + 1 };
}
