import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const isSource = import.meta.url.endsWith('.ts');
const root = fileURLToPath(new URL('../../', import.meta.url));
/** The source, or all files of the compiled program: they lie in one folder. */
const code = isSource ? join(root, 'src') : dirname(fileURLToPath(import.meta.url));

/**
 * SHA-256, hex, of all of the program that results come from: its code, the packages it asks for, each by its exact version,
 * and the engine that runs it. The page and its server make no results.
 */
export function programStamp(): string {
  const hash = createHash('sha256');
  const add = (item: string | Uint8Array): void => {
    hash.update(`${typeof item === 'string' ? Buffer.byteLength(item) : item.length}:`).update(item);
  };
  const packages = readFileSync(join(root, 'package.json'));
  for (const item of [process.version, process.versions.v8, process.arch, packages]) add(item);
  for (const path of readdirSync(code, { recursive: true, encoding: 'utf8' }).sort()) {
    if (path.startsWith(`preview${sep}`) || !/\.[jt]s$/.test(path)) continue;
    add(path);
    add(readFileSync(join(code, path)));
  }
  return hash.digest('hex');
}
