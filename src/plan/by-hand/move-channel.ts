import { isMap, type Node, type Scalar } from 'yaml';
import { expandPlacements } from '../expand-placements.ts';
import type { Plan, PlanChannel } from '../plan.ts';
import { planDocument } from '../plan-document.ts';
import type { PlanPath } from '../plan-tree.ts';
import { endOfValue } from '../vary/add-to-plan.ts';
import {
  type ChannelMove,
  type ChannelName,
  findChannel,
  type ListedChannel,
  sectionOf,
  type WayPoint,
} from './find-channel.ts';
import type { Company } from './move-item.ts';
import {
  commentsIn,
  type Edited,
  type EditFault,
  editPlan,
  fieldAt,
  insertBehind,
  setValues,
  splice,
  withoutItem,
} from './splice.ts';
import { type ListChange, narrowed, writeChannels } from './write-channels.ts';
import { radiusValue, writeAngle, writeLength, writtenAt } from './written.ts';

/**
 * The plan's text with one gate or vent elsewhere. Together, all that its entry names go with it, for places are counted from
 * each cavity; alone, it gets an entry of its own behind that one. Only what changes is written, in its form and unit.
 */
export const moveChannel = (text: string, name: ChannelName, move: ChannelMove, company: Company): Edited =>
  editPlan(text, ({ plan }) => {
    const found = findChannel(plan, name);
    if (!found) return missing(name);
    const own = ownEntry(text, plan, name, found, company);
    if ('fault' in own) return own;
    const path = [found.section, own.index];
    const entered = move.entry ? setEntry(own.text, path, move.entry) : own.text;
    if (typeof entered !== 'string' || !move.through) return entered;
    return setThrough(entered, path, move.through, { plan, before: found.entry });
  });

/** The plan's text without one gate or vent; together, without all of its entry. */
export const removeChannel = (text: string, name: ChannelName, company: Company): Edited =>
  editPlan(text, ({ plan, document }) => {
    const found = findChannel(plan, name);
    if (!found) return missing(name);
    const { section, index, placements } = found;
    const left = company === 'together' ? [] : placements.filter((id) => id !== name.placement);
    if (index !== undefined)
      return left.length > 0
        ? narrowed(text, plan, section, index, left)
        : withoutItem({ text, document }, [section], index);
    return asList(text, plan, name, left, []);
  });

const missing = ({ kind, placement }: ChannelName): EditFault => ({
  fault: `The plan has no ${kind} of ${placement}.`,
});

/** The text with an entry that is the channel's own, and which that is. */
function ownEntry(
  text: string,
  plan: Plan,
  name: ChannelName,
  { section, index, placements }: ListedChannel,
  company: Company,
): { readonly text: string; readonly index: number } | EditFault {
  const others = company === 'alone' ? placements.filter((id) => id !== name.placement) : [];
  if (index === undefined) {
    const own = placements.filter((id) => !others.includes(id));
    const listed = asList(text, plan, name, others, own);
    return typeof listed === 'string' ? { text: listed, index: others.length > 0 ? 1 : 0 } : listed;
  }
  if (others.length === 0) return { text, index };
  const copy = copyFor(text, [section, index], name.placement);
  if (typeof copy !== 'string') return copy;
  const behind = insertBehind(text, [section], index, [copy]);
  const parted = typeof behind === 'string' ? narrowed(behind, plan, section, index, others) : behind;
  return typeof parted === 'string' ? { text: parted, index: index + 1 } : parted;
}

/** A word gives way to a list: those of `others` as they were, and those of `own` in an entry of theirs. */
function asList(
  text: string,
  plan: Plan,
  name: ChannelName,
  others: readonly string[],
  own: readonly string[],
): string | EditFault {
  const flat = expandPlacements(plan);
  if (own.length === 0 && others.length === 0)
    return setValues(text, [{ path: [sectionOf(name)], value: '[]' }]);
  // With nothing of its own the rest makes up the list.
  const [kept, more] = own.length > 0 ? [others, own] : [[], others];
  const channel: PlanChannel = { placements: [...more], at: flat[0].at };
  const change: ListChange = {
    keeps: flat.map(({ id }) => (kept.includes(id) ? [id] : [])),
    more: [{ channel, why: 'by hand' }],
  };
  const same = { keeps: [], more: [] };
  const isGate = name.kind === 'gate';
  const all = isGate ? { gates: change, vents: keptAll(plan, 'vents') } : { gates: same, vents: change };
  const edited = writeChannels(text, isGate ? all : { ...all, gates: keptAll(plan, 'gates') });
  return 'text' in edited ? edited.text : edited;
}

