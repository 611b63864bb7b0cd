/**
 * Writes the demo's masters as binary STL files into presets/hedgerow/masters: `npm run masters`, and at install.
 * Each file's header carries a key of the code that shaped it, so that a second run with the same code makes and
 * writes nothing. Same code, same bytes.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeStl } from '../src/export/stl.ts';
import { loadKernel } from '../src/kernel/index.ts';
import { hedgerowMasters } from './hedgerow/index.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
/** All code whose change may change a master. */
const makers = ['hedgerow', 'shaping', '../src/kernel'];

/** A short hash of the masters' code and of the kernel. */
export function makersKey(): string {
  const hash = createHash('sha256');
  const sources = makers.flatMap((folder) =>
    readdirSync(join(here, folder))
      .filter((name) => name.endsWith('.ts'))
      .sort()
      .map((name) => join(here, folder, name)),
  );
  const wasm = createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm');
  for (const path of [...sources, join(here, '../src/export/stl.ts'), wasm]) hash.update(readFileSync(path));
  return hash.digest('hex').slice(0, 16);
}

const headerBytes = 80;

/** Whether the file is there, whole, and made by the code of the key. */
function isCurrent(path: string, key: string): boolean {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch {
    return false;
  }
  return (
    bytes.length > headerBytes + 4 &&
    bytes.length === headerBytes + 4 + 50 * bytes.readUInt32LE(headerBytes) &&
    bytes.toString('latin1', 0, headerBytes).includes(key)
  );
}

/** Brings a folder up to date; gives the names of the files written. */
export async function makeMasters(folder: string): Promise<string[]> {
  mkdirSync(folder, { recursive: true });
  const key = makersKey();
  const due = Object.keys(hedgerowMasters).filter((name) => !isCurrent(join(folder, `${name}.stl`), key));
  if (due.length === 0) return [];
  const kernel = await loadKernel();
  for (const name of due) {
    const path = join(folder, `${name}.stl`);
    writeFileSync(`${path}.tmp`, writeStl(hedgerowMasters[name](kernel), `${name} mm ${key}`));
    renameSync(`${path}.tmp`, path);
  }
  return due;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  makeMasters(join(here, 'hedgerow/masters')).then(
    (written) =>
      console.log(
        written.length > 0 ? `masters: wrote ${written.join(', ')}` : 'masters: all files are current',
      ),
    (error: unknown) => {
      console.error(error);
      process.exitCode = 1;
    },
  );
}
