import { stat } from 'node:fs/promises';
import { basename, dirname, join, resolve, sep } from 'node:path';
import type { FileAccess, PlanSource } from '../src/pipeline/index.ts';
import { leadsOut } from '../src/plan/index.ts';
import { mostFileBytes, mostTextBytes, readRegularFile } from '../src/preview/server/regular-file.ts';
import { hashOf, replacePlan } from '../src/preview/server/replace-plan.ts';
import { Unreadable } from './exit.ts';

const sayWhy = (error: unknown, path: string): string => {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT' || code === 'ENOTDIR') return `there is no file ${path}`;
  if (code === 'EACCES' || code === 'EPERM') return `${path} may not be read by you`;
  return `${path} cannot be read (${code ?? String(error)})`;
};

/** Bytes of a file, or in one plain sentence why there are none. */
async function bytesOf(
  path: string,
  shown: string,
  most: number,
): Promise<{ bytes: Uint8Array } | { fault: string }> {
  try {
    const read = await readRegularFile(path, most);
    return 'fault' in read ? { fault: `${shown} ${read.fault}` } : read;
  } catch (error) {
    return { fault: sayWhy(error, shown) };
  }
}

/** Reads a file named on the command line, of at most so many bytes. */
export const readNamed = (path: string, most: number): Promise<{ bytes: Uint8Array } | { fault: string }> =>
  bytesOf(path, path, most);

/** Path of a plan: a file, or plan.yaml in a folder. Throws Unreadable where it cannot be read. */
export async function planPath(argument: string): Promise<string> {
  const { name } = await openPlan(argument);
  return name;
}

/** Opens a plan: a file, or a folder with a plan.yaml in it. Throws Unreadable with one plain line. */
export async function openPlan(argument: string): Promise<PlanSource> {
  const inFolder = await isFolder(argument);
  const name = inFolder ? join(argument, 'plan.yaml') : argument;
  const read = await readNamed(name, mostTextBytes);
  if ('fault' in read) {
    throw new Unreadable(inFolder ? `${read.fault}; a plan in a folder is called plan.yaml` : read.fault);
  }
  return { bytes: read.bytes, name: name.split(sep).join('/'), files: folderAccess(dirname(resolve(name))) };
}

/** Writes a plan over the one that was opened; throws Unreadable where somebody else changed it meanwhile. */
export async function savePlan({ name, bytes }: PlanSource, text: string): Promise<void> {
  if (!(await replacePlan(name, new TextEncoder().encode(text), hashOf(bytes))))
    throw new Unreadable(`${name} was changed meanwhile and is left as it is; run it again`);
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch {
    // That it cannot be opened is said when it is read.
    return false;
  }
}

/** Files beside a plan. Files outside its folder are read, and said to be outside. */
function folderAccess(folder: string): FileAccess {
  return async (path) => {
    const full = resolve(folder, path);
    const read = await bytesOf(full, path, mostFileBytes);
    if ('fault' in read) return read;
    return { bytes: read.bytes, name: basename(full), outside: leadsOut(path) };
  };
}
