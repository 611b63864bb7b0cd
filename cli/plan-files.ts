import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import type { FileAccess } from '../src/pipeline/index.ts';
import { Unreadable } from './exit.ts';

const sayWhy = (error: unknown, path: string): string => {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return `there is no file ${path}`;
  if (code === 'EISDIR') return `${path} is a folder, not a file`;
  if (code === 'EACCES' || code === 'EPERM') return `${path} may not be read by you`;
  if (code === 'ERR_FS_FILE_TOO_LARGE') return `${path} is larger than 2 GiB`;
  return `${path} cannot be read (${code ?? String(error)})`;
};

/** Reads a file named on the command line; throws Unreadable with one plain line. */
export async function readNamed(path: string): Promise<Uint8Array> {
  try {
    return await readFile(path);
  } catch (error) {
    throw new Unreadable(sayWhy(error, path));
  }
}

export interface PlanSource {
  readonly bytes: Uint8Array;
  /** As shown in messages: what the user typed, with the file of a folder added. */
  readonly name: string;
  readonly files: FileAccess;
}

/** Opens a plan: a file, or a folder with a plan.yaml in it. */
export async function openPlan(argument: string): Promise<PlanSource> {
  let name = argument;
  try {
    if ((await stat(argument)).isDirectory()) name = join(argument, 'plan.yaml');
  } catch (error) {
    throw new Unreadable(sayWhy(error, argument));
  }
  const folder = dirname(resolve(name));
  return { bytes: await readNamed(name), name: name.split(sep).join('/'), files: folderAccess(folder) };
}

/** Files beside a plan. Files outside its folder are read, and said to be outside. */
function folderAccess(folder: string): FileAccess {
  return async (path) => {
    const full = resolve(folder, path);
    const outside = relative(folder, full).startsWith('..');
    try {
      return { bytes: await readFile(full), name: basename(full), outside };
    } catch (error) {
      return { fault: sayWhy(error, path) };
    }
  };
}
