import { access, constants, mkdir, readdir } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { Unreadable } from '../exit.ts';
import { folderName } from '../folder-name.ts';
import { recoverFolder, sayWhy } from '../write-folder.ts';

/** Name of the folder of a plan's variants: of the plan's file, or of its folder where that is called plan.yaml. */
export function batchFolderName(planName: string): string {
  const file = basename(planName).replace(/\.[^.]*$/, '');
  const name = file === 'plan' ? basename(dirname(resolve(planName))) : file;
  return folderName(`${name} batch`);
}

/** Makes the folder where it is not there yet. Throws Unreadable where nothing can be written into it. */
export async function openBatchFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    await access(folder, constants.W_OK);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    throw new Unreadable(`cannot write to ${folder}: ${sayWhy(code)}; nothing was changed there`);
  }
}

/** Puts right what killed runs left of these names, looking through the folder once; see `recoverFolder`. */
export async function recoverAll(folder: string, names: readonly string[]): Promise<void> {
  const wanted = new Set(names);
  const left = (await readdir(folder)).flatMap((name) => /^\.(.+)-\d+-[A-Za-z0-9]{6}$/.exec(name)?.[1] ?? []);
  for (const name of new Set(left)) if (wanted.has(name)) await recoverFolder(join(folder, name));
}
