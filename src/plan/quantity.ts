import { type CodeValues, type Finding, findingWith } from '../findings/index.ts';
import { type KindName, type PlanUnit, type QuantityKind, quantityKinds } from './unit-table.ts';

type FaultCode = 'plan.quantity' | 'plan.wrong-unit' | 'plan.decimal-comma';

/** Why a text is no quantity of the kind asked for: a code of the catalogue and its values. */
export interface QuantityFault {
  readonly code: FaultCode;
  readonly values: CodeValues<FaultCode>;
}

/** The finding that a quantity was written so, about a field or an option. */
export const quantityFinding = ({ code, values }: QuantityFault, subject: string): Finding =>
  findingWith(code, values, { subject });

const fault = <C extends FaultCode>(code: C, values: CodeValues<C>): Quantity => ({
  fault: { code, values },
});

export type Quantity = { readonly value: number } | { readonly fault: QuantityFault };

/** Longest text looked at; no quantity needs more, and it bounds the work on hostile input. */
const longest = 60;

/**
 * Reads a quantity as a plan writes it: a bare number (in the kind's own unit) or a text such as `9 in`, `3/8 in`,
 * `1 1/2"`, `320 F`, `2 h`, `200 psi`, `40 %`. Gives it in the program's internal unit (mm, rad, rpm, C, s, Pa, N,
 * kg, kg/m3, J/mol, m2/s, ratio). Anything else gives a fault that shows the text and what would be accepted.
 */
export function readQuantity(written: number | string, kindName: KindName): Quantity {
  const kind: QuantityKind = quantityKinds[kindName];
  if (typeof written === 'number') {
    const bare = bareUnit(kind);
    return bare ? { value: inUnit({ num: written, den: 1 }, bare) } : unitNeeded(String(written), kind);
  }
  const shown = shorten(written.trim());
  if (written.length > longest) return unreadable(shown, kind);
  const text = plainSigns(written);
  if (/^[-+]?\d*,\d/.test(text)) return decimalComma(shown, text);
  const both = kindName === 'time' ? /^(.*[a-z])\s*(\d.*)$/i.exec(text) : null;
  if (!both) return readOne(text, shown, kind);
  const first = readOne(both[1], shown, kind);
  const second = readOne(both[2], shown, kind);
  if ('fault' in first) return first;
  return 'fault' in second ? second : { value: first.value + second.value };
}

/** The units and examples a kind accepts, for messages and for the descriptions in the schema. */
export function whatIsAccepted(kindName: KindName): string {
  return accepted(quantityKinds[kindName]);
}

function readOne(text: string, shown: string, kind: QuantityKind): Quantity {
  const number = leadingNumber(text);
  if (!number) return unreadable(shown, kind);
  const written = text.slice(number.length).trim();
  if (written === '') {
    // Nobody measures in eighths of a millimeter.
    if (number.den > 1 && kind === quantityKinds.length && text.includes('/')) return bareFraction(text);
    const bare = bareUnit(kind);
    return bare ? { value: inUnit(number, bare) } : unitNeeded(shown, kind);
  }
  const unit = unitNamed(written, kind);
  return unit ? { value: inUnit(number, unit) } : wrongUnit(shown, written, kind);
}

/** A number as num / den, both exact where the text is short enough for that. */
interface Fraction {
  readonly num: number;
  readonly den: number;
}

