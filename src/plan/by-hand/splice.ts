import { type Document, isCollection, isMap, isScalar, isSeq, type Node, type Pair, visit } from 'yaml';
import type { Finding } from '../../findings/index.ts';
import type { Plan } from '../plan.ts';
import { planDocument } from '../plan-document.ts';
import type { PlanPath } from '../plan-tree.ts';
import { readPlan } from '../read-plan.ts';
import { endOfValue } from '../vary/add-to-plan.ts';
import { withValue } from '../vary/set-in-plan.ts';

/** Why an edit could not be made: in one sentence, or what a plan's reading says of it. */
export interface EditFault {
  readonly fault: string | Finding;
}

/** A plan's text after an edit, or why it could not be made. */
export type Edited = { readonly text: string } | EditFault;

/** A plan in the middle of being edited. */
export interface Draft {
  readonly text: string;
  readonly plan: Plan;
  readonly document: Document.Parsed;
}

/**
 * Makes an edit, and holds what comes of it to the plan's rules: text that could be read stays so, or nothing is
 * changed and the first fault is told.
 */
export function editPlan(text: string, edit: (draft: Draft) => string | EditFault): Edited {
  const parsed = planDocument(text, 'plan');
  const { plan } = readPlan(text, 'plan');
  if ('fault' in parsed || !plan) return { fault: 'The plan cannot be read; correct it first.' };
  const edited = edit({ text, plan, document: parsed.document });
  if (typeof edited !== 'string') return edited;
  const { plan: after, findings } = readPlan(edited, 'plan');
  const stop = findings.find(({ severity }) => severity === 'stop');
  return after ? { text: edited } : { fault: stop ?? 'That would leave no plan.' };
}

export const splice = (text: string, from: number, to: number, by: string): string =>
  text.slice(0, from) + by + text.slice(to);

/** Sets one value after another, each in the text the one before left. */
export function setValues(
  text: string,
  values: readonly { readonly path: PlanPath; readonly value: string }[],
): string | EditFault {
  let edited = text;
  for (const { path, value } of values) {
    const parsed = planDocument(edited, 'plan');
    if ('fault' in parsed) return { fault: parsed.fault };
    const rule = path.at(-1) === 'angle' && parsed.document.getIn(path, true);
    // An angle by rule gives way to the one set by hand.
    const next =
      isMap(rule) && rule.range
        ? splice(edited, rule.range[0], endOfValue(rule), value)
        : withValue(edited, parsed.document, path, value);
    if (next === undefined) return { fault: `${path.map(String).join('.')} cannot be set here.` };
    edited = next;
  }
  return edited;
}

/** The name and value of a field as they stand in the text. */
export interface Field {
  readonly from: number;
  /** Behind the value; comments behind it not counted. */
  readonly to: number;
  readonly value: Node;
  /** Whether it stands within braces on one line. */
  readonly flow: boolean;
  /** Column of the name. */
  readonly indent: number;
}

export function fieldAt(
  { document, text }: Pick<Draft, 'document' | 'text'>,
  section: PlanPath,
  name: string,
): Field | undefined {
  const map = document.getIn(section, true);
  if (!isMap(map)) return undefined;
  const pair = map.items.find(({ key }) => isScalar(key) && key.value === name) as
    | Pair<Node, Node | null>
    | undefined;
  if (!pair?.value || !pair.key.range) return undefined;
  const from = pair.key.range[0];
  return {
    from,
    to: endOfValue(pair.value),
    value: pair.value,
    flow: map.flow === true,
    indent: from - (text.lastIndexOf('\n', from - 1) + 1),
  };
}

/** The comments within a value, which are kept when it is written anew. */
export function commentsIn(node: Node): string[] {
  const found: string[] = [];
  const take = (comment: string | null | undefined): void => {
    if (comment) found.push(...comment.split('\n').map((line) => `#${line}`));
  };
  visit(node, (_, inner) => {
    if (isScalar(inner) || isCollection(inner)) {
      take(inner.commentBefore);
      take(inner.comment);
    }
  });
  return found;
}

/** The text with more items behind one of a list; what is said of that one in comments stays with it. */
export function insertBehind(
  text: string,
  list: PlanPath,
  index: number,
  items: readonly string[],
): string | EditFault {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const seq = parsed.document.getIn(list, true);
  const item = isSeq<Node>(seq) ? seq.items[index] : undefined;
  if (!isSeq(seq) || !item?.range) return { fault: `${list.map(String).join('.')} is no list here.` };
  const end = endOfValue(item);
  if (seq.flow) return splice(text, end, end, items.map((one) => `, ${one}`).join(''));
  const start = item.range[0];
  const column = start - (text.lastIndexOf('\n', start - 1) + 1);
  const dash = text.lastIndexOf('-', start - 1);
  const indent = ' '.repeat(dash - (text.lastIndexOf('\n', dash) + 1));
  let at = lineEnd(text, end - 1);
  // Comments under it, as far in as it is.
  while (/^ *#/.test(text.slice(at + 1)) && text.slice(at + 1).search(/#/) >= column)
    at = lineEnd(text, at + 1);
  return splice(text, at, at, items.map((one) => `\n${indent}- ${one}`).join(''));
}

/** Where the line ends that a place is in. */
function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
}

/** The text without one item of a list; without the last one an empty list is left. */
export function withoutItem(
  draft: Pick<Draft, 'document' | 'text'>,
  list: PlanPath,
  index: number,
): string | EditFault {
  const { document, text } = draft;
  const seq = document.getIn(list, true);
  if (!isSeq(seq) || !seq.range) return { fault: `${list.map(String).join('.')} is no list here.` };
  const item = seq.items[index] as Node;
  const next = seq.items[index + 1] as Node | undefined;
  const start = item.range?.[0] ?? 0;
  const end = endOfValue(item);
  if (seq.items.length === 1) {
    const from = seq.flow ? start : text.lastIndexOf('-', start - 1);
    return splice(text, from, end - (text[end - 1] === '\n' ? 1 : 0), seq.flow ? '' : '[]');
  }
  if (!seq.flow) {
    const dash = text.lastIndexOf('-', start - 1);
    const from = text.lastIndexOf('\n', dash) + 1;
    const lineEnd = text.indexOf('\n', end - 1);
    return splice(text, from, lineEnd < 0 ? text.length : lineEnd + 1, '');
  }
  if (next?.range) {
    const between = text.slice(end, next.range[0]);
    return splice(text, start, between.includes('#') ? end + between.indexOf(',') + 1 : next.range[0], '');
  }
  return splice(text, endOfValue(seq.items[index - 1] as Node), end, '');
}
