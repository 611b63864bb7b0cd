import { catalogue, type FindingCode } from './catalogue.ts';

/** stop: must not be used as it is; warn: likely to spoil a casting; note: worth knowing. */
export type Severity = 'stop' | 'warn' | 'note';

/** Units findings and figures are given in; shells show mm also as inch, C also as F, g also as oz. */
export const units = [
  'mm',
  'mm2',
  'mm3',
  'deg',
  'g',
  'g.mm',
  'kg',
  'N',
  'Pa',
  'C',
  's',
  'rpm',
  'm/s',
  'bytes',
  'count',
  'ratio',
  'times',
] as const;
export type Unit = (typeof units)[number];

export interface Measured {
  readonly value: number;
  readonly unit: Unit;
}

/** A place in a text the user wrote; line and column count from 1. */
export interface TextSpot {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** A fault or remark about the user's plan, masters or mold. Data, never an exception. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** Id of what it is about: a placement, a master, a solid, a plan section, or `mold`. */
  readonly subject: string;
  /** Place in the mold frame (or the master's own frame for mesh findings), mm. */
  readonly place?: readonly [number, number, number];
  readonly measured?: Measured;
  readonly limit?: Measured;
  /** One sentence: what is wrong, with the numbers. */
  readonly says: string;
  /** One sentence: what to do. */
  readonly remedy: string;
  readonly at?: TextSpot;
  /** Where the plan takes it more or less seriously than is usual: what it was, and the plan's reason. */
  readonly changed?: { readonly from: Severity; readonly reason: string };
}

export type FindingDetails = Omit<Finding, 'code' | 'severity' | 'remedy'> & {
  readonly remedy?: string;
  /** Only where one code is met in a milder or graver degree. */
  readonly severity?: Severity;
};

/** Makes a finding of a known code; severity and remedy come from the catalogue unless given. */
export function finding(code: FindingCode, details: FindingDetails): Finding {
  const entry = catalogue[code];
  return {
    ...details,
    code,
    severity: details.severity ?? entry.severity,
    remedy: details.remedy ?? entry.remedy,
  };
}

const gravity: Record<Severity, number> = { stop: 0, warn: 1, note: 2 };

/** Worst first; within one severity by code, then subject. */
export const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) =>
      gravity[a.severity] - gravity[b.severity] || compare(a.code, b.code) || compare(a.subject, b.subject),
  );

// Not localeCompare: the order must not depend on the machine's language.
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
