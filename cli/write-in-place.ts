import { readFile, rename, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Unreadable } from './exit.ts';

/** The whole file or nothing of it, and only where it is still what was read. */
export async function writeInPlace(path: string, before: Uint8Array, text: string): Promise<void> {
  if (Buffer.compare(await readFile(path), before) !== 0)
    throw new Unreadable(`${path} was changed meanwhile and is left as it is; run it again`);
  const fresh = join(dirname(path), `.${basename(path)}-${process.pid}`);
  await writeFile(fresh, text, { flag: 'wx' });
  await rename(fresh, path);
}
