import { isScalar, isSeq } from 'yaml';
import { expandPlacements } from '../expand-placements.ts';
import type { Plan } from '../plan.ts';
import { planDocument } from '../plan-document.ts';
import type { PlanPath } from '../plan-tree.ts';
import { findItem, type ItemName } from './item.ts';
import { entryPath, placeText, replaceWhere, writtenRadius } from './places.ts';
import { type Draft, type Edited, type EditFault, editPlan, setValues, withoutItem } from './splice.ts';

/**
 * The plan's text without one item. One of several places of an entry goes alone (a ring becomes a list of the
 * others), the last takes the entry with it. Build-ups, gates and vents that name what is gone no longer do, and names
 * that are numbered follow. Comments stay, but for one behind it on its line. A boss of a ring takes the whole ring along.
 */
export const removeItem = (text: string, name: ItemName): Edited =>
  editPlan(text, (draft) => {
    const item = findItem(draft.plan, name);
    if (!item) return { fault: `The plan has no ${name.kind} ${name.id}.` };
    const whole = item.kind !== 'placement' || item.places.length === 1;
    let without: string | EditFault;
    if (whole) without = withoutItem(draft, item.list, item.entry);
    else if (item.by === 'each') without = withoutItem(draft, [...entryPath(item), 'each'], item.place);
    else {
      const write = writtenRadius(draft, item);
      const others = item.places.filter((_, i) => i !== item.place);
      without = replaceWhere(
        draft,
        item,
        'each',
        others.map((place) => placeText(place, write)),
      );
    }
    return typeof without === 'string' && item.kind === 'placement'
      ? withoutNames(without, draft.plan, item.entry, whole ? undefined : item.place)
      : without;
  });

/** Follows the placements' new names in the lists that name them. */
function withoutNames(text: string, before: Plan, entry: number, place: number | undefined) {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const left = expandPlacements(before).filter(
    (one) => !(one.entry === entry && (place === undefined || one.place === place)),
  );
  const renamed = expandPlacements({
    ...before,
    placements: (before.placements ?? []).flatMap((one, i) => {
      if (i !== entry) return [one];
      if (place === undefined) return [];
      const rest = left.filter((flat) => flat.entry === entry);
      return [
        {
          ...one,
          where: { each: rest.map(({ radius, angleRad, turnRad }) => ({ radius, angleRad, turnRad })) },
        },
      ];
    }),
  });
  const now = new Map(left.map(({ id }, i) => [id, renamed[i].id]));
  for (const { group } of left) now.set(group, group);
  return follow({ text, document: parsed.document }, now);
}

const sections = ['supports', 'gates', 'vents'] as const;

/** From the end of the text to its beginning, so that places found earlier stay where they are. */
function follow(
  draft: Pick<Draft, 'document' | 'text'>,
  now: ReadonlyMap<string, string>,
): string | EditFault {
  let { text } = draft;
  for (const section of sections) {
    const list = draft.document.getIn([section], true);
    if (!isSeq(list)) continue;
    for (let i = list.items.length - 1; i >= 0; i--) {
      const next = followIn(text, [section, i, 'placements'], now);
      if (typeof next !== 'string') return next;
      text = next;
    }
  }
  return text;
}

function followIn(text: string, path: PlanPath, now: ReadonlyMap<string, string>) {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  const { document } = parsed;
  const draft = { text, document };
  const names = document.getIn(path, true);
  const list = path.slice(0, 1);
  const entry = Number(path[1]);
  if (isScalar(names)) {
    const name = String(names.value);
    if (name === 'all' || now.get(name) === name) return text;
    const to = now.get(name);
    return to === undefined ? withoutItem(draft, list, entry) : setValues(text, [{ path, value: to }]);
  }
  if (!isSeq(names)) return text;
  const written = names.items.map((one) => (isScalar(one) ? String(one.value) : ''));
  if (written.every((name) => name !== 'all' && !now.has(name))) return withoutItem(draft, list, entry);
  let edited: string | EditFault = text;
  for (let k = written.length - 1; k >= 0; k--) {
    const name = written[k];
    if (name === 'all' || now.get(name) === name || typeof edited !== 'string') continue;
    const to = now.get(name);
    edited =
      to === undefined
        ? withoutName(edited, path, k)
        : setValues(edited, [{ path: [...path, k], value: to }]);
  }
  return edited;
}

function withoutName(text: string, path: PlanPath, index: number) {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return { fault: parsed.fault };
  return withoutItem({ text, document: parsed.document }, path, index);
}
