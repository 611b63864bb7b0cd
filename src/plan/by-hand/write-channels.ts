import { isSeq } from 'yaml';
import { toDegrees } from '../../geometry/index.ts';
import { expandPlacements, placementsNamed } from '../expand-placements.ts';
import type { Plan, PlanChannel } from '../plan.ts';
import { planDocument } from '../plan-document.ts';
import { endOfValue } from '../vary/add-to-plan.ts';
import {
  type Edited,
  type EditFault,
  editPlan,
  fieldAt,
  insertBehind,
  splice,
  withoutItem,
} from './splice.ts';
import { writeAngle, writeLength } from './written.ts';

/** An entry to be written, and what is said of it in a comment behind it. */
interface NewChannel {
  readonly channel: PlanChannel;
  readonly why: string;
}

/** What becomes of one list: which placements each of its entries keeps, in their order, and what comes behind them. */
export interface ListChange {
  readonly keeps: readonly (readonly string[])[];
  readonly more: readonly NewChannel[];
}

/** The plan's text with other gates and vents. Entries that keep all their placements stay as they are, and so do comments. */
export const writeChannels = (
  text: string,
  changes: Readonly<Record<'gates' | 'vents', ListChange>>,
): Edited =>
  editPlan(text, ({ plan }) => {
    let edited = text;
    for (const section of ['gates', 'vents'] as const) {
      const next = writeSection(edited, plan, section, changes[section]);
      if (typeof next !== 'string') return next;
      edited = next;
    }
    return edited;
  });

function writeSection(
  text: string,
  plan: Plan,
  section: 'gates' | 'vents',
  { keeps, more }: ListChange,
): string | EditFault {
  const list = plan[section];
  const items = more.map(({ channel, why }) => `${entryText(plan, channel)} # ${why}`);
  if (list === undefined || list === 'straight' || list.length === 0) {
    if (more.length === 0) return text;
    const plain = [...new Set(keeps.flat())];
    const rest = plain.length > 0 ? [`{ placements: ${namesText(plan, plain)} }`] : [];
    return wholeSection(text, section, [...rest, ...items]);
  }
  const behind = more.length > 0 ? behindLast(text, section, list.length - 1, items) : text;
  let edited: string | EditFault = behind;
  for (let i = list.length - 1; i >= 0 && typeof edited === 'string'; i--) {
    const named = new Set(
      list[i].placements.flatMap((name) => placementsNamed(expandPlacements(plan), name)),
    );
    const left = keeps[i];
    if (left.length === named.size) continue;
    edited = narrowed(edited, plan, section, i, left);
  }
  return edited;
}

/** Where there is no list yet: one under the section's name. */
function wholeSection(text: string, section: string, items: readonly string[]): string | EditFault {
  const lines = items.map((item) => `\n  - ${item}`).join('');
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const field = fieldAt({ text, document: parsed.document }, [], section);
  if (!field) return `${text.replace(/\n*$/, '\n')}\n${section}:${lines}\n`;
  // What is said behind it in a comment goes behind the first of the list.
  const start = field.value.range?.[0] ?? field.to;
  const name = text.slice(0, start).trimEnd();
  return splice(text, name.length, field.to, lines);
}

function behindLast(
  text: string,
  section: string,
  last: number,
  items: readonly string[],
): string | EditFault {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const seq = parsed.document.getIn([section], true);
  // A comment would take the rest of a line in brackets.
  const bare = isSeq(seq) && seq.flow ? items.map((item) => item.slice(0, item.lastIndexOf(' # '))) : items;
  return insertBehind(text, [section], last, bare);
}

/** One entry for fewer placements, or none of it. */
export function narrowed(
  text: string,
  plan: Plan,
  section: string,
  i: number,
  left: readonly string[],
): string | EditFault {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const draft = { text, document: parsed.document };
  if (left.length === 0) return withoutItem(draft, [section], i);
  const field = fieldAt(draft, [section, i], 'placements');
  const start = field?.value.range?.[0];
  if (!field || start === undefined) return { fault: `${section}.${i} cannot be changed here.` };
  return splice(text, start, endOfValue(field.value), namesText(plan, left));
}

/** Placements by the name of their entry where all of it is meant. */
function namesText(plan: Plan, ids: readonly string[]): string {
  const flat = expandPlacements(plan);
  const wanted = new Set(ids);
  const names = flat
    .filter(({ id }) => wanted.has(id))
    .map(({ id, group }) => (placementsNamed(flat, group).every((one) => wanted.has(one)) ? group : id));
  return `[${[...new Set(names)].join(', ')}]`;
}

function entryText(plan: Plan, channel: PlanChannel): string {
  const { width, depth, endWidth, endDepth, section, entry, path, half } = channel;
  const lengths = Object.entries({ width, depth, endWidth, endDepth }).flatMap(([name, mm]) =>
    mm === undefined ? [] : [`${name}: ${writeLength(mm)}`],
  );
  return `{ ${[
    `placements: ${namesText(plan, channel.placements)}`,
    ...(entry ? [`entry: ${placeText(entry)}`] : []),
    ...(typeof path === 'string' ? [`path: ${path}`] : []),
    ...(typeof path === 'object' && 'slantRad' in path
      ? [`path: { slant: ${writeAngle(path.slantRad)} }`]
      : []),
    ...lengths,
    ...(section ? [`section: ${sectionText(section)}`] : []),
    ...(half ? [`half: ${half}`] : []),
  ].join(', ')} }`;
}

function placeText(entry: NonNullable<PlanChannel['entry']>): string {
  if ('end' in entry) return entry.end;
  if ('named' in entry) return entry.named;
  if ('angleRad' in entry) return `{ angle: ${writeAngle(entry.angleRad)} }`;
  return `{ x: ${writeLength(entry.x)}, y: ${writeLength(entry.y)} }`;
}

const sectionText = (section: NonNullable<PlanChannel['section']>): string =>
  section.kind === 'trapezoid' ? `{ trapezoid: ${toDegrees(section.draftRad)} }` : section.kind;
