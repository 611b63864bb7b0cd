import { join } from 'node:path';
import { z } from 'zod';
import { mostTextBytes, readRegularFile } from '../src/preview/server/regular-file.ts';

const things = z.array(z.looseObject({ path: z.string(), sha256: z.string().optional() }));

const manifestSchema = z.looseObject({
  program: z.looseObject({ name: z.literal('discwright') }),
  plan: z.looseObject({ file: z.string().optional(), inputs: z.string().optional() }).optional(),
  only: z.array(z.string()).optional(),
  files: things,
  withheld: z.array(z.looseObject({ id: z.string() })).optional(),
});

/** The manifest an earlier build left. Loads nothing of the core, for it is read wherever a folder is written. */
export type EarlierBuild = z.infer<typeof manifestSchema>;

export const manifestName = 'manifest.json';

export const parseManifest = (bytes: Uint8Array): EarlierBuild =>
  manifestSchema.parse(JSON.parse(new TextDecoder().decode(bytes)));

/** What an earlier build says it left in a folder; undefined where there is no manifest of one. */
export async function readEarlier(folder: string): Promise<EarlierBuild | undefined> {
  try {
    const read = await readRegularFile(join(folder, manifestName), mostTextBytes);
    return 'fault' in read ? undefined : parseManifest(read.bytes);
  } catch {
    // Not there, or not ours: then there was no build.
    return undefined;
  }
}
