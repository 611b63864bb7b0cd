import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { faultFolder } from './check-text.ts';

/** Plans with nothing wrong, of which every plan with a fault is a copy with a few words changed. */
export const soundPlans = ['rubber', 'rigid', 'poured', 'bare'] as const;
export type SoundPlan = (typeof soundPlans)[number];

export const soundText = (name: SoundPlan): string => readFileSync(join(faultFolder, `${name}.yaml`), 'utf8');

/** One fault, as a file of `single/` lists it; every text it names stands once in the sound plan. */
interface Fault {
  /** The code that it yields. */
  readonly code: string;
  /** What is meant by it here, where a code is met in several ways. */
  readonly of?: string;
  /** One sentence on what is wrong. */
  readonly fault: string;
  readonly base: SoundPlan;
  /** Words of the plan, and what stands there instead. */
  readonly swap?: Readonly<Record<string, string>>;
  /** Words whose lines are left out. */
  readonly without?: readonly string[];
  /** Words, and a line to stand under theirs. */
  readonly after?: Readonly<Record<string, string>>;
  /** All that is found: code, severity, subject and, where the plan has a place for it, line:column. */
  readonly finds: readonly string[];
}

export interface FaultPlan {
  readonly name: string;
  readonly code: string;
  readonly text: string;
  /** Lines of the sound plan that are other, gone or new. */
  readonly changes: number;
  readonly finds: readonly string[];
}

function lineWith(words: string, lines: readonly string[], name: string): number {
  const [line, second] = lines.flatMap((text, i) => (text.split(words).length === 2 ? [i] : []));
  if (line === undefined || second !== undefined)
    throw new Error(`${name}: the sound plan does not hold once: ${words}`);
  return line;
}

function planWith({ code, of, fault, base, swap = {}, without = [], after = {}, finds }: Fault): FaultPlan {
  const name = of === undefined ? code : `${code} of ${of}`;
  const sound = soundText(base).split('\n');
  const lines = sound.map((line) => [line]);
  for (const [from, to] of Object.entries(swap)) {
    const at = lineWith(from, sound, name);
    lines[at] = [sound[at].replace(from, to)];
  }
  for (const words of without) lines[lineWith(words, sound, name)] = [];
  for (const [words, line] of Object.entries(after)) lines[lineWith(words, sound, name)].push(line);
  const text = [`# ${fault}`, ...lines.flat().slice(1)].join('\n');
  const changes = [swap, without, after].reduce((sum, list) => sum + Object.keys(list).length, 0);
  return { name, code, text, changes, finds };
}

const listed = join(faultFolder, 'single');

/** All plans with one fault, by file and within it as listed. */
export const faultPlans: readonly FaultPlan[] = readdirSync(listed)
  .sort()
  .flatMap((file) => (parse(readFileSync(join(listed, file), 'utf8')) as Fault[]).map(planWith));

export function faultText(name: string): string {
  const found = faultPlans.find((plan) => plan.name === name);
  if (!found) throw new Error(`no plan with the fault ${name}`);
  return found.text;
}
