/** What can be written as JSON without loss; numbers that are not finite become the words Infinity, -Infinity, NaN. */
export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json | undefined };

/**
 * JSON text, UTF-8, two spaces of indent, keys in the order given, lists of numbers on one line, a newline at the
 * end. Numbers are written as JavaScript does (the shortest text that reads back the same), so equal data gives equal
 * bytes on every machine.
 */
export const jsonBytes = (value: Json): Uint8Array => new TextEncoder().encode(`${text(value, '')}\n`);

function text(value: Json, indent: string): string {
  if (typeof value === 'number') return Number.isFinite(value) ? JSON.stringify(value) : `"${value}"`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (isList(value)) {
    if (value.length === 0) return '[]';
    if (value.every((item) => typeof item === 'number'))
      return `[${value.map((item) => text(item, '')).join(', ')}]`;
    return `[\n${value.map((item) => inner + text(item, inner)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).flatMap(([key, item]) =>
    item === undefined ? [] : [`${inner}${JSON.stringify(key)}: ${text(item, inner)}`],
  );
  return entries.length === 0 ? '{}' : `{\n${entries.join(',\n')}\n${indent}}`;
}

const isList = (value: Json): value is readonly Json[] => Array.isArray(value);
