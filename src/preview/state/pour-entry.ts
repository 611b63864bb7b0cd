import { computed, signal } from '@preact/signals';
import type { Point2 } from '../../geometry/index.ts';
import { type Fault, outcomes, type PourWritten, type SeenWritten, usualOf } from '../../trials/index.ts';
import { fixed } from '../../wording/index.ts';
import type { ShownMold } from '../worker/messages.ts';
import { mold, picked } from './store.ts';
import { addPour, nextPour, readNow } from './trial-log.ts';
import { openPanel } from './view.ts';

// The pour that is being entered: in no file before it is noted.

export const faults: readonly Fault[] = outcomes.filter((one) => one !== 'good');

/** What a press on a cavity notes. */
export const faultInHand = signal<Fault>('short');

/** A casting that did not come out well. `at` is where, mm from the axis, where it was pointed at. */
export interface Mark {
  readonly came: Fault;
  readonly where: string;
  readonly missing: string;
  readonly at?: Point2;
}

export const marks = signal<ReadonlyMap<string, Mark>>(new Map());

/** What is asked of a pour, in the order of the log's columns. */
export const pourFields = [
  { name: 'date', says: 'Date' },
  { name: 'metal', says: 'Metal' },
  { name: 'mold', says: 'Mold' },
  { name: 'speed', says: 'Speed' },
  { name: 'shot', says: 'Shot' },
  { name: 'talc', says: 'Talc' },
  { name: 'changed', says: 'Changed since' },
  { name: 'note', says: 'Note' },
] as const;
export type PourField = (typeof pourFields)[number]['name'];

/** As typed; what was not touched is as the plan means it. */
const typed = signal<Partial<Record<PourField, string>>>({});

export const pourTexts = computed<Partial<Record<PourField, string>>>(() => ({
  ...(readNow.value && usualOf(readNow.value)),
  ...typed.value,
}));

export function typeField(name: PourField, text: string): void {
  typed.value = { ...typed.peek(), [name]: text };
}

/** Notes the fault in hand at a cavity; the same again takes it away. */
export function markCavity(id: string): void {
  const now = new Map(marks.peek());
  if (now.get(id)?.came === faultInHand.peek()) now.delete(id);
  else now.set(id, { where: '', missing: '', ...now.get(id), came: faultInHand.peek() });
  marks.value = now;
  picked.value = id;
}

/** Notes it at a place of the disc: that of the cavity it lies in or at. */
export function markPlace(at: Point2): void {
  const one = cavityAt(at);
  if (!one) return;
  const named = nearestPlace(one, at);
  const where = named?.name ?? pointText(at);
  const mark = { missing: '', came: faultInHand.peek(), where, at: named?.at ?? at };
  marks.value = new Map([...marks.peek(), [one.id, mark]]);
  picked.value = one.id;
}

export function changeMark(id: string, change: Partial<Omit<Mark, 'at'>>): void {
  const mark = marks.peek().get(id);
  if (!mark) return;
  const { at, ...rest } = mark;
  // A place in other words is no longer where it was pointed at.
  const keeps = at && change.where === undefined;
  marks.value = new Map([...marks.peek(), [id, { ...rest, ...(keeps && { at }), ...change }]]);
}

export function removeMark(id: string): void {
  marks.value = new Map([...marks.peek()].filter(([one]) => one !== id));
}

type Placement = ShownMold['placements'][number];

/** The cavity in whose circle a place lies, the one it lies deepest in. */
function cavityAt([x, y]: Point2): Placement | undefined {
  const inside = (one: Placement): number => Math.hypot(x - one.x, y - one.y) / one.reach;
  const [nearest] = [...(mold.peek()?.placements ?? [])].sort((a, b) => inside(a) - inside(b));
  return nearest && inside(nearest) <= 1 ? nearest : undefined;
}

/** A place the plan names counts within so much of the radius of the circle round the cavity. */
const near = 0.3;

/** The nearest place that the plan names on a master, in the mold frame; of a direction the end at the circle round it. */
function nearestPlace(
  one: Placement,
  at: Point2,
): { readonly name: string; readonly at: Point2 } | undefined {
  const places = Object.entries(readNow.peek()?.masters?.[one.master]?.entry ?? {}).map(([name, place]) => {
    const own: Point2 =
      'angleRad' in place
        ? [one.reach * Math.cos(place.angleRad), one.reach * Math.sin(place.angleRad)]
        : [place.x * one.scale, place.y * one.scale];
    const [c, s] = [Math.cos(one.turnRad), Math.sin(one.turnRad)];
    const there: Point2 = [one.x + c * own[0] - s * own[1], one.y + s * own[0] + c * own[1]];
    return { name, at: there, far: Math.hypot(there[0] - at[0], there[1] - at[1]) };
  });
  const [nearest] = places.sort((a, b) => a.far - b.far);
  return nearest && nearest.far <= near * one.reach ? nearest : undefined;
}

const pointText = ([x, y]: Point2): string => `${fixed(x, 1)} ${fixed(y, 1)} mm`;

const seen = ({ came, where, missing, at }: Mark): SeenWritten => {
  const place =
    at && where === pointText(at) ? { x: `${fixed(at[0], 1)} mm`, y: `${fixed(at[1], 1)} mm` } : where;
  if (place === '' && missing === '') return came;
  return { came, ...(place !== '' && { where: place }), ...(missing !== '' && { missing }) };
};

/** The pour as it would be written; with the others good, or nothing known of them. */
function written(others: boolean): PourWritten {
  const texts = Object.fromEntries(
    pourFields.flatMap(({ name }) => (pourTexts.peek()[name] ? [[name, pourTexts.peek()[name]]] : [])),
  ) as Partial<Record<PourField, string>>;
  const { changed, note, ...settings } = texts;
  const cavities = Object.fromEntries([...marks.peek()].map(([id, mark]) => [id, seen(mark)]));
  return {
    pour: nextPour.peek(),
    ...settings,
    ...(marks.peek().size > 0 && { cavities }),
    ...(others && { others: 'good' as const }),
    ...(changed !== undefined && { changed }),
    ...(note !== undefined && { note }),
  };
}

/** Number of the pour that was noted last, to be said. */
export const notedPour = signal<number | undefined>(undefined);

/** Writes what was entered into the log. Settings stay for the next pour; marks and words do not. */
export async function notePour(others: boolean): Promise<void> {
  const pour = written(others);
  notedPour.value = undefined;
  if (!(await addPour(pour))) return;
  notedPour.value = pour.pour;
  marks.value = new Map();
  const { changed: _, note: __, ...settings } = typed.peek();
  typed.value = settings;
}

/** Keys of the sheet: G notes the pour with all others good, digits choose the fault. Tells whether it was one. */
export function onPourKey(key: string): boolean {
  if (openPanel.peek() !== 'trials') return false;
  if (key === 'g') {
    void notePour(true);
    return true;
  }
  const chosen = /^[1-9]$/.test(key) ? faults[Number(key) - 1] : undefined;
  if (chosen) faultInHand.value = chosen;
  return chosen !== undefined;
}
