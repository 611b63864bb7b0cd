import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * SHA-256, hex, of all of the program that results come from: its code, the packages it asks for, each by its exact version,
 * and the engine that runs it. The page and its server make no results.
 */
export function programStamp(): string {
  const hash = createHash('sha256');
  const add = (item: string | Uint8Array): void => {
    hash.update(`${typeof item === 'string' ? Buffer.byteLength(item) : item.length}:`).update(item);
  };
  for (const item of [process.version, process.versions.v8, process.arch, packages()]) add(item);
  const src = join(root, 'src');
  for (const path of readdirSync(src, { recursive: true, encoding: 'utf8' }).sort()) {
    if (path.startsWith(`preview${sep}`) || !/\.[jt]s$/.test(path)) continue;
    add(path);
    add(readFileSync(join(src, path)));
  }
  return hash.digest('hex');
}

/** package.json beside the source, or above the compiled program. */
function packages(): Uint8Array {
  try {
    return readFileSync(join(root, 'package.json'));
  } catch {
    return readFileSync(join(root, '..', 'package.json'));
  }
}
