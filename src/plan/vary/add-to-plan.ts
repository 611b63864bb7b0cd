import {
  type Document,
  isCollection,
  isMap,
  isPair,
  isScalar,
  type Node,
  type Pair,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { PlanPath } from '../plan-tree.ts';

/**
 * The plan's text with a field that is not in it: at the end of the nearest section round it, so that what stands
 * before keeps its line and comments stay. `value` is the field's value as text. Undefined where something other than
 * a section stands in the way.
 */
export function addToPlan(
  text: string,
  document: Document.Parsed,
  path: PlanPath,
  value: string,
): string | undefined {
  const depth = path.findIndex((_, i) => !document.hasIn(path.slice(0, i + 1)));
  const section = depth === 0 ? document.contents : document.getIn(path.slice(0, depth), true);
  if (depth < 0 || !isMap(section)) return undefined;
  const [name, ...inner] = path.slice(depth).map(String);
  const entry = `${name}: ${inner.reduceRight((within, key) => `{ ${key}: ${within} }`, value)}`;
  return section.flow ? inBraces(text, section, entry) : onNewLine(text, section, entry);
}

function inBraces(text: string, section: YAMLMap, entry: string): string {
  const open = (section.range?.[0] ?? 0) + 1;
  if (section.items.length === 0) return splice(text, open, ` ${entry} `);
  return splice(text, endOf(section), `, ${entry}`);
}

function onNewLine(text: string, section: YAMLMap, entry: string): string {
  const end = endOf(section);
  const start = section.range?.[0] ?? 0;
  const indent = ' '.repeat(start - (text.lastIndexOf('\n', start - 1) + 1));
  // A block of text ends behind its line break, anything else before it or before a comment.
  const lineEnd = text.indexOf('\n', Math.max(0, end - 1));
  if (lineEnd < 0) return `${text}\n${indent}${entry}\n`;
  return splice(text, lineEnd + 1, `${indent}${entry}\n`);
}

/** Offset behind the last thing written in a section, comments and line breaks behind it not counted. */
function endOf(collection: YAMLMap | YAMLSeq): number {
  const last = collection.items.at(-1) as Node | Pair<Node, Node | null> | undefined;
  if (last === undefined) return collection.range?.[1] ?? 0;
  if (!isPair(last)) return endOfValue(last);
  const { key, value } = last;
  // An empty value has its place behind the comments that follow it.
  const isEmpty = value === null || (isScalar(value) && value.value === null && value.source === '');
  return isEmpty ? (key.range?.[1] ?? 0) + 1 : endOfValue(value);
}

export const endOfValue = (node: Node): number =>
  isCollection(node) && !node.flow ? endOf(node as YAMLMap | YAMLSeq) : (node.range?.[1] ?? 0);

const splice = (text: string, at: number, added: string): string =>
  text.slice(0, at) + added + text.slice(at);
