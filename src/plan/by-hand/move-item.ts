import { isMap, type Node, type Scalar } from 'yaml';
import type { PlanPath } from '../plan-tree.ts';
import type { RadiusSpec } from '../sections/placements.ts';
import { findItem, type Item, type ItemName, type Place } from './item.ts';
import { entryPath, nameIn, placePath, placeText, replaceWhere, writtenRadius } from './places.ts';
import { type Draft, type Edited, editPlan, insertBehind, setValues } from './splice.ts';
import { radiusValue, writeAngle, writeLength, writeShare, writtenAt } from './written.ts';

/** Where an item goes; what is left out stays. Lengths in mm, the radius from the disc axis. */
export interface Move {
  readonly radius?: number;
  readonly angleRad?: number;
  /** About its own vertical, outward along the radius being zero. */
  readonly turnRad?: number;
  /** Depth of its lowest point below the parting plane, and its height, for a plan that writes shares. */
  readonly sink?: { readonly depth: number; readonly height: number };
}

/** `alone`: one item leaves its ring. `together`: its whole ring goes with it. */
export type Company = 'alone' | 'together';

/**
 * The plan's text with one item moved. Only the values that change are written, in the form and unit they had: a
 * distance from the rim stays one, inches stay inches. A placement that leaves its ring alone turns the ring into an
 * `each` list of the same places, so that names and all that refers to them stay; a boss that does turns it into
 * single bosses. `sink` belongs to an entry: all of its placements sink together.
 */
export const moveItem = (text: string, name: ItemName, move: Move, company: Company = 'alone'): Edited =>
  editPlan(text, (draft) => {
    const item = findItem(draft.plan, name);
    if (!item) return { fault: `The plan has no ${name.kind} ${name.id}.` };
    if (item.by === 'angle') return setValues(text, angleValues([...entryPath(item)], move));
    const placed = item.by === 'ring' ? moveInRing(draft, item, move, company) : movePlace(draft, item, move);
    return typeof placed === 'string' ? sinkEntry({ ...draft, text: placed }, item, move) : placed;
  });

const angleValues = (path: PlanPath, { angleRad }: Move) =>
  angleRad === undefined ? [] : [{ path: [...path, 'angle'], value: writeAngle(angleRad) }];

function radiusValues({ plan, document }: Draft, path: PlanPath, { radius: spec }: Place, { radius }: Move) {
  if (radius === undefined) return [];
  const base = [...path, 'radius'];
  const before = writtenAt(document, 'fromRim' in spec ? [...base, 'fromRim'] : base);
  const { steps, value } = radiusValue(spec, radius, plan.disc.diameter / 2, before);
  return [{ path: [...base, ...steps], value }];
}

function movePlace(draft: Draft, item: Item, move: Move) {
  const path = placePath(item);
  // Of a list each place has its own turn.
  const turnPath = [...(item.by === 'each' ? path : entryPath(item)), 'turn'];
  return setValues(draft.text, [
    ...radiusValues(draft, path, item.places[item.place], move),
    ...angleValues(path, move),
    ...(move.turnRad === undefined ? [] : [{ path: turnPath, value: writeAngle(move.turnRad) }]),
  ]);
}

function moveInRing(draft: Draft, item: Item, move: Move, company: Company) {
  const { radius, angleRad, turnRad } = move;
  if (radius === undefined && angleRad === undefined && (turnRad === undefined || company === 'together')) {
    return turnRad === undefined
      ? draft.text
      : setValues(draft.text, [{ path: [...entryPath(item), 'turn'], value: writeAngle(turnRad) }]);
  }
  return company === 'together' ? moveRing(draft, item, move) : leaveRing(draft, item, move);
}

/** All of the ring by the same way: its radius, and the angle of its first. */
function moveRing(draft: Draft, item: Item, move: Move) {
  const path = [...entryPath(item), 'ring'];
  const [first] = item.places;
  const { angleRad: from } = item.places[item.place];
  const start = move.angleRad === undefined ? undefined : (item.startRad ?? 0) + move.angleRad - from;
  return setValues(draft.text, [
    ...radiusValues(draft, path, first, move),
    ...(start === undefined ? [] : [{ path: [...path, 'start'], value: writeAngle(start) }]),
    ...(move.turnRad === undefined
      ? []
      : [{ path: [...entryPath(item), 'turn'], value: writeAngle(move.turnRad) }]),
  ]);
}

function leaveRing(draft: Draft, item: Item, move: Move) {
  const discRadius = draft.plan.disc.diameter / 2;
  const write = writtenRadius(draft, item);
  const at = (place: Place): RadiusSpec => {
    const { radius } = move;
    if (radius === undefined) return place.radius;
    if ('length' in place.radius) return { length: radius };
    return 'share' in place.radius ? { share: radius / discRadius } : { fromRim: discRadius - radius };
  };
  const texts = item.places.map((place, i) => {
    if (i !== item.place) return placeText(place, write);
    const turn = move.turnRad === undefined ? place.turnRad : move.turnRad;
    const moved = { radius: at(place), angleRad: move.angleRad ?? place.angleRad, turnRad: turn };
    return placeText(item.kind === 'boss' ? { ...moved, turnRad: undefined } : moved, write);
  });
  if (item.kind === 'placement') return replaceWhere(draft, item, 'each', texts);
  return singleBosses(draft, item, texts, move.turnRad);
}

/**
 * Bosses have no lists of places: one entry for each, with all that the ring's entry says. The first stays where the
 * ring stood, with its comments; the others follow it, a line each.
 */
function singleBosses(draft: Draft, item: Item, texts: readonly string[], turnRad: number | undefined) {
  const path = entryPath(item);
  const name = nameIn(draft, [...path, 'id']);
  const own = (i: number): Record<string, string> => ({
    ...(name !== undefined && { id: `${name}-${i + 1}` }),
    ...(i === item.place && turnRad !== undefined && { turn: writeAngle(turnRad) }),
  });
  const others = texts.slice(1).map((at, i) => bossText(draft, path, at, own(i + 1)));
  const first = replaceWhere(draft, item, 'at', [texts[0]]);
  if (typeof first !== 'string') return first;
  const named = setValues(
    first,
    Object.entries(own(0)).map(([key, value]) => ({ path: [...path, key], value })),
  );
  return typeof named === 'string' ? insertBehind(named, item.list, item.entry, others) : named;
}

/** A boss in one line: what its ring says, at one place. */
function bossText({ document, text }: Draft, path: PlanPath, at: string, own: Record<string, string>) {
  const map = document.getIn(path, true);
  const fields = new Map<string, string>();
  for (const { key, value } of isMap<Scalar, Node>(map) ? map.items : []) {
    const range = value?.range;
    if (range) fields.set(String(key.value), text.slice(range[0], range[1]).trim());
  }
  fields.set('ring', at);
  for (const [key, value] of Object.entries(own)) fields.set(key, value);
  const written = [...fields].map(([key, value]) => `${key === 'ring' ? 'at' : key}: ${value}`);
  return `{ ${written.join(', ')} }`;
}

function sinkEntry(draft: Draft, item: Item, { sink }: Move) {
  if (!sink || item.kind !== 'placement') return draft.text;
  const path = [...entryPath(item), 'sink'];
  const before = writtenAt(draft.document, path);
  const isShare = before !== undefined && /%|percent/i.test(before);
  const value = isShare ? writeShare(sink.depth / sink.height) : writeLength(sink.depth, before);
  return setValues(draft.text, [{ path, value }]);
}
