import { writeFile } from 'node:fs/promises';
import { readRegularFile } from './regular-file.ts';
import { hashOf, replacePlan } from './replace-plan.ts';

/** Longest log read, bytes; the reader of texts sets the same. */
const mostLogBytes = 250_000;

/** `charms.yaml` keeps its trials in `charms.trials.yaml`. */
export const logPath = (plan: string): string => plan.replace(/(\.ya?ml)?$/i, '.trials.yaml');

/** A log as it lies on disk; without text where there is none yet. */
export interface LogState {
  readonly text?: string;
  /** SHA-256 of its bytes. */
  readonly hash?: string;
}

/** Bytes of a log, or nothing where there is none; throws where it cannot be read. */
export async function logBytes(path: string): Promise<Uint8Array | undefined> {
  try {
    const read = await readRegularFile(path, mostLogBytes);
    if ('fault' in read) throw new Error(`${path} ${read.fault}`);
    return read.bytes;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

export async function logState(path: string): Promise<LogState> {
  const bytes = await logBytes(path);
  return bytes ? { text: Buffer.from(bytes).toString('utf8'), hash: hashOf(bytes) } : {};
}

/** Writes a log in the place of the one that was read, or a first one where none was; false where it is another by now. */
export async function replaceLog(
  path: string,
  text: Uint8Array,
  expected: string | undefined,
): Promise<boolean> {
  if (expected !== undefined)
    return (await logBytes(path)) !== undefined && replacePlan(path, text, expected);
  try {
    await writeFile(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}
