import { type Document, isAlias, isScalar, parseDocument, type Scalar } from 'yaml';
import { nearestName } from '../nearest-name.ts';
import { planDocument } from '../plan-document.ts';
import type { PlanPath } from '../plan-tree.ts';
import { planNames } from '../schema-at.ts';
import { addToPlan } from './add-to-plan.ts';
import type { Setting } from './axis.ts';

const { itemsAt, namesAt, takesAnyName } = planNames;

/**
 * The plan's text with fields set to other values. A value that stands in the text is replaced where it stands, so
 * that lines, comments and order stay as they are; a field that is not there is added. Text that is no plan comes back
 * as it is: reading it says what is wrong. A path that the plan's schema does not know, or a value that is no single
 * word, number or text, gives one sentence.
 */
export function setInPlan(
  text: string,
  settings: readonly Setting[],
): { readonly text: string } | { readonly fault: string } {
  let edited = text;
  for (const { path, value } of settings) {
    const steps = readPath(path);
    if ('fault' in steps) return steps;
    const written = readValue(value);
    if ('fault' in written) return written;
    const parsed = planDocument(edited, 'plan');
    if ('fault' in parsed) return { text: edited };
    const missing = missingItem(parsed.document, steps.path, path);
    if (missing) return missing;
    const changed = withValue(edited, parsed.document, steps.path, asText(value, written));
    if (changed === undefined)
      return { fault: `\`${path}\` cannot be set: a list or another value stands there` };
    edited = changed;
  }
  return { text: edited };
}

/** The text with the value put where the old one stands, or added; undefined where that is no single value. */
export function withValue(
  text: string,
  document: Document.Parsed,
  path: PlanPath,
  value: string,
): string | undefined {
  if (!document.hasIn(path)) return addToPlan(text, document, path, value);
  const node = document.getIn(path, true);
  if (!(isScalar(node) || isAlias(node)) || !node.range) return undefined;
  const [start, end] = node.range;
  // An empty value needs a blank before it; a block of text ends behind its line break, which stays.
  const before = start === end ? ' ' : '';
  const after = text[end - 1] === '\n' && end > start ? '\n' : '';
  return text.slice(0, start) + before + value + after + text.slice(end);
}

/** Quoted where the bare value would end early within `{ }`, or begin a comment. */
const asText = (value: string, { quoted }: { readonly quoted: string }): string =>
  /[,[\]{}#:&*!|>'"%@`]/.test(value) ? quoted : value;

function readValue(value: string): { value: unknown; quoted: string } | { fault: string } {
  const document = parseDocument(value, { schema: 'core', version: '1.2' });
  if (document.errors.length > 0 || !isScalar(document.contents)) {
    return { value, quoted: JSON.stringify(value) };
  }
  const { value: read } = document.contents as Scalar;
  if (read === null) return { fault: 'an empty value sets nothing' };
  return { value: read, quoted: typeof read === 'string' ? JSON.stringify(read) : value };
}

/** A path as steps, names held to the schema; numbers of items count from 1 in the text and from 0 here. */
function readPath(path: string): { path: PlanPath } | { fault: string } {
  const steps: (string | number)[] = [];
  for (const name of path.split('.')) {
    if (itemsAt(steps)) {
      if (!/^[1-9]\d{0,3}$/.test(name)) {
        return { fault: `\`${path}\`: ${steps.join('.')} is a list; name an item by its number, from 1` };
      }
      steps.push(Number(name) - 1);
      continue;
    }
    const known = namesAt(steps);
    if (!known.includes(name) && !takesAnyName(steps))
      return { fault: unknownName(path, name, steps, known) };
    steps.push(name);
  }
  return { path: steps };
}

function unknownName(path: string, name: string, steps: PlanPath, known: readonly string[]): string {
  const where = steps.length === 0 ? 'a plan' : `\`${steps.join('.')}\``;
  if (known.length === 0) return `\`${path}\`: ${where} holds no further names`;
  const near = nearestName(name, known);
  const likely = near === undefined ? endingIn(path.split('.').at(-1) ?? name) : [[...steps, near].join('.')];
  const meant = likely.length === 0 ? '' : ` Did you mean ${likely.map((one) => `\`${one}\``).join(' or ')}?`;
  return `\`${path}\`: there is no \`${name}\` in ${where}; known there: ${known.join(', ')}.${meant}`;
}

/** Deepest field that is looked for by its last name: `sprue.well.depth`. */
const deepest = 3;

/** More guesses than these help nobody. */
const mostMeant = 3;

/** The few fields, not of lists nor of things a person names, whose last name is most like one that stands alone. */
function endingIn(name: string): string[] {
  const all = fieldsUnder([]);
  const near = nearestName(name, [...new Set(all.map((field) => field.at(-1) ?? ''))]);
  const found = all.filter((field) => field.at(-1) === near).sort((a, b) => a.length - b.length);
  return found.slice(0, mostMeant).map((field) => field.join('.'));
}

const fieldsUnder = (above: readonly string[]): string[][] =>
  above.length >= deepest || itemsAt(above) || takesAnyName(above)
    ? []
    : namesAt(above).flatMap((name) => [[...above, name], ...fieldsUnder([...above, name])]);

/** An item of a list, or a master, can be changed only where the plan has it. */
function missingItem(
  document: { getIn(path: Iterable<unknown>, keep?: boolean): unknown },
  path: PlanPath,
  shown: string,
): { fault: string } | undefined {
  for (const [i, step] of path.entries()) {
    const above = path.slice(0, i);
    const mustBe = typeof step === 'number' || takesAnyName(above);
    if (mustBe && document.getIn([...above, step], true) === undefined) {
      const item = typeof step === 'number' ? `item ${step + 1}` : `\`${String(step)}\``;
      return { fault: `\`${shown}\`: the plan has no ${item} in ${above.join('.')}` };
    }
  }
  return undefined;
}
