import { Document, isSeq } from 'yaml';
import { type Plan, readBySchema } from '../plan/index.ts';
import { cutsByPour } from './changes.ts';
import { cutNow } from './cut-now.ts';
import { type TrialLog, trialLog } from './log-schema.ts';

/** A pour as a person writes it: values with their units, in the order of the log's columns. */
export interface PourWritten {
  readonly pour: number;
  readonly date?: string;
  readonly metal?: string;
  readonly mold?: string;
  readonly speed?: string;
  readonly shot?: string;
  readonly talc?: string;
  readonly cavities?: Readonly<Record<string, SeenWritten>>;
  readonly others?: 'good';
  readonly changed?: string;
  readonly note?: string;
}

export type SeenWritten =
  | string
  | { readonly came: string; readonly where?: string | { x: string; y: string }; readonly missing?: string };

/**
 * The log's text with one more pour behind the others, and comments kept. Gates and vents are written as the plan has
 * them, where they are other than at the pour before. `text` must be a log that reads without a stop, or nothing yet.
 */
export function withPour(text: string | undefined, pour: PourWritten, plan: Plan): string {
  const reading = readBySchema(text ?? 'pours: []', 'trials', trialLog);
  if (!reading.value || !reading.read) throw new RangeError('a log that cannot be read is not added to');
  const document = text === undefined ? startOf() : reading.read.document;
  const cut = cutNow(plan);
  const before = cutsByPour(reading.value).at(-1);
  const same = before !== undefined && JSON.stringify(before) === JSON.stringify(cut);
  const pours = document.get('pours', true);
  if (!isSeq(pours)) throw new RangeError('a log has a list of pours');
  pours.flow = false;
  pours.items.push(asNode(document, { ...pour, ...(!same && { cut: cut.map(inMm) }) }));
  return document.toString({ lineWidth: 0 });
}

/** The log's text without its last pour, comments elsewhere kept; undefined where there is none. */
export function withoutLast(text: string): string | undefined {
  const { value, read } = readBySchema(text, 'trials', trialLog);
  const pours = read?.document.get('pours', true);
  if (!value || !read || !isSeq(pours) || pours.items.length === 0) return undefined;
  pours.items.pop();
  if (pours.items.length === 0) pours.flow = true;
  return read.document.toString({ lineWidth: 0 });
}

const startOf = (): Document => {
  const document = new Document({ pours: [] });
  document.commentBefore = ' What came of each pour. Correct and add by hand as you like; comments are kept.';
  return document;
};

/** Numbers in mm, their unit with them. */
const inMm = ({ width, depth, ...rest }: NonNullable<TrialLog['pours'][number]['cut']>[number]) => ({
  ...rest,
  ...(width !== undefined && { width: mm(width) }),
  ...(depth !== undefined && { depth: mm(depth) }),
});

const mm = (value: number): string => `${Number(value.toFixed(4))} mm`;

/** A pour on lines of its own, what belongs to one cavity or one cut on one line. */
function asNode(document: Document, pour: object) {
  const node = document.createNode(pour);
  for (const name of ['cavities', 'cut']) {
    const inner = (node as { get(key: string, keep: true): unknown }).get(name, true) as
      | { items: { value?: { flow?: boolean }; flow?: boolean }[] }
      | undefined;
    for (const item of inner?.items ?? []) {
      const held = item.value ?? item;
      if ('items' in held) held.flow = true;
    }
  }
  return node;
}
