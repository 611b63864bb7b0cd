import { writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Unreadable } from './exit.ts';

/** Writes a new file; throws Unreadable where one is there already or it cannot be written. */
export async function writeNew(file: string, text: string): Promise<void> {
  try {
    await writeFile(file, text, { flag: 'wx' });
  } catch (error) {
    throw new Unreadable(sayWhy(file, error));
  }
}

function sayWhy(file: string, error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'EEXIST') return `${file} is there already; nothing was written`;
  if (code === 'ENOENT') return `cannot write ${file}: there is no folder ${dirname(file)}`;
  if (code === 'EACCES' || code === 'EPERM') return `cannot write ${file}: you may not write there`;
  return `cannot write ${file} (${code ?? String(error)})`;
}
