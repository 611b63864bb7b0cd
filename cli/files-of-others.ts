import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { manifestName, readEarlier } from './earlier-manifest.ts';
import { Unreadable } from './exit.ts';

/**
 * Paths in an earlier result that are a person's: what no build wrote there, such as notes or what a slicer made of the
 * solids, and what a build wrote, was changed by hand since and is not written anew. A folder with nothing of a build
 * in it is one path. Throws Unreadable where the folder is no earlier result, or one of `written` would take the place
 * of a person's file.
 */
export async function filesOfOthers(target: string, written: readonly string[]): Promise<string[]> {
  if ((await namesIn(target)).length === 0) return [];
  const earlier = await readEarlier(target);
  if (!earlier) {
    throw new Unreadable(
      `${target} is there already and is no earlier build (it has no manifest.json of one); ` +
        'nothing was changed there: choose another --out or another title',
    );
  }
  const hashes = new Map(earlier.files.map(({ path, sha256 }) => [path, sha256]));
  const found = await othersUnder(target, '', { hashes: hashes.set(manifestName, undefined), written });
  const clash = found.find((path) => written.some((other) => inTheWay(path, other)));
  if (clash !== undefined) {
    throw new Unreadable(
      `${join(target, clash)} is not from an earlier build and would be lost; move it away first`,
    );
  }
  return found;
}

/** Whether a file cannot be there beside the other: they are one path, or one would have to be the other's folder. */
const inTheWay = (one: string, other: string): boolean =>
  one === other || isUnder(one, other) || isUnder(other, one);

const isUnder = (path: string, folder: string): boolean => path.startsWith(`${folder}/`);

interface Known {
  /** Of what a build left, by its path. */
  readonly hashes: ReadonlyMap<string, string | undefined>;
  readonly written: readonly string[];
}

/** Links are not followed: what they lead to is no part of the folder. */
async function othersUnder(target: string, folder: string, known: Known): Promise<string[]> {
  const found: string[] = [];
  for (const entry of await readdir(join(target, folder), { withFileTypes: true })) {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    const shared = [...known.hashes.keys(), ...known.written].some((other) => isUnder(other, path));
    if (entry.isDirectory() && shared) found.push(...(await othersUnder(target, path, known)));
    else if (!entry.isFile() || (await isAPersons(target, path, known))) found.push(path);
  }
  return found;
}

/** What no build left; of what one left and the new one does not write, what is not as that one wrote it. */
async function isAPersons(target: string, path: string, { hashes, written }: Known): Promise<boolean> {
  if (!hashes.has(path)) return true;
  const hash = hashes.get(path);
  if (hash === undefined || written.includes(path)) return false;
  return (
    createHash('sha256')
      .update(await readFile(join(target, path)))
      .digest('hex') !== hash
  );
}

/** Names in a folder; none where there is no such folder. */
export async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    return [];
  }
}
