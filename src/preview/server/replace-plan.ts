import { createHash } from 'node:crypto';
import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { oneAtATime } from './one-at-a-time.ts';
import { mostTextBytes, readRegularFile } from './regular-file.ts';

export const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Bytes of a plan that was there before; throws where it can no longer be read. */
export async function planBytes(path: string): Promise<Uint8Array> {
  const read = await readRegularFile(path, mostTextBytes);
  if ('fault' in read) throw new Error(`the plan ${read.fault}`);
  return read.bytes;
}

/**
 * Writes a plan in the place of the one that was read, known by its hash; false where it is no longer that one: then nothing is
 * written. Written beside it and renamed, so that nobody sees half a plan; a link stays one, and the file's mode as it is.
 */
export async function replacePlan(path: string, text: Uint8Array, expected: string): Promise<boolean> {
  const real = await realpath(path);
  const beside = (ending: string): string => join(dirname(real), `.${basename(real)}.${ending}`);
  return oneAtATime(beside('busy'), async () => {
    if (hashOf(await planBytes(real)) !== expected) return false;
    const fresh = beside(`${process.pid}.tmp`);
    try {
      await writeFile(fresh, text, { mode: (await stat(real)).mode });
      await rename(fresh, real);
    } finally {
      await rm(fresh, { force: true });
    }
    return true;
  });
}
