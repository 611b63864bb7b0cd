import type { z } from 'zod';
import { type CodeValues, type Finding, finding, type TextPlace } from '../findings/index.ts';
import { nearestName } from './nearest-name.ts';
import { type PlanPath, type PlanTree, sayPath } from './plan-tree.ts';
import type { SchemaNames } from './schema-at.ts';
import { badId, type IssueParams } from './sections/fields.ts';

type Issue = z.core.$ZodIssue;

/** The text that is at fault: where its values stand, and what the schema it is written by knows. */
export interface Faulty {
  readonly tree: PlanTree;
  readonly names: SchemaNames;
  /** What it is called where it is no plan: `trial log`. */
  readonly called?: string;
}

/** What the schema found wrong, as findings with their place in the text; each fault once. */
export function explainIssues(issues: readonly Issue[], text: Faulty): Finding[] {
  const explained = issues.flatMap((issue) => explain(issue, [], text));
  const unknown = explained.filter((one) => one.finding.code === 'plan.unknown-key');
  return explained.filter((one) => !followsFrom(one, unknown)).map((one) => one.finding);
}

interface Explained {
  readonly finding: Finding;
  readonly path: PlanPath;
  /** Of an unknown name, the known one it most likely means. */
  readonly meant?: string | undefined;
}

/** Something is missing only because its name is mistyped: one fault, told once. */
function followsFrom({ finding: { code }, path }: Explained, unknown: readonly Explained[]): boolean {
  if (code !== 'plan.missing') return false;
  return unknown.some((one) => {
    const section = sayPath(one.path.slice(0, -1));
    if (section === sayPath(path)) return true;
    return section === sayPath(path.slice(0, -1)) && one.meant === path.at(-1);
  });
}

function explain(issue: Issue, before: PlanPath, text: Faulty): Explained[] {
  const { tree } = text;
  const descriptionOf = (at: PlanPath): string | undefined => describe(text, at);
  const path = [...before, ...issue.path];
  const subject = sayPath(path);
  const one = (found: Finding): Explained[] => [{ path, finding: found }];
  const missing = (which: 'field' | 'empty', name: string): Explained[] =>
    one(
      finding('plan.missing', {
        subject,
        values: { which, name, about: descriptionOf(path) },
        at: tree.keySpotAt(path),
      }),
    );
  if (issue.code === 'custom') {
    const { code, find } = issue.params as unknown as IssueParams;
    // What is missing or said twice is told at its name, a bad value at the value.
    const atName = code === 'plan.missing' || code === 'plan.choose-one';
    return one(find({ subject, at: atName ? tree.keySpotAt(path) : tree.spotAt(path) }));
  }
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownName(key, path, text));
  if (issue.code === 'invalid_key') {
    const values = badId(String(path.at(-1)));
    return one(finding('plan.bad-id', { subject, values, at: tree.keySpotAt(path) }));
  }
  if (!tree.has(path)) return missing('field', String(path.at(-1)));
  if (issue.input === null) return missing('empty', subject);
  const at = tree.spotAt(path);
  switch (issue.code) {
    case 'invalid_union':
      return explainUnion(issue, path, text) ?? one(wrongKind(issue.input, descriptionOf(path), path, at));
    case 'invalid_value':
      return [wrongWord(issue, path, tree)];
    case 'too_small':
    case 'too_big':
      return one(finding('plan.out-of-range', { subject, values: outOfRange(issue), at }));
    default:
      return one(wrongKind(issue.input, descriptionOf(path), path, at, wanted(issue)));
  }
}

/** Of several ways to write a thing, the one that was meant: the only one that does not fail as a whole. */
function explainUnion(
  issue: z.core.$ZodIssueInvalidUnion,
  path: PlanPath,
  text: Faulty,
): Explained[] | undefined {
  const failsWhole = (found: readonly Issue[]): boolean =>
    found.some((one) => {
      if (one.path.length > 0) return false;
      if (one.code === 'invalid_union') return one.errors.every(failsWhole);
      return one.code === 'invalid_type' || one.code === 'invalid_value';
    });
  const meant = issue.errors.filter((found) => !failsWhole(found));
  return meant.length === 1 ? meant[0].flatMap((inner) => explain(inner, path, text)) : undefined;
}

function unknownName(key: string, section: PlanPath, { tree, names, called }: Faulty): Explained {
  const known = names.namesAt(section);
  const meant = nearestName(key, known);
  const path = [...section, key];
  const where = section.length === 0 ? called : sayPath(section);
  const values = { which: 'key', name: clip(key), section: where, meant, known } as const;
  return {
    path,
    meant,
    finding: finding('plan.unknown-key', { subject: sayPath(path), values, at: tree.keySpotAt(path) }),
  };
}

function wrongWord(issue: z.core.$ZodIssueInvalidValue, path: PlanPath, tree: PlanTree): Explained {
  const known = issue.values.map(String);
  const meant = typeof issue.input === 'string' ? nearestName(issue.input, known) : undefined;
  const values = { which: 'word', given: show(issue.input), known, meant } as const;
  return {
    path,
    finding: finding('plan.wrong-word', { subject: sayPath(path), values, at: tree.spotAt(path) }),
  };
}

function wrongKind(
  input: unknown,
  about: string | undefined,
  path: PlanPath,
  at: TextPlace,
  want?: string,
): Finding {
  const subject = sayPath(path);
  const values = { name: subject, given: show(input), wanted: want, about };
  return finding('plan.wrong-kind', { subject, values: { which: 'field', ...values }, at });
}

function outOfRange(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
): CodeValues<'plan.out-of-range'> {
  const [limit, side] =
    issue.code === 'too_small'
      ? ([issue.minimum, 'at least'] as const)
      : ([issue.maximum, 'at most'] as const);
  const bound = Number(limit);
  if (issue.origin === 'string') return { which: bound === 1 ? 'empty text' : 'text', side, bound };
  if (issue.origin === 'array') return { which: 'list', side, bound };
  return { which: 'number', given: show(issue.input), side, allowed: String(limit) };
}

function wanted(issue: Issue): string | undefined {
  if (issue.code === 'not_multiple_of') return 'a whole number';
  if (issue.code !== 'invalid_type') return undefined;
  if (issue.expected === 'string' && typeof issue.input === 'number') {
    return `text (put it in quotes: "${issue.input}")`;
  }
  return kinds[issue.expected] ?? issue.expected;
}

const kinds: Record<string, string> = {
  object: 'a section of names with values',
  record: 'a section of names with values',
  array: 'a list, its entries beginning with a dash',
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
};

/** What the field is, without its full stop. */
const describe = ({ names }: Faulty, path: PlanPath): string | undefined =>
  names.descriptionAt(path)?.replace(/\.$/, '');

function show(input: unknown): string {
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object' && input !== null) return 'a section';
  return `\`${clip(String(input))}\``;
}

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}...` : text);
