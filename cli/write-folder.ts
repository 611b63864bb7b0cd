import { cp, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { ExportFile } from '../src/export/index.ts';
import { NoRoom, Unreadable } from './exit.ts';
import { filesOfOthers, namesIn } from './files-of-others.ts';

/** Writes one file whole, or throws as the file system does. */
export type WriteFile = (path: string, bytes: Uint8Array) => Promise<void>;

/**
 * Writes all files into a temporary folder beside `target` and swaps it in by renaming, so that a reader sees the old
 * result or the new one (or for an instant none: Node cannot exchange two folders), never a half. A folder that holds
 * no manifest of an earlier build is somebody else's and is left alone (Unreadable); files in an earlier result that
 * are not of that build, such as notes, are carried over, wherever in it they lie. What a killed run left behind is put
 * right first.
 */
export async function writeFolder(
  target: string,
  files: readonly ExportFile[],
  write: WriteFile = writeFile,
): Promise<void> {
  const parent = dirname(target);
  try {
    await recoverFolder(target);
    const strangers = await filesOfOthers(
      target,
      files.map(({ path }) => path),
    );
    await mkdir(parent, { recursive: true });
    const fresh = await mkdtemp(join(parent, `.${basename(target)}-${process.pid}-`));
    try {
      const filled = join(fresh, 'new');
      for (const { path, bytes } of files) {
        await mkdir(dirname(join(filled, path)), { recursive: true });
        await write(join(filled, path), bytes);
      }
      // Copied, not moved: wherever a kill falls, the old result or the new one is whole.
      const asTheyAre = { recursive: true, verbatimSymlinks: true, preserveTimestamps: true };
      for (const path of strangers) await cp(join(target, path), join(filled, path), asTheyAre);
      await swapIn(filled, target, join(fresh, 'old'));
    } finally {
      await rm(fresh, { recursive: true, force: true });
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    throw refusal(code, `cannot write to ${target}: ${sayWhy(code)}; nothing was changed there`);
  }
}

const noRoom = ['ENOSPC', 'EDQUOT', 'EFBIG'];

/** What a file system's refusal is to the user. */
export const refusal = (code: string, says: string): Unreadable =>
  noRoom.includes(code) ? new NoRoom(says) : new Unreadable(says);

/**
 * Puts right what runs killed while writing `target` left beside it: gives the old result back where the kill fell
 * between the two renames, and takes the temporary folders away. Those of a run still alive are left to it.
 */
export async function recoverFolder(target: string): Promise<void> {
  const parent = dirname(target);
  const start = `.${basename(target)}-`;
  for (const name of await namesIn(parent)) {
    const run = name.startsWith(start) && /^(\d+)-[A-Za-z0-9]{6}$/.exec(name.slice(start.length));
    if (!run || isAlive(Number(run[1]))) continue;
    if (!(await namesIn(parent)).includes(basename(target))) {
      await rename(join(parent, name, 'old'), target).catch(unlessMissing);
    }
    await rm(join(parent, name), { recursive: true, force: true });
  }
}

/** Whether another process of that number runs here. This one writes a folder once at a time. */
function isAlive(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}

const unlessMissing = (error: NodeJS.ErrnoException): void => {
  if (error.code !== 'ENOENT') throw error;
};

const reasons: Readonly<Record<string, string>> = {
  EEXIST: 'a file is in the way',
  ENOTDIR: 'a file is in the way',
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'it is on a medium that cannot be written',
  ENOSPC: 'the disk is full',
  EDQUOT: 'your share of the disk is full',
  EFBIG: 'a file would be larger than is allowed there',
  ENAMETOOLONG: 'the name is too long',
  EBUSY: 'another program holds it open',
};

/** Why a file system refuses, in plain words. */
export const sayWhy = (code: string): string => (reasons[code] ? `${reasons[code]} (${code})` : code);

async function swapIn(fresh: string, target: string, old: string): Promise<void> {
  let hadOld = true;
  await rename(target, old).catch((error: NodeJS.ErrnoException) => {
    unlessMissing(error);
    hadOld = false;
  });
  try {
    await rename(fresh, target);
  } catch (error) {
    if (hadOld) await rename(old, target);
    throw error;
  }
}
