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

/** Most values of one range: a slip in the step must not ask for a million molds. */
const mostInRange = 10_000;

/**
 * Reads `disc.diameter=6in,9in,12in` or a range `disc.diameter=150..300/25` (both ends included where the step meets
 * them; all three numbers of one unit, which may stand on any of them: `6..12/1in`). A value that holds a comma stands
 * in double quotes. What cannot be read gives one sentence.
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

const bound = String.raw`(-?\d+(?:\.\d+)?)\s*([^\d\s./]*)`;
const rangePattern = new RegExp(`^${bound}\\.\\.${bound}(?:/${bound})?$`);

function readRange(text: string): { values: string[] } | { fault: string } | undefined {
  if (!text.includes('..')) return undefined;
  const found = rangePattern.exec(text);
  if (!found) return { fault: `\`${text}\` is no range; write it like 150..300/25 or 6..12/1in` };
  const units = [found[2], found[4], found[6] ?? ''].filter((unit) => unit !== '');
  if (new Set(units).size > 1)
    return { fault: `\`${text}\` mixes the units ${[...new Set(units)].join(' and ')}` };
  const [from, to, step] = [Number(found[1]), Number(found[3]), Number(found[5] ?? 1)];
  if (!(step > 0)) return { fault: `the step of \`${text}\` must be more than 0` };
  if (to < from) return { fault: `\`${text}\` runs backward: the smaller number comes first` };
  // A hair more than the end keeps an end that rounding put just past it.
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  if (count > mostInRange)
    return { fault: `\`${text}\` gives ${count} values; at most ${mostInRange} are made` };
  const unit = units[0] ?? '';
  return {
    values: Array.from({ length: count }, (_, i) => `${Number((from + i * step).toFixed(9))}${unit}`),
  };
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
