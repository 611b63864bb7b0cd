import type { Document } from 'yaml';
import { type Finding, finding, type TextSpot } from '../findings/index.ts';
import { crossCheck } from './cross-check.ts';
import { explainIssues } from './explain-issues.ts';
import { type Plan, placeInText } from './plan.ts';
import { type PlanDocument, planDocument } from './plan-document.ts';
import { planText } from './plan-text.ts';
import { type PlanPath, type PlanTree, planTree } from './plan-tree.ts';
import { planSchema } from './schema.ts';

/** The text a plan was read from: to rewrite it with comments and order kept, and to find places in it. */
export interface PlanSource {
  readonly document: Document.Parsed;
  /** Place of the value at a path such as `['placements', 2, 'sink']`, or of the nearest thing round it. */
  spotAt(path: PlanPath): TextSpot;
}

export interface PlanReading {
  /** Left out when a finding is a stop. */
  readonly plan?: Plan;
  /** Left out when the text is no YAML. */
  readonly source?: PlanSource;
  readonly findings: Finding[];
}

/** The plan's text again after changes to its document: comments, order and line breaks are kept. */
export const writePlan = ({ document }: Pick<PlanSource, 'document'>): string =>
  document.toString({ lineWidth: 0 });

/**
 * Reads a plan: bytes or text (UTF-8, YAML 1.2, at most 250 kB) to a checked Plan in internal units. Whatever is wrong
 * with it is a finding with line and column; it never throws on bad input, and its time is bounded. `fileName` is
 * only shown. Plans with a stop give no Plan.
 */
export function readPlan(text: string | Uint8Array, fileName: string): PlanReading {
  const decoded = planText(text, fileName);
  if ('fault' in decoded) return { findings: [decoded.fault] };
  const parsed = planDocument(decoded.text, fileName);
  if ('fault' in parsed) return { findings: [parsed.fault] };
  const tree = planTree(parsed);
  const source: PlanSource = { document: parsed.document, spotAt: tree.spotAt };
  const { plan, findings } = tree.cutShort ? { findings: [...tree.findings] } : check(tree, parsed);
  const stopped = findings.some(({ severity }) => severity === 'stop');
  return { ...(plan && !stopped && { plan }), source, findings: theFirst(findings.sort(inTextOrder)) };
}

/** Most findings one reading gives: nobody corrects more at a time, and a file that is no plan may have thousands. */
const mostFindings = 100;

function theFirst(findings: Finding[]): Finding[] {
  const more = findings.length - mostFindings;
  if (more <= 0) return findings;
  const shown = findings.slice(0, mostFindings);
  const says = `${more} more faults follow and are not listed.`;
  const at = findings[mostFindings].at;
  return [...shown, finding('plan.more-faults', { subject: 'plan', says, ...(at && { at }) })];
}

function check(tree: PlanTree, { document }: PlanDocument): { plan?: Plan; findings: Finding[] } {
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
  const plan = placeInText(checked.data, tree);
  return { plan, findings: [...tree.findings, ...crossCheck(plan, tree)] };
}

const notASection = (tree: PlanTree, document: Document.Parsed): Finding =>
  finding('plan.wrong-kind', {
    subject: 'plan',
    says: `A plan is a list of names with values, such as \`process: rubber\`, but this is the text \`${String(document.contents?.toJSON()).slice(0, 60)}\`.`,
    at: tree.spotAt([]),
  });

const inTextOrder = ({ at: a }: Finding, { at: b }: Finding): number =>
  (a?.line ?? 0) - (b?.line ?? 0) || (a?.column ?? 0) - (b?.column ?? 0);
