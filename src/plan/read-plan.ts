import type { Document } from 'yaml';
import { type Finding, finding, type TextPlace, type UnitSystem } from '../findings/index.ts';
import { crossCheck } from './cross-check.ts';
import { explainIssues } from './explain-issues.ts';
import { type Plan, placeInText } from './plan.ts';
import { type PlanDocument, planDocument } from './plan-document.ts';
import { planText } from './plan-text.ts';
import { type PlanPath, type PlanTree, planTree } from './plan-tree.ts';
import { planSchema } from './schema.ts';
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
  const decoded = planText(text, fileName);
  if ('fault' in decoded) return { findings: [decoded.fault], units: 'metric' };
  const parsed = planDocument(decoded.text, fileName);
  if ('fault' in parsed) return { findings: [parsed.fault], units: 'metric' };
  const tree = planTree(parsed);
  const source: PlanText = { document: parsed.document, spotAt: tree.spotAt };
  const units = systemOf(tree.value);
  const { plan, findings } = tree.cutShort ? { findings: [...tree.findings] } : check(tree, parsed, units);
  const stopped = findings.some(({ severity }) => severity === 'stop');
  return {
    ...(plan && !stopped && { plan }),
    source,
    findings: theFirst(findings.sort(inTextOrder)),
    units,
  };
}

/** Most findings one reading gives: nobody corrects more at a time, and a file that is no plan may have thousands. */
const mostFindings = 100;

function theFirst(findings: Finding[]): Finding[] {
  const more = findings.length - mostFindings;
  if (more <= 0) return findings;
  const shown = findings.slice(0, mostFindings);
  const { at } = findings[mostFindings];
  return [...shown, finding('plan.more-faults', { subject: 'plan', values: { more }, ...(at && { at }) })];
}

function check(
  tree: PlanTree,
  { document }: PlanDocument,
  units: UnitSystem,
): { plan?: Plan; findings: Finding[] } {
  if (tree.findings.length === 0 && typeof tree.value !== 'object')
    return { findings: [notASection(tree, document)] };
  const checked = planSchema.safeParse(tree.value, { reportInput: true });
  if (!checked.success) {
    const explained = explainIssues(checked.error.issues, tree);
    // An alias without an anchor is a fault already told; the schema only meets the gap it left.
    const gaps = tree.findings.filter(({ code }) => code === 'plan.alias').map(({ subject }) => subject);
    const told = explained.filter(({ subject }) => !gaps.includes(subject));
    return { findings: [...tree.findings, ...told] };
  }
  const plan = placeInText(checked.data, tree, units);
  return { plan, findings: [...tree.findings, ...crossCheck(plan, tree)] };
}

const notASection = (tree: PlanTree, document: Document.Parsed): Finding =>
  finding('plan.wrong-kind', {
    subject: 'plan',
    values: { which: 'plan', given: String(document.contents?.toJSON()).slice(0, 60) },
    at: tree.spotAt([]),
  });

const inTextOrder = ({ at: a }: Finding, { at: b }: Finding): number =>
  (a?.line ?? 0) - (b?.line ?? 0) || (a?.column ?? 0) - (b?.column ?? 0);
