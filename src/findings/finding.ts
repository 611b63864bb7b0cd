import { type catalogue, entryOf, type FindingCode } from './catalogue.ts';
import { type Severity, severities } from './severity.ts';
import type { FindingValue, ValueKinds, ValuesOf } from './value.ts';

/** A place in a text the user wrote; line and column count from 1. */
export interface TextPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/**
 * A fault or remark about the user's plan, masters or mold. Data, never an exception. Its sentences stand as templates
 * in the catalogue; a shell says them in the person's units (`src/wording`).
 */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Id of what it is about: a placement, a master, a solid, a plan section, or `mold`. */
  readonly subject: string;
  /** Place in the mold frame (or the master's own frame for mesh findings), mm. */
  readonly place?: readonly [number, number, number];
  /** By name, in the units and kinds the catalogue declares for the code. */
  readonly values: Readonly<Record<string, FindingValue>>;
  readonly at?: TextPlace;
  /** Where the plan takes it more or less seriously than is usual: what it was, and the plan's reason. */
  readonly changed?: { readonly from: Severity; readonly reason: string };
}

type Catalogue = typeof catalogue;

/** The keys of a code's tables of sentences. */
type Which<C extends FindingCode> = {
  [K in 'says' | 'remedy']: Catalogue[C][K] extends string ? never : keyof Catalogue[C][K];
}['says' | 'remedy'];

type Chosen<C extends FindingCode> = [Which<C>] extends [never] ? unknown : { readonly which: Which<C> };

type Declared<C extends FindingCode> = Catalogue[C] extends { readonly values: infer V extends ValueKinds }
  ? ValuesOf<V>
  : unknown;

/** The values a finding of this code is made with. */
export type CodeValues<C extends FindingCode> = C extends FindingCode ? Declared<C> & Chosen<C> : never;

/** What a finding is about, whatever its code. */
export type About = Pick<Finding, 'subject' | 'place' | 'at'> & {
  /** Only where one code is met in a milder or graver degree. */
  readonly severity?: Severity;
};

export type FindingDetails<C extends FindingCode> = About &
  (unknown extends CodeValues<C> ? { readonly values?: undefined } : { readonly values: CodeValues<C> });

/** Makes a finding of a known code; its severity comes from the catalogue unless given. */
export function finding<C extends FindingCode>(code: C, details: FindingDetails<C>): Finding {
  return findingWith(code, details.values as CodeValues<C>, details);
}

/** The same where code and values are handed on together. */
export function findingWith<C extends FindingCode>(
  code: C,
  values: CodeValues<C>,
  { subject, place, at, severity }: About,
): Finding {
  // Asked for even where a degree is given: the tests note here which codes were met.
  const { severity: usual } = entryOf(code);
  const given = Object.entries((values ?? {}) as Record<string, FindingValue | undefined>);
  return {
    code,
    severity: severity ?? usual,
    subject,
    ...(place && { place }),
    values: Object.fromEntries(given.filter((pair): pair is [string, FindingValue] => pair[1] !== undefined)),
    ...(at && { at }),
  };
}

/** Worst first; within one severity by code, then in the order they were found, which is that of the plan. */
export const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity) || compare(a.code, b.code),
  );

/** Those of one code and severity together, worst first. */
export function groupAlike(findings: readonly Finding[]): Finding[][] {
  const groups = new Map<string, Finding[]>();
  for (const one of worstFirst(findings)) {
    const key = `${one.severity} ${one.code}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

// Not localeCompare: the order must not depend on the machine's language.
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
