import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { ExportFile } from '../src/export/index.ts';
import { Unreadable } from './exit.ts';

/**
 * Writes all files into a temporary folder beside `target` and swaps it in by renaming, so that a reader sees the old
 * result or the new one, never a half.
 */
export async function writeFolder(target: string, files: readonly ExportFile[]): Promise<void> {
  const parent = dirname(target);
  try {
    await mkdir(parent, { recursive: true });
    const fresh = join(parent, `.${basename(target)}-${process.pid}`);
    await mkdir(fresh);
    try {
      for (const { path, bytes } of files) {
        await mkdir(dirname(join(fresh, path)), { recursive: true });
        await writeFile(join(fresh, path), bytes);
      }
      await swapIn(fresh, target);
    } finally {
      await rm(fresh, { recursive: true, force: true });
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    throw new Unreadable(`cannot write to ${target} (${code}); nothing was changed there`);
  }
}

async function swapIn(fresh: string, target: string): Promise<void> {
  const old = `${fresh}.old`;
  let hadOld = true;
  try {
    await rename(target, old);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    hadOld = false;
  }
  try {
    await rename(fresh, target);
  } catch (error) {
    if (hadOld) await rename(old, target);
    throw error;
  }
  await rm(old, { recursive: true, force: true });
}
