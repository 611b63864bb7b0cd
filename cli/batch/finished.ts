import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type ExportFile, jsonBytes } from '../../src/export/index.ts';
import { mostTextBytes, readRegularFile } from '../../src/preview/server/regular-file.ts';
import { rowJson, type VariantRow } from './variant-row.ts';

/** What a variant's folder says of itself. */
export interface Finished {
  /** Hash of all the result rests on. */
  readonly key: string;
  readonly row: VariantRow;
}

const fileName = 'batch.json';

export const finishedFile = ({ key, row }: Finished): ExportFile => ({
  path: fileName,
  bytes: jsonBytes({ key, row: rowJson(row) }),
});

/** The result in a folder, where all its files are there at their full size; undefined where not. */
export async function readFinished(folder: string): Promise<Finished | undefined> {
  const manifest = (await readJson(join(folder, 'manifest.json'))) as
    | { readonly files?: readonly { readonly path: string; readonly bytes: number }[] }
    | undefined;
  const listed = manifest?.files ?? [];
  if (!listed.some(({ path }) => path === fileName)) return undefined;
  for (const { path, bytes } of listed) {
    const there = await stat(join(folder, path)).catch(() => undefined);
    if (there?.size !== bytes) return undefined;
  }
  return (await readJson(join(folder, fileName))) as Finished | undefined;
}

async function readJson(path: string): Promise<unknown> {
  try {
    const read = await readRegularFile(path, mostTextBytes);
    return 'fault' in read ? undefined : JSON.parse(new TextDecoder().decode(read.bytes));
  } catch {
    // Not there, or not ours: then there is no result.
    return undefined;
  }
}
