import { createHash } from 'node:crypto';
import type { FileAccess } from '../../src/pipeline/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { version } from '../version.ts';

/**
 * SHA-256, hex, of all that a variant's result rests on: what is asked for, the variant's plan, the bytes of every file
 * it names and the program's version. Every item goes in with its length, so that no two lists run into one.
 */
export async function variantKey(
  asked: unknown,
  planBytes: Uint8Array,
  planName: string,
  files: FileAccess,
): Promise<string> {
  const hash = createHash('sha256');
  const add = (item: string | Uint8Array): void => {
    hash.update(`${typeof item === 'string' ? Buffer.byteLength(item) : item.length}:`).update(item);
  };
  add(version);
  add(JSON.stringify(asked));
  add(planName);
  add(planBytes);
  const { plan } = readPlan(planBytes, planName);
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
