import { access, constants, mkdir, readdir } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { folderName } from '../folder-name.ts';
import { recoverFolder, refusal, sayWhy } from '../write-folder.ts';

/** What a batch is called: as the plan's file, or as its folder where the file is called plan.yaml. */
export function batchName(planName: string): string {
  const file = basename(planName).replace(/\.[^.]*$/, '');
  return file === 'plan' ? basename(dirname(resolve(planName))) : file;
}

/** Name of the folder of a plan's variants. */
export const batchFolderName = (planName: string): string => folderName(`${batchName(planName)} batch`);

/** Makes the folder where it is not there yet. Throws Unreadable where nothing can be written into it. */
export async function openBatchFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
    await access(folder, constants.W_OK);
  } catch (error) {
    throw asUnwritable(error, folder, 'nothing was changed there');
  }
}

/** A file system's refusal as what the user can mend; any other error as it is. */
export function asUnwritable(error: unknown, folder: string, state: string): unknown {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === undefined) return error;
  return refusal(code, `cannot write to ${folder}: ${sayWhy(code)}; ${state}`);
}

/** Puts right what killed runs left of these names, looking through the folder once; see `recoverFolder`. */
export async function recoverAll(folder: string, names: readonly string[]): Promise<void> {
  const wanted = new Set(names);
  const left = (await readdir(folder)).flatMap((name) => /^\.(.+)-\d+-[A-Za-z0-9]{6}$/.exec(name)?.[1] ?? []);
  for (const name of new Set(left)) if (wanted.has(name)) await recoverFolder(join(folder, name));
}