/** The number a text begins with (`1 1/2`, `1-1/2`, `3/8`, `12.5`, `1e-7`) and how much of the text it takes. */
function leadingNumber(text: string): (Fraction & { readonly length: number }) | undefined {
  const broken = /^([-+]?)(?:(\d{1,15})[ -]+)?(\d{1,9}) ?\/ ?(\d{1,9})(?![\d.])/.exec(text);
  if (broken) {
    const den = Number(broken[4]);
    if (den === 0) return undefined;
    const num = Number(broken[2] ?? 0) * den + Number(broken[3]);
    return { num: broken[1] === '-' ? -num : num, den, length: broken[0].length };
  }
  const decimal = /^([-+]?)(\d*)(?:\.(\d*))?(?:e([-+]?\d{1,3}))?(?![\d.,])/i.exec(text);
  if (!decimal || (!decimal[2] && !decimal[3])) return undefined;
  const digits = decimal[3] ?? '';
  const power = digits.length - Number(decimal[4] ?? 0);
  const whole = Number(`${decimal[1]}${decimal[2]}${digits}`);
  // Powers of ten up to 22 are exact in a double; beyond that the parser of the language rounds better than we would.
  if (power < 0 || power > 22 || !Number.isSafeInteger(whole)) {
    const value = Number(decimal[0]);
    return Number.isFinite(value) ? { num: value, den: 1, length: decimal[0].length } : undefined;
  }
  return { num: whole, den: 10 ** power, length: decimal[0].length };
}

function inUnit({ num, den }: Fraction, unit: PlanUnit): number {
  const [shiftNum, shiftDen] = unit.shift ?? [0, 1];
  const above = num * shiftDen - shiftNum * den;
  const value = (above * unit.num) / (den * shiftDen * unit.den);
  return value === 0 ? 0 : value;
}

const bareUnit = (kind: QuantityKind): PlanUnit | undefined =>
  kind.units.find((unit) => unit.name === kind.bare);

function unitNamed(written: string, kind: QuantityKind): PlanUnit | undefined {
  const same = (a: string) => (b: string) => a === b;
  const spelled = (test: (name: string) => boolean): PlanUnit | undefined =>
    kind.units.find((unit) => [unit.name, ...(unit.also ?? [])].some((name) => name !== '' && test(name)));
  const exact = spelled(same(written));
  if (exact || kind.exactCase) return exact;
  return spelled((name) => name.toLowerCase() === written.toLowerCase());
}

/** Typographic signs as the plain ones the parser knows; `½` becomes ` 1/2`. */
function plainSigns(text: string): string {
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${sign.normalize('NFKC')}`)
    .replace(/\u2044/g, '/')
    .replace(/[\u2212\u2012\u2013]/g, '-')
    .replace(/[\u2033\u201d\u201c]/g, '"')
    .replace(/\u00b0\s*(?=[CFK]\b)/gi, '')
    .replace(/\u00b0/g, 'deg')
    .replace(/[\u00b5\u03bc](?=m\b)/g, 'u')
    .replace(/\u00b2/g, '2')
    .replace(/\u00b3/g, '3')
    .replace(/\s+/g, ' ')
    .trim();
}

const shorten = (text: string): string => (text.length > longest ? `${text.slice(0, longest)}...` : text);

function accepted(kind: QuantityKind): string {
  const units = kind.units.map((unit) => unit.name).filter((name) => name !== '');
  const examples = kind.examples.map((example) => `\`${example}\``);
  const bare = kind.bare ? ` (a bare number is ${kind.bare})` : '';
  return `${units.join(', ')}${bare}, such as ${examples.join(' or ')}`;
}

const wanted = (given: string, kind: QuantityKind) => ({ given, noun: kind.noun, accepted: accepted(kind) });

const unreadable = (shown: string, kind: QuantityKind): Quantity =>
  fault('plan.quantity', { which: 'quantity', ...wanted(shown, kind) });

const bareFraction = (text: string): Quantity =>
  fault('plan.quantity', { which: 'bare fraction', given: text, meant: `${text} in` });

const unitNeeded = (shown: string, kind: QuantityKind): Quantity =>
  fault('plan.wrong-unit', { which: 'none', ...wanted(shown, kind) });

function wrongUnit(shown: string, unit: string, kind: QuantityKind): Quantity {
  const other = Object.values<QuantityKind>(quantityKinds).find((candidate) => unitNamed(unit, candidate));
  return fault('plan.wrong-unit', {
    which: other ? 'other' : 'unknown',
    ...wanted(shown, kind),
    unit,
    other: other?.noun.replace(/^an? /, ''),
  });
}

const decimalComma = (shown: string, text: string): Quantity =>
  fault('plan.decimal-comma', { which: 'number', given: shown, meant: text.replace(',', '.') });
