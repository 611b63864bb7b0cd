import { readFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { type ExportFile, type Json, jsonBytes, type Origin, sha256Hex } from '../src/export/index.ts';
import { leadsOut } from '../src/plan/index.ts';
import { type EarlierBuild, manifestName, parseManifest, readEarlier } from './earlier-manifest.ts';
import { Unreadable } from './exit.ts';

/** A plan's file with the folder it lies in; no more of its path, which is the machine's own. */
export function planFile(name: string): string {
  const full = resolve(name);
  return `${basename(dirname(full))}/${basename(full)}`;
}

/** Throws Unreadable where a folder holds the build of another plan. */
export async function refuseOtherPlan(
  folder: string,
  { file, inputs }: Pick<Origin, 'file'> & Partial<Origin>,
): Promise<void> {
  const earlier = await readEarlier(folder);
  if (!earlier || earlier.plan?.file === file) return;
  if (inputs !== undefined && earlier.plan?.inputs === inputs) return;
  const other = earlier.plan?.file ?? 'one it does not name';
  throw new Unreadable(
    `${folder} was built from another plan (${other}, this is ${file}); nothing was changed there: ` +
      'choose another title or another --out, or say --replace',
  );
}

/** The files of a build joined with those of an earlier one that are still true. */
export interface Joined {
  readonly files: readonly ExportFile[];
  /** Paths of the earlier build's files that are not true any more. */
  readonly dropped: readonly string[];
}

/** They speak of all solids, so those of a build of all are worth more than those of a few. */
const ofAll = ['shop-sheet.pdf', 'report.json'];

/**
 * Adds to the files of a build of some solids what an earlier build of the same inputs left: its other files, and if it
 * was a build of all, its sheet and report. A file changed by hand stays, but leaves the manifest.
 */
export async function joinEarlier(
  folder: string,
  built: readonly ExportFile[],
  { inputs }: Origin,
): Promise<Joined> {
  const earlier = await readEarlier(folder);
  const own = built.find(({ path }) => path === manifestName);
  if (!earlier || !own) return { files: built, dropped: [] };
  const made = new Set(built.map(({ path }) => path));
  if (earlier.plan?.inputs !== inputs) {
    return { files: built, dropped: earlier.files.map(({ path }) => path).filter((path) => !made.has(path)) };
  }
  const files = new Map(built.map((file) => [file.path, file]));
  const listed = new Set<string>();
  for (const { path, sha256 } of earlier.files) {
    if (leadsOut(path) || (made.has(path) && (earlier.only || !ofAll.includes(path)))) continue;
    const bytes = await readFile(join(folder, path)).catch(() => undefined);
    if (!bytes) continue;
    if ((await sha256Hex(bytes)) === sha256) listed.add(path);
    else if (made.has(path)) continue;
    files.set(path, { path, bytes });
  }
  files.set(manifestName, joinManifests(own.bytes, earlier, listed));
  return { files: [...files.values()], dropped: [] };
}

/** Entries in the earlier build's order, then the new ones. */
function joinManifests(bytes: Uint8Array, earlier: EarlierBuild, listed: ReadonlySet<string>): ExportFile {
  const own = parseManifest(bytes);
  const entries = new Map(
    earlier.files.flatMap((entry) => {
      const fresh = listed.has(entry.path) ? entry : own.files.find(({ path }) => path === entry.path);
      return fresh ? [[entry.path, fresh]] : [];
    }),
  );
  for (const entry of own.files) if (!entries.has(entry.path)) entries.set(entry.path, entry);
  const withheld = new Map(
    [...(earlier.withheld ?? []), ...(own.withheld ?? [])].map((one) => [one.id, one]),
  );
  const only = earlier.only && [...new Set([...earlier.only, ...(own.only ?? [])])];
  const written: object = JSON.parse(new TextDecoder().decode(bytes));
  const joined = { ...written, only, files: [...entries.values()], withheld: [...withheld.values()] };
  // Came from JSON, apart from what is undefined.
  return { path: manifestName, bytes: jsonBytes(joined as Json) };
}
