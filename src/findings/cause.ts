import { entryOf } from './catalogue.ts';
import { type Finding, groupAlike } from './finding.ts';

/** Findings of one code with one cause: of the copies of one master, boss or pair of them, and worded alike. */
export interface Cause {
  /** The farthest from what is wanted; the first of several that are as far. */
  readonly worst: Finding;
  /** All of them, in their order. */
  readonly findings: readonly Finding[];
}

/** For each code, worst first, its causes in the order they come up in. */
export const causesByCode = (findings: readonly Finding[]): Cause[][] => groupAlike(findings).map(causesOf);

function causesOf(alike: readonly Finding[]): Cause[] {
  const causes = new Map<string, Finding[]>();
  for (const one of alike) {
    const key = causeKey(one);
    causes.set(key, [...(causes.get(key) ?? []), one]);
  }
  return [...causes.values()].map((findings) => ({
    worst: findings.reduce((worst, one) => (missedBy(one) > missedBy(worst) ? one : worst)),
    findings,
  }));
}

/** A name without the number of its entry: `bosses.size` of `bosses#2.size`. */
const unnumbered = (name: string): string => name.replaceAll(/#\d+/g, '');

/** A name without the number that tells copies apart: `leaf` of `leaf-12`. */
const stem = (name: string): string => unnumbered(name).replace(/-\d+$/, '');

/** Values that name a second thing, of which there are copies too. */
const others: readonly string[] = ['one', 'other'];

function causeKey({ code, subject, at, values, changed }: Finding): string {
  const kinds = entryOf(code).values ?? {};
  const words = Object.entries(values).flatMap(([name, value]) => {
    if (others.includes(name) && typeof value === 'string') return [[name, stem(value)]];
    const declared: unknown = name in kinds ? kinds[name as keyof typeof kinds] : undefined;
    if (typeof value === 'string') return [[name, unnumbered(value)]];
    return declared === 'names' ? [[name, value]] : [];
  });
  return JSON.stringify([stem(subject), at?.file, words, changed]);
}

/** How far it is from its limit, or from nothing at all where it has none; no measure where it is not measured. */
function missedBy({ values: { measured, limit } }: Finding): number {
  const [found, wanted] = [plainNumber(measured), plainNumber(limit)];
  return found === undefined ? 0 : Math.abs(found - (wanted ?? 0));
}

function plainNumber(value: Finding['values'][string] | undefined): number | undefined {
  if (typeof value === 'number') return value;
  return typeof value === 'object' && 'unit' in value ? value.value : undefined;
}
