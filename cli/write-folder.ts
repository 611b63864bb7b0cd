import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { ExportFile } from '../src/export/index.ts';
import { Unreadable } from './exit.ts';

/**
 * Writes all files into a temporary folder beside `target` and swaps it in by renaming, so that a reader sees the old
 * result or the new one (or for an instant none: Node cannot exchange two folders), never a half. A folder that holds no manifest of an earlier build is somebody else's and is
 * left alone (Unreadable); files in an earlier result that are not of that build, such as notes, are carried over.
 */
export async function writeFolder(target: string, files: readonly ExportFile[]): Promise<void> {
  const parent = dirname(target);
  try {
    const strangers = await filesOfOthers(target, files);
    await mkdir(parent, { recursive: true });
    const fresh = await mkdtemp(join(parent, `.${basename(target)}-`));
    try {
      const filled = join(fresh, 'new');
      for (const { path, bytes } of files) {
        await mkdir(dirname(join(filled, path)), { recursive: true });
        await writeFile(join(filled, path), bytes);
      }
      await swapIn(filled, target, join(fresh, 'old'), strangers);
    } finally {
      await rm(fresh, { recursive: true, force: true });
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    throw new Unreadable(`cannot write to ${target}: ${sayWhy(code)}; nothing was changed there`);
  }
}

const reasons: Readonly<Record<string, string>> = {
  EEXIST: 'a file is in the way',
  ENOTDIR: 'a file is in the way',
  EACCES: 'you may not write there',
  EPERM: 'you may not write there',
  EROFS: 'it is on a medium that cannot be written',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'the name is too long',
  EBUSY: 'another program holds it open',
};

const sayWhy = (code: string): string => (reasons[code] ? `${reasons[code]} (${code})` : code);

/** Names at the top of an earlier result that the build did not write. */
async function filesOfOthers(target: string, files: readonly ExportFile[]): Promise<string[]> {
  let names: string[];
  try {
    names = await readdir(target);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
  if (names.length === 0) return [];
  const ours = await namesInManifest(join(target, 'manifest.json'));
  if (!ours) {
    throw new Unreadable(
      `${target} is there already and is no earlier build (it has no manifest.json of one); ` +
        'nothing was changed there: choose another --out or another title',
    );
  }
  const others = names.filter((name) => !ours.has(name));
  const clash = others.find((name) => files.some(({ path }) => topOf(path) === name));
  if (clash !== undefined) {
    throw new Unreadable(
      `${join(target, clash)} is not from an earlier build and would be lost; move it away first`,
    );
  }
  return others;
}

const topOf = (path: string): string => path.split('/', 1)[0];

/** What an earlier build wrote at the top of its folder; undefined where the file is not a manifest of one. */
async function namesInManifest(path: string): Promise<Set<string> | undefined> {
  try {
    const manifest: unknown = JSON.parse(await readFile(path, 'utf8'));
    const { program, files } = manifest as { program?: { name?: unknown }; files?: unknown };
    if (program?.name !== 'discwright' || !Array.isArray(files)) return undefined;
    const paths = files.map((file: { path?: unknown } | null) => String(file?.path));
    return new Set(['manifest.json', ...paths.map(topOf)]);
  } catch {
    return undefined;
  }
}

async function swapIn(
  fresh: string,
  target: string,
  old: string,
  strangers: readonly string[],
): Promise<void> {
  let hadOld = true;
  try {
    await rename(target, old);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    hadOld = false;
  }
  try {
    for (const name of strangers) await rename(join(old, name), join(fresh, name));
    await rename(fresh, target);
  } catch (error) {
    if (hadOld) await giveBack(fresh, old, target, strangers);
    throw error;
  }
}

/** Puts the old result back as it was. */
async function giveBack(
  fresh: string,
  old: string,
  target: string,
  strangers: readonly string[],
): Promise<void> {
  for (const name of strangers) {
    // Those that were not moved yet are still where they belong.
    await rename(join(fresh, name), join(old, name)).catch(() => undefined);
  }
  await rename(old, target);
}
