import { IntlMessageFormat } from 'intl-messageformat';
import {
  entryOf,
  type Finding,
  type FindingValue,
  kindOf,
  type Measured,
  type Template,
  type UnitSystem,
  type ValueKind,
} from '../findings/index.ts';
import { showQuantity } from './quantity.ts';

/** What a sentence finds in place of an optional value that is not there, to choose by. */
const missing = 'none';

/** A finding in words. */
export interface Sentences {
  /** What is wrong, with the numbers. */
  readonly says: string;
  /** What to do. */
  readonly remedy: string;
}

/** Says a finding in the person's units. Throws where a finding lacks a value that its sentence names. */
export function sayFinding(one: Finding, system: UnitSystem): Sentences {
  const entry = entryOf(one.code);
  const kinds = entry.values ?? {};
  const words: Record<string, string | number> = { subject: one.subject };
  for (const key of Object.keys(kinds)) {
    const name = key.replace(/\?$/, '');
    const value = one.values[name];
    // A sentence may choose by whether an optional value is there.
    words[name] = value === undefined ? missing : showValue(value, kindOf(kinds, name)?.kind, system);
  }
  const say = (template: Template): string => format(chosen(template, one.values.which), words);
  return { says: say(entry.says), remedy: say(entry.remedy) };
}

/** What several findings say is wrong, each sentence once. */
export const saysOfAll = (findings: readonly Finding[], system: UnitSystem): string[] => [
  ...new Set(findings.map((one) => sayFinding(one, system).says)),
];

/** A count stays a number, so that a plural can be chosen by it. */
function showValue(value: FindingValue, kind: ValueKind | undefined, system: UnitSystem): string | number {
  if (typeof value === 'number') {
    if (kind === 'count') return value;
    return showQuantity(value, kind as Measured['unit'], system);
  }
  if (typeof value === 'string') return value;
  if ('unit' in value) return showQuantity(value.value, value.unit, system);
  if (kind === 'point') return pointText(value as readonly number[], system);
  return listed(value as readonly string[]);
}

const pointText = (point: readonly number[], system: UnitSystem): string =>
  point.map((value, axis) => `${'xyz'[axis]} ${showQuantity(value, 'mm', system)}`).join(', ');

/** `a`, `a and b`, `a, b and c`; of none, what a sentence finds of a value that is missing. */
const listed = (names: readonly string[]): string =>
  names.length < 2
    ? (names[0] ?? missing)
    : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;

function chosen(template: Template, which: FindingValue | undefined): string {
  if (typeof template === 'string') return template;
  const text = typeof which === 'string' ? template[which] : undefined;
  if (text === undefined) throw new Error(`no sentence for ${JSON.stringify(which)}`);
  return text;
}

const parsed = new Map<string, IntlMessageFormat>();

function format(message: string, words: Readonly<Record<string, string | number>>): string {
  let known = parsed.get(message);
  if (!known) {
    known = new IntlMessageFormat(message, 'en');
    parsed.set(message, known);
  }
  return String(known.format(words));
}
