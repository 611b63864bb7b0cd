import { readRange } from './range.ts';

/** What is varied: a field of the plan and the values it takes, as written. */
export interface Axis {
  /** Names from the top of the plan, joined by dots; items of a list by their number from 1. */
  readonly path: string;
  readonly values: readonly string[];
}

/** One field set to one value. */
export interface Setting {
  readonly path: string;
  readonly value: string;
}

/**
 * Reads `disc.diameter=6in,9in,12in` or a range such as `disc.diameter=150..300/25`; see `readRange`. A value that
 * holds a comma stands in double quotes. What cannot be read gives one sentence.
 */
export function readAxis(text: string): Axis | { readonly fault: string } {
  const equals = text.indexOf('=');
  const path = text.slice(0, Math.max(0, equals)).trim();
  if (equals < 0 || path === '') {
    return { fault: `\`${text}\` does not say what takes which values; write it like disc.diameter=6in,9in` };
  }
  const parts = splitAtCommas(text.slice(equals + 1));
  if (parts.length === 0) return { fault: `\`${text}\` has an empty value` };
  const values: string[] = [];
  for (const part of parts) {
    if (part === '') return { fault: `\`${text}\` has an empty value` };
    const range = readRange(part);
    if (range && 'fault' in range) return range;
    values.push(...(range ? range.values : [part]));
  }
  const twice = values.find((value, i) => values.indexOf(value) !== i);
  if (twice !== undefined) return { fault: `\`${path}\` takes the value ${twice} twice` };
  return { path, values };
}

/** Parts between commas. Only a part that is in quotes as a whole may hold one: `1/2",3/4"` are two lengths in inches. */
function splitAtCommas(text: string): string[] {
  const parts: string[] = [];
  const one = /\s*(?:"([^"]*)"|([^,]*?))\s*(,|$)/y;
  for (let more = true; more; ) {
    const [, quoted, bare, comma] = one.exec(text) ?? [];
    parts.push(quoted ?? bare ?? '');
    more = comma === ',';
  }
  return parts;
}

/** Every combination, the last axis changing fastest; or, `together`, the first values with each other, and so on. */
export function combine(
  axes: readonly Axis[],
  together: boolean,
): { readonly rows: readonly (readonly Setting[])[] } | { readonly fault: string } {
  const twice = axes.find(({ path }, i) => axes.findIndex((other) => other.path === path) !== i);
  if (twice) return { fault: `\`${twice.path}\` is varied twice` };
  if (!together) {
    return {
      rows: axes.reduce<Setting[][]>(
        (rows, { path, values }) => rows.flatMap((row) => values.map((value) => [...row, { path, value }])),
        [[]],
      ),
    };
  }
  const counts = axes.map(({ values }) => values.length);
  if (new Set(counts).size > 1) {
    const said = axes.map(({ path, values }) => `${path} ${values.length}`).join(', ');
    return { fault: `to vary together, all must take equally many values; here: ${said}` };
  }
  return {
    rows: Array.from({ length: counts[0] ?? 0 }, (_, i) =>
      axes.map(({ path, values }) => ({ path, value: values[i] })),
    ),
  };
}