/** No change of a list. */
function keptAll(plan: Plan, section: 'gates' | 'vents'): ListChange {
  const list = plan[section];
  const kind = section === 'gates' ? 'gate' : 'vent';
  if (list === undefined || list === 'straight') return { keeps: [], more: [] };
  const numbers = new Map<string, number>();
  return {
    more: [],
    keeps: list.map((_, index) => {
      const found = expandPlacements(plan).flatMap(({ id: placement }) => {
        const number = (numbers.get(placement) ?? 0) + 1;
        const one = findChannel(plan, { kind, placement, number });
        if (one?.index !== index) return [];
        numbers.set(placement, number);
        return [placement];
      });
      return found;
    }),
  };
}

/** An entry in one line with all it says, for one placement. */
function copyFor(text: string, path: PlanPath, placement: string): string | EditFault {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const map = parsed.document.getIn(path, true);
  const fields: string[] = [];
  for (const { key, value } of isMap<Scalar, Node>(map) ? map.items : []) {
    if (!value?.range) continue;
    const written = text.slice(value.range[0], endOfValue(value)).trim().replaceAll(/\s+/g, ' ');
    const isBlock = 'flow' in value && value.flow !== true && 'items' in value;
    if (isBlock || written.includes('#'))
      return { fault: `${path.map(String).join('.')}.${key.value} has to be in one line first.` };
    fields.push(`${key.value}: ${key.value === 'placements' ? `[${placement}]` : written}`);
  }
  return `{ ${fields.join(', ')} }`;
}

function setEntry(
  text: string,
  path: PlanPath,
  { x, y }: NonNullable<ChannelMove['entry']>,
): string | EditFault {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const { document } = parsed;
  const at = [...path, 'entry'];
  const written = (axis: string): string | undefined => writtenAt(document, [...at, axis]);
  if (written('x') !== undefined && written('y') !== undefined)
    return setValues(text, [
      { path: [...at, 'x'], value: writeLength(x, written('x')) },
      { path: [...at, 'y'], value: writeLength(y, written('y')) },
    ]);
  return setField(text, path, 'entry', `{ x: ${writeLength(x)}, y: ${writeLength(y)} }`);
}

/** Points that were there keep their text where they stay, and their form where as many are left. */
function setThrough(
  text: string,
  path: PlanPath,
  points: readonly WayPoint[],
  { plan, before }: { readonly plan: Plan; readonly before: PlanChannel | undefined },
): string | EditFault {
  if (points.length === 0) return setField(text, path, 'path', 'straight');
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const { document } = parsed;
  const list = [...path, 'path', 'through'];
  const known = typeof before?.path === 'object' && 'through' in before.path ? before.path.through : [];
  if (points.length === known.length && points.every(({ was }, i) => was === i)) {
    const values = points.flatMap(({ radius, angleRad }, i) => {
      const base = [...list, i, 'radius'];
      const form = known[i].radius;
      const said = writtenAt(document, 'fromRim' in form ? [...base, 'fromRim'] : base);
      const { steps, value } = radiusValue(form, radius, plan.disc.diameter / 2, said);
      return [
        { path: [...base, ...steps], value },
        { path: [...list, i, 'angle'], value: writeAngle(angleRad) },
      ];
    });
    return setValues(text, values);
  }
  const texts = points.map(
    ({ radius, angleRad }) => `{ radius: ${writeLength(radius)}, angle: ${writeAngle(angleRad)} }`,
  );
  return setField(text, path, 'path', `{ through: [${texts.join(', ')}] }`);
}

/** A field by a text of its own, whatever stood there. */
function setField(text: string, path: PlanPath, name: string, value: string): string | EditFault {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const field = fieldAt({ text, document: parsed.document }, path, name);
  const start = field?.value.range?.[0];
  if (!field || start === undefined) return setValues(text, [{ path: [...path, name], value }]);
  if (field.flow || !text.slice(field.from, start).includes('\n'))
    return splice(text, start, field.to, value);
  // Over several lines: what was said within it in comments comes before it; one at its end stays there.
  const inside = text.slice(start, field.to);
  const said = commentsIn(field.value)
    .filter((comment) => inside.includes(comment))
    .map((comment) => `${comment}\n${' '.repeat(field.indent)}`);
  const end = text[field.to - 1] === '\n' ? '\n' : '';
  return splice(text, field.from, field.to, `${said.join('')}${name}: ${value}${end}`);
}
