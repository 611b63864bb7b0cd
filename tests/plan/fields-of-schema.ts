import type { z } from 'zod';

type Schema = z.core.JSONSchema.BaseSchema;

/** Every field of a JSON Schema that holds no other: `can.wall`, `tabs[].width`, `masters.*.file`. */
export function fieldsOf(schema: Schema): string[] {
  const found = new Set<string>();
  const look = (one: Schema, path: string): void => {
    const inner = insides(one, path);
    // Of several ways to write it, those that are no section are the field itself.
    const plain = one.anyOf?.some((way) => typeof way === 'object' && insides(way, path).length === 0);
    if (inner.length === 0 || plain) found.add(path);
    for (const [next, at] of inner) look(next, at);
  };
  for (const [next, at] of insides(schema, '')) look(next, at);
  return [...found].sort();
}

/** What a schema holds by name, as a list, or under names a person gives. */
function insides(one: Schema, path: string): [Schema, string][] {
  const held: [unknown, string][] = [
    ...Object.entries(one.properties ?? {}).map(([name, field]): [unknown, string] => [
      field,
      path === '' ? name : `${path}.${name}`,
    ]),
    [one.items, `${path}[]`],
    [one.additionalProperties, `${path}.*`],
  ];
  const own = held.filter((pair): pair is [Schema, string] => isSchema(pair[0]));
  const ways = (one.anyOf ?? one.oneOf ?? []).filter(isSchema);
  return [...own, ...ways.flatMap((way) => insides(way, path))];
}

const isSchema = (value: unknown): value is Schema =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
