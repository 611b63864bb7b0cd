import type { Plan } from '../../src/plan/index.ts';
import { hashOf } from '../../src/preview/server/replace-plan.ts';
import { logBytes, logPath, replaceLog } from '../../src/preview/server/trial-log.ts';
import { type LogReading, readLog } from '../../src/trials/index.ts';
import { Unreadable } from '../exit.ts';

/** A trial log beside its plan, or none yet. */
export interface LogFile extends LogReading {
  readonly path: string;
  readonly bytes?: Uint8Array;
}

/** Throws Unreadable where a file is there and cannot be read. */
export async function openLog(planFile: string, plan: Plan): Promise<LogFile> {
  const path = logPath(planFile);
  try {
    const bytes = await logBytes(path);
    return bytes ? { path, bytes, ...readLog(bytes, path, plan) } : { path, findings: [] };
  } catch (error) {
    throw new Unreadable(wordsOf(error));
  }
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Writes the log where it is still what was read; nothing of it is lost where somebody else wrote meanwhile. */
export async function saveLog({ path, bytes }: LogFile, text: string): Promise<void> {
  const expected = bytes && hashOf(bytes);
  const saved = await replaceLog(path, new TextEncoder().encode(text), expected).catch((error: unknown) => {
    throw new Unreadable(`cannot write ${path}: ${wordsOf(error)}`);
  });
  if (!saved) throw new Unreadable(`${path} was changed meanwhile and is left as it is; run it again`);
}
