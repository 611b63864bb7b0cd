import type { Document } from 'yaml';
import type { Finding, TextPlace, UnitSystem } from '../findings/index.ts';
import { crossCheck } from './cross-check.ts';
import { type Plan, placeInText } from './plan.ts';
import type { PlanPath } from './plan-tree.ts';
import { readBySchema, theFirst } from './read-by-schema.ts';
import { planSchema } from './schema.ts';
import { planNames } from './schema-at.ts';
import { systemOf } from './unit-system.ts';

/** The text a plan was read from: to rewrite it with comments and order kept, and to find places in it. */
export interface PlanText {
  readonly document: Document.Parsed;
  /** Place of the value at a path such as `['placements', 2, 'sink']`, or of the nearest thing round it. */
  spotAt(path: PlanPath): TextPlace;
}

export interface PlanReading {
  /** Left out when a finding is a stop. */
  readonly plan?: Plan;
  /** Left out when the text is no YAML. */
  readonly source?: PlanText;
  readonly findings: Finding[];
  /** The system the person reads: as the plan says, else the one it gives the disc's diameter in. */
  readonly units: UnitSystem;
}

/** The plan's text again after changes to its document: comments, order and line breaks are kept. */
export const writePlan = ({ document }: Pick<PlanText, 'document'>): string =>
  document.toString({ lineWidth: 0 });

/**
 * Reads a plan: bytes or text (UTF-8, YAML 1.2, at most 250 kB) to a checked Plan in internal units. Whatever is wrong
 * with it is a finding with line and column; it never throws on bad input, and its time is bounded. `fileName` is
 * only shown. Plans with a stop give no Plan.
 */
export function readPlan(text: string | Uint8Array, fileName: string): PlanReading {
  const {
    value,
    read,
    findings: told,
  } = readBySchema(text, fileName, { schema: planSchema, names: planNames });
  if (!read) return { findings: told, units: 'metric' };
  const { tree, document } = read;
  const units = systemOf(tree.value);
  const plan = value && placeInText(value, tree, units);
  const findings = plan ? [...told, ...crossCheck(plan, tree)] : told;
  const stopped = findings.some(({ severity }) => severity === 'stop');
  return {
    ...(plan && !stopped && { plan }),
    source: { document, spotAt: tree.spotAt },
    findings: theFirst(findings),
    units,
  };
}
