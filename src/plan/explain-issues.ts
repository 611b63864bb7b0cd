import type { z } from 'zod';
import { type Finding, type FindingCode, finding, type TextSpot } from '../findings/index.ts';
import { nearestName } from './nearest-name.ts';
import { type PlanPath, type PlanTree, sayPath } from './plan-tree.ts';
import { descriptionAt, namesAt } from './schema-at.ts';
import { type IssueParams, sayBadId } from './sections/fields.ts';

type Issue = z.core.$ZodIssue;

/** What the schema found wrong, as findings with their place in the text; each fault once. */
export function explainIssues(issues: readonly Issue[], tree: PlanTree): Finding[] {
  const explained = issues.flatMap((issue) => explain(issue, [], tree));
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

function explain(issue: Issue, before: PlanPath, tree: PlanTree): Explained[] {
  const path = [...before, ...issue.path];
  const one = (code: FindingCode, says: string, at: TextSpot = tree.spotAt(path)): Explained[] => [
    { path, finding: finding(code, { subject: sayPath(path), says, at }) },
  ];
  if (issue.code === 'custom') {
    const { code, says } = issue.params as unknown as IssueParams;
    // What is missing or said twice is told at its name, a bad value at the value.
    const atName = code === 'plan.missing' || code === 'plan.choose-one';
    return one(code, sentence(says), atName ? tree.keySpotAt(path) : tree.spotAt(path));
  }
  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownName(key, path, tree));
  if (issue.code === 'invalid_key') {
    return one('plan.bad-id', sentence(sayBadId(String(path.at(-1)))), tree.keySpotAt(path));
  }
  if (!tree.has(path)) return one('plan.missing', sayMissing(path), tree.keySpotAt(path));
  if (issue.input === null) return one('plan.missing', sayEmpty(path), tree.keySpotAt(path));
  switch (issue.code) {
    case 'invalid_union':
      return explainUnion(issue, path, tree) ?? one('plan.wrong-kind', sayWrongKind(issue.input, path));
    case 'invalid_value':
      return [wrongWord(issue, path, tree)];
    case 'too_small':
    case 'too_big':
      return one('plan.out-of-range', sayOutOfRange(issue));
    default:
      return one('plan.wrong-kind', sayWrongKind(issue.input, path, wanted(issue)));
  }
}

/** Of several ways to write a thing, the one that was meant: the only one that does not fail as a whole. */
function explainUnion(
  issue: z.core.$ZodIssueInvalidUnion,
  path: PlanPath,
  tree: PlanTree,
): Explained[] | undefined {
  const failsWhole = (found: readonly Issue[]): boolean =>
    found.some((one) => {
      if (one.path.length > 0) return false;
      if (one.code === 'invalid_union') return one.errors.every(failsWhole);
      return one.code === 'invalid_type' || one.code === 'invalid_value';
    });
  const meant = issue.errors.filter((found) => !failsWhole(found));
  return meant.length === 1 ? meant[0].flatMap((inner) => explain(inner, path, tree)) : undefined;
}

function unknownName(key: string, section: PlanPath, tree: PlanTree): Explained {
  const known = namesAt(section);
  const meant = nearestName(key, known);
  const where = section.length === 0 ? 'in a plan' : `in \`${sayPath(section)}\``;
  const hint = meant ? `did you mean \`${meant}\`?` : `known are ${known.join(', ')}.`;
  const path = [...section, key];
  return {
    path,
    meant,
    finding: finding('plan.unknown-key', {
      subject: sayPath(path),
      says: `\`${clip(key)}\` is not known ${where}; ${hint}`,
      ...(meant && { remedy: `Write \`${meant}\` if that is meant; known are ${known.join(', ')}.` }),
      at: tree.keySpotAt(path),
    }),
  };
}

function wrongWord(issue: z.core.$ZodIssueInvalidValue, path: PlanPath, tree: PlanTree): Explained {
  const words = issue.values.map(String);
  const meant = typeof issue.input === 'string' ? nearestName(issue.input, words) : undefined;
  return {
    path,
    finding: finding('plan.wrong-word', {
      subject: sayPath(path),
      says: `${show(issue.input)} is not understood here; allowed: ${words.join(', ')}.`,
      ...(meant && { remedy: `Write \`${meant}\` if that is meant.` }),
      at: tree.spotAt(path),
    }),
  };
}

const sayMissing = (path: PlanPath): string =>
  sentence(`\`${String(path.at(-1))}\` is not given${describe(path)}`);

const sayEmpty = (path: PlanPath): string =>
  sentence(`\`${sayPath(path)}\` is empty; give it or take its name out${describe(path)}`);

function sayWrongKind(input: unknown, path: PlanPath, want?: string): string {
  const given = `\`${sayPath(path)}\` is ${show(input)}`;
  return sentence(
    want ? `${given}, but must be ${want}${describe(path)}` : `${given}, which does not fit${describe(path)}`,
  );
}

function sayOutOfRange(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig): string {
  const [bound, side] = issue.code === 'too_small' ? [issue.minimum, 'at least'] : [issue.maximum, 'at most'];
  if (issue.origin === 'string') {
    return bound === 1 ? 'The text is empty.' : `The text is too long; allowed are ${side} ${bound} letters.`;
  }
  if (issue.origin === 'array') return `The list must have ${side} ${bound} entries.`;
  return `${show(issue.input)} is out of range; allowed is ${side} ${bound}.`;
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

const describe = (path: PlanPath): string => {
  const description = descriptionAt(path);
  return description ? `: ${description}` : '';
};

function show(input: unknown): string {
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object' && input !== null) return 'a section';
  return `\`${clip(String(input))}\``;
}

const sentence = (text: string): string => {
  const first = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$/.test(first) ? first : `${first}.`;
};

const clip = (text: string): string => (text.length > 60 ? `${text.slice(0, 60)}...` : text);
