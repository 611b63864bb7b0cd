import { isScalar } from 'yaml';
import type { PlanPath } from '../plan-tree.ts';
import type { RadiusSpec } from '../sections/placements.ts';
import type { Item, Place } from './item.ts';
import { commentsIn, type Draft, type EditFault, fieldAt, splice } from './splice.ts';
import { writeAngle, writeLength, writeShare, writtenAt } from './written.ts';

export const entryPath = ({ list, entry }: Item): PlanPath => [...list, entry];

/** The path to one place of an entry, where it is written by itself. */
export const placePath = (item: Item): PlanPath =>
  item.by === 'each' ? [...entryPath(item), 'each', item.place] : [...entryPath(item), item.by];

/** How the radius of an entry is written, with its unit; what the plan reads where that is no single value. */
export function writtenRadius({ document }: Draft, item: Item): (spec: RadiusSpec) => string {
  const base = [...placePath(item), 'radius'];
  const own = item.places[item.place].radius;
  const before = writtenAt(document, 'fromRim' in own ? [...base, 'fromRim'] : base);
  return (spec) => {
    if ('fromRim' in spec)
      return `{ fromRim: ${same(spec, own) && before ? before : writeLength(spec.fromRim, before)} }`;
    if ('share' in spec) return writeShare(spec.share);
    return same(spec, own) && before ? before : writeLength(spec.length, before);
  };
}

const same = (a: RadiusSpec, b: RadiusSpec): boolean => JSON.stringify(a) === JSON.stringify(b);

/** One place as text, such as `{ radius: 60, angle: 30 }`. */
export function placeText({ radius, angleRad, turnRad }: Place, write: (spec: RadiusSpec) => string): string {
  const turn = turnRad === undefined ? '' : `, turn: ${writeAngle(turnRad)}`;
  return `{ radius: ${write(radius)}, angle: ${writeAngle(angleRad)}${turn} }`;
}

/** The text with another field in place of the one that says where an entry lies. */
export function replaceWhere(
  draft: Draft,
  item: Item,
  name: 'at' | 'ring' | 'each',
  values: readonly string[],
): string | EditFault {
  const field = fieldAt(draft, entryPath(item), item.by);
  if (!field) return { fault: 'This entry does not say where it lies.' };
  const isList = name === 'each';
  const comments = commentsIn(field.value);
  const { text } = draft;
  if (field.flow) {
    const line = text.lastIndexOf('\n', field.from - 1) + 1;
    const base = ' '.repeat(text.slice(line).search(/\S/) + 2);
    const inner = [...comments, ...values.map((value) => `${value},`)];
    const list = `[\n${inner.map((one) => `${base}  ${one}\n`).join('')}${base}]`;
    const before = isList ? '' : comments.map((one) => `${one}\n${base}  `).join('');
    return splice(text, field.from, field.to, `${before}${name}: ${isList ? list : values[0]}`);
  }
  const indent = ' '.repeat(field.indent);
  const lines = [...comments, ...values.map((value) => `- ${value}`)];
  const written = isList
    ? `${name}:\n${lines.map((one) => `${indent}  ${one}`).join('\n')}`
    : [...comments.map((one) => `${one}\n${indent}`), `${name}: ${values[0]}`].join('');
  // A block's value may end behind its line break.
  return splice(text, field.from, endBefore(text, field.to), written);
}

const endBefore = (text: string, end: number): number => (text[end - 1] === '\n' ? end - 1 : end);

/** A name written in an entry, such as its `id`. */
export function nameIn({ document }: Draft, path: PlanPath): string | undefined {
  const node = document.getIn(path, true);
  return isScalar(node) ? String(node.value) : undefined;
}
