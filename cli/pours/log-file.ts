import { writeFile } from 'node:fs/promises';
import type { Plan } from '../../src/plan/index.ts';
import { hashOf, replacePlan } from '../../src/preview/server/replace-plan.ts';
import { type LogReading, readLog } from '../../src/trials/index.ts';
import { Unreadable } from '../exit.ts';
import { readNamed } from '../plan-files.ts';

/** Longest log read, bytes; the reader of texts sets the same. */
const mostBytes = 250_000;

/** A trial log beside its plan, or none yet. */
export interface LogFile extends LogReading {
  readonly path: string;
  readonly bytes?: Uint8Array;
}

/** `charms.yaml` keeps its trials in `charms.trials.yaml`. */
const logPath = (plan: string): string => plan.replace(/(\.ya?ml)?$/i, '.trials.yaml');

/** Throws Unreadable where a file is there and cannot be read. */
export async function openLog(planFile: string, plan: Plan): Promise<LogFile> {
  const path = logPath(planFile);
  const read = await readNamed(path, mostBytes);
  if ('bytes' in read) return { path, bytes: read.bytes, ...readLog(read.bytes, path, plan) };
  if (!read.fault.startsWith('there is no file')) throw new Unreadable(read.fault);
  return { path, findings: [] };
}

/** Writes the log where it is still what was read; nothing of it is lost where somebody else wrote meanwhile. */
export async function saveLog({ path, bytes }: LogFile, text: string): Promise<void> {
  const changed = new Unreadable(`${path} was changed meanwhile and is left as it is; run it again`);
  if (bytes) {
    if (!(await replacePlan(path, new TextEncoder().encode(text), hashOf(bytes)))) throw changed;
    return;
  }
  try {
    await writeFile(path, text, { flag: 'wx' });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw code === 'EEXIST' ? changed : new Unreadable(`cannot write ${path} (${code ?? String(error)})`);
  }
}
