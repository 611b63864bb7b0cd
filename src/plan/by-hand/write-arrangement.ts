import { isSeq } from 'yaml';
import { expandPlacements } from '../expand-placements.ts';
import type { Plan, PlanChannel } from '../plan.ts';
import { planDocument } from '../plan-document.ts';
import { readPlan } from '../read-plan.ts';
import type { Sink } from '../sections/placements.ts';
import {
  type Edited,
  type EditFault,
  editPlan,
  fieldAt,
  insertBehind,
  splice,
  withoutItem,
} from './splice.ts';
import { type ListChange, writeChannels } from './write-channels.ts';
import { writeAngle, writeLength, writeShare } from './written.ts';

/** Like pieces evenly round the axis, or one, as an entry of the plan, and the gate they get. */
export interface NewPlacement {
  readonly master: string;
  readonly copies: number;
  readonly radius: number;
  readonly angleRad: number;
  readonly turnRad: number;
  readonly sink?: Sink | undefined;
  readonly gate?: Omit<PlanChannel, 'placements' | 'at'> | undefined;
  /** Said behind the gate in a comment. */
  readonly why: string;
}

/**
 * The plan's text with an arrangement: what an earlier one laid goes, unless it is locked, and the new entries come
 * behind all others, each with its gate. Comments and everything else stay.
 */
export const writeArrangement = (text: string, laid: readonly NewPlacement[]): Edited =>
  editPlan(text, ({ plan }) => {
    const bare = withoutEarlier(text, plan);
    if (typeof bare !== 'string') return bare;
    const full = laid.length === 0 ? bare : withEntries(bare, laid);
    if (typeof full !== 'string') return full;
    const { plan: after, findings } = readPlan(full, 'plan');
    if (!after) {
      const [fault] = findings;
      return { fault: fault ?? 'That would leave no plan.' };
    }
    const edited = writeChannels(full, gatesChange(after, laid));
    return 'fault' in edited ? edited : edited.text;
  });

/** From the last to the first, so that those before keep their number; gates that name only them go first. */
function withoutEarlier(text: string, plan: Plan): string | EditFault {
  const entries = plan.placements ?? [];
  const goes = (i: number): boolean => entries[i].arranged === true && entries[i].locked !== true;
  const gone = new Set(expandPlacements(plan).flatMap(({ id, entry }) => (goes(entry) ? [id] : [])));
  if (gone.size === 0) return text;
  const gates = writeChannels(text, {
    gates: keptOf(plan, 'gates', gone),
    vents: keptOf(plan, 'vents', new Set()),
  });
  if ('fault' in gates) return gates;
  let edited: string | EditFault = gates.text;
  for (let i = entries.length - 1; i >= 0 && typeof edited === 'string'; i--) {
    if (!goes(i)) continue;
    const parsed = planDocument(edited, 'plan');
    if ('fault' in parsed) return { fault: parsed.fault };
    edited = withoutItem({ text: edited, document: parsed.document }, ['placements'], i);
  }
  return edited;
}

/** What each entry keeps when some placements leave it. */
function keptOf(plan: Plan, section: 'gates' | 'vents', gone: ReadonlySet<string>): ListChange {
  const flat = expandPlacements(plan);
  const list = plan[section];
  const named = (names: readonly string[]): string[] => [
    ...new Set(
      names.flatMap((name) =>
        flat.filter(({ id, group }) => name === 'all' || id === name || group === name).map(({ id }) => id),
      ),
    ),
  ];
  const entries =
    list === 'straight' ? [flat.map(({ id }) => id)] : (list ?? []).map((one) => named(one.placements));
  return { keeps: entries.map((ids) => ids.filter((id) => !gone.has(id))), more: [] };
}

function withEntries(text: string, laid: readonly NewPlacement[]): string | EditFault {
  const items = laid.map(entryText);
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const draft = { text, document: parsed.document };
  const seq = parsed.document.getIn(['placements'], true);
  if (isSeq(seq) && seq.items.length > 0)
    return insertBehind(text, ['placements'], seq.items.length - 1, items);
  const lines = items.map((item) => `\n  - ${item}`).join('');
  const field = fieldAt(draft, [], 'placements');
  if (!field) return `${text.replace(/\n*$/, '\n')}\nplacements:${lines}\n`;
  const before = text.slice(0, field.value.range?.[0] ?? field.to).trimEnd();
  return splice(text, before.length, field.to, lines);
}

function entryText({ master, copies, radius, angleRad, turnRad, sink }: NewPlacement): string {
  const where =
    copies === 1
      ? `at: { radius: ${writeLength(radius)}, angle: ${writeAngle(angleRad)} }`
      : `ring: { count: ${copies}, radius: ${writeLength(radius)}, start: ${writeAngle(angleRad)} }`;
  const turn = writeAngle(turnRad);
  return `{ ${[
    `master: ${master}`,
    where,
    ...(turn === '0' ? [] : [`turn: ${turn}`]),
    ...(sink === undefined ? [] : [`sink: ${sinkText(sink)}`]),
    'arranged: true',
  ].join(', ')} }`;
}

function sinkText(sink: Sink): string {
  if (sink === 'silhouette') return sink;
  return 'share' in sink ? writeShare(sink.share) : writeLength(sink.depth);
}

/** The new entries are the last of the list, in their order. */
function gatesChange(plan: Plan, laid: readonly NewPlacement[]): Record<'gates' | 'vents', ListChange> {
  const flat = expandPlacements(plan);
  const first = (plan.placements?.length ?? 0) - laid.length;
  const ids = (k: number): string[] => flat.filter(({ entry }) => entry === first + k).map(({ id }) => id);
  const at = { line: 1, column: 1 };
  const more = laid.flatMap(({ gate, why }, k) =>
    gate ? [{ channel: { ...gate, placements: ids(k), at } as PlanChannel, why }] : [],
  );
  const gone = new Set(more.flatMap(({ channel }) => channel.placements));
  return { gates: { ...keptOf(plan, 'gates', gone), more }, vents: keptOf(plan, 'vents', new Set()) };
}
