import { isMap, isSeq } from 'yaml';
import { planDocument } from '../plan-document.ts';
import { endOfValue } from '../vary/add-to-plan.ts';
import { type Edited, editPlan, fieldAt, splice } from './splice.ts';
import { writeAngle, writeLength } from './written.ts';

/** A master new to the plan, and where it lies first. */
export interface NewMaster {
  /** Path of its file, as the plan is to name it. */
  readonly file: string;
  /** Distance from the disc axis, mm. */
  readonly radius: number;
  readonly angleRad: number;
}

/** The plan's text with a master that came as a file, placed once. Gives the master's name too. */
export function addMaster(
  text: string,
  { file, radius, angleRad }: NewMaster,
): Edited & { readonly id?: string } {
  let id = '';
  const edited = editPlan(text, (draft) => {
    id = freeName(file, new Set(Object.keys(draft.plan.masters ?? {})));
    const entry = /\.(svg|dxf)$/i.test(file)
      ? `{ outline: ${quoted(file)}, above: 2, below: 1 }`
      : `{ file: ${quoted(file)} }`;
    const named = addEntry(text, 'masters', `${id}: ${entry}`, false);
    const at = `{ radius: ${writeLength(radius)}, angle: ${writeAngle(angleRad)} }`;
    return addEntry(named, 'placements', `{ master: ${id}, at: ${at} }`, true);
  });
  return 'fault' in edited ? edited : { ...edited, id };
}

/** A name for a master made of its file's: letters, numbers and dashes, and not taken yet. */
export function freeName(file: string, taken: ReadonlySet<string>): string {
  const last = file.split(/[/\\]/).at(-1) ?? file;
  const bare = last
    .replace(/\.[^.]+$/, '')
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^A-Za-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .toLowerCase();
  const name = /^[a-z]/.test(bare) ? bare.slice(0, 40) : `part-${bare}`.replace(/-$/, '').slice(0, 40);
  for (let n = 1; ; n++) {
    const one = n === 1 ? name : `${name}-${n}`;
    if (!taken.has(one)) return one;
  }
}

const quoted = (file: string): string => (/^[A-Za-z0-9_./-]+$/.test(file) ? file : JSON.stringify(file));

/** An entry more at the end of a section, which is made where the plan has none. */
function addEntry(text: string, section: string, entry: string, isItem: boolean): string {
  const parsed = planDocument(text, 'plan');
  if ('fault' in parsed) return text;
  const draft = { text, document: parsed.document };
  const field = fieldAt(draft, [], section);
  const line = isItem ? `- ${entry}` : entry;
  if (!field) return `${text.replace(/\n*$/, '\n')}\n${section}:\n  ${line}\n`;
  const { value } = field;
  if (!(isMap(value) || isSeq(value)) || !value.range) return text;
  const end = endOfValue(value);
  if (value.items.length === 0) return splice(text, value.range[0], value.range[1], `\n  ${line}`);
  if (value.flow) return splice(text, end - 1, end - 1, `, ${entry} `);
  const start = value.range[0];
  const indent = ' '.repeat(start - (text.lastIndexOf('\n', start - 1) + 1));
  const lineEnd = text.indexOf('\n', Math.max(0, end - 1));
  return lineEnd < 0
    ? `${text}\n${indent}${line}\n`
    : splice(text, lineEnd + 1, lineEnd + 1, `${indent}${line}\n`);
}
