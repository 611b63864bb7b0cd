import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import { folderSchema } from '../../src/export/index.ts';
import type { PlanSource } from '../../src/pipeline/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { version } from '../version.ts';

/** SHA-256, hex, of what is asked for and all it rests on. */
export const variantKey = (asked: unknown, inputs: string): string =>
  createHash('sha256')
    .update(`${inputs} ${JSON.stringify(asked)}`)
    .digest('hex');

/**
 * SHA-256, hex, of all that a plan's results rest on: its bytes, those of every file it names, the program's version and the
 * folder's layout.
 * Every item goes in with its length, so that no two lists run into one.
 */
export async function inputsKey({ bytes, name, files }: PlanSource): Promise<string> {
  const hash = createHash('sha256');
  const add = (item: string | Uint8Array): void => {
    hash.update(`${typeof item === 'string' ? Buffer.byteLength(item) : item.length}:`).update(item);
  };
  add(version);
  // A folder laid out another way is not finished, nor one to add to.
  add(String(folderSchema));
  add(basename(name));
  add(bytes);
  const { plan } = readPlan(bytes, name);
  for (const path of filesOf(plan?.masters ?? {})) {
    const read = await files(path);
    add('fault' in read ? read.fault : read.bytes);
  }
  return hash.digest('hex');
}

type Masters = NonNullable<NonNullable<ReturnType<typeof readPlan>['plan']>['masters']>;

const filesOf = (masters: Masters): string[] =>
  Object.values(masters).flatMap((spec) => {
    if (spec.kind === 'mesh') return [spec.file];
    return 'outline' in spec.shape ? [spec.shape.outline] : [];
  });
