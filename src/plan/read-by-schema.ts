import type { Document } from 'yaml';
import type { z } from 'zod';
import { type Finding, finding } from '../findings/index.ts';
import { explainIssues } from './explain-issues.ts';
import { planDocument } from './plan-document.ts';
import { planText } from './plan-text.ts';
import { type PlanTree, planTree } from './plan-tree.ts';
import type { SchemaNames } from './schema-at.ts';

/** A kind of text file: what it holds, and what is known of its fields. */
export interface TextKind<T> {
  readonly schema: z.ZodType<T>;
  readonly names: SchemaNames;
  /** What it is called where it is no plan: `trial log`. */
  readonly called?: string;
}

export interface TextReading<T> {
  /** Left out when the schema finds a fault. */
  readonly value?: T;
  /** Left out when the text is no YAML. */
  readonly read?: { readonly text: string; readonly document: Document.Parsed; readonly tree: PlanTree };
  readonly findings: Finding[];
}

/**
 * Reads YAML by a schema: bytes or text (UTF-8, YAML 1.2, at most 250 kB). Whatever is wrong is a finding with line and
 * column; it never throws on bad input, and its time is bounded.
 */
export function readBySchema<T>(
  source: string | Uint8Array,
  fileName: string,
  kind: TextKind<T>,
): TextReading<T> {
  const decoded = planText(source, fileName);
  if ('fault' in decoded) return { findings: [decoded.fault] };
  const parsed = planDocument(decoded.text, fileName);
  if ('fault' in parsed) return { findings: [parsed.fault] };
  const { document } = parsed;
  const tree = planTree(parsed);
  const read = { text: decoded.text, document, tree };
  const told = tree.findings.length === 0 && typeof tree.value !== 'object' ? [notASection(read)] : undefined;
  if (told || tree.cutShort) return { read, findings: told ?? [...tree.findings] };
  const checked = kind.schema.safeParse(tree.value, { reportInput: true });
  if (checked.success) return { value: checked.data, read, findings: [...tree.findings] };
  const explained = explainIssues(checked.error.issues, { tree, ...kind });
  // An alias without an anchor is a fault already told; the schema only meets the gap it left.
  const gaps = tree.findings.filter(({ code }) => code === 'plan.alias').map(({ subject }) => subject);
  return {
    read,
    findings: [...tree.findings, ...explained.filter(({ subject }) => !gaps.includes(subject))],
  };
}

const notASection = ({ document, tree }: { document: Document.Parsed; tree: PlanTree }): Finding =>
  finding('plan.wrong-kind', {
    subject: 'plan',
    values: { which: 'plan', given: String(document.contents?.toJSON()).slice(0, 60) },
    at: tree.spotAt([]),
  });

/** Most findings one reading gives: nobody corrects more at a time, and a file of another kind may have thousands. */
const mostFindings = 100;

/** In the order of the text, and no more than anybody corrects at a time. */
export function theFirst(all: readonly Finding[]): Finding[] {
  const findings = [...all].sort(inTextOrder);
  const more = findings.length - mostFindings;
  if (more <= 0) return findings;
  const { at } = findings[mostFindings];
  return [
    ...findings.slice(0, mostFindings),
    finding('plan.more-faults', { subject: 'plan', values: { more }, ...(at && { at }) }),
  ];
}

const inTextOrder = ({ at: a }: Finding, { at: b }: Finding): number =>
  (a?.line ?? 0) - (b?.line ?? 0) || (a?.column ?? 0) - (b?.column ?? 0);
