import { readdir, readFile } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.wasm': 'application/wasm',
  '.yaml': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
  '.stl': 'model/stl',
  '.ttf': 'font/ttf',
};

export interface PageFile {
  readonly path: string;
  readonly type: string;
}

/**
 * The built page's files by the address they are asked for under. Listed once: an address that is not on the list is
 * no file, however it is written, so there is no path to walk out on.
 */
export async function listPage(folder: string): Promise<ReadonlyMap<string, PageFile>> {
  const found = new Map<string, PageFile>();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    const type = types[extname(entry.name)];
    if (type)
      found.set(
        `/${path
          .slice(folder.length + 1)
          .split(sep)
          .join('/')}`,
        { path, type },
      );
  }
  return found;
}

/** The page itself, with the word that lets it write put into its head. */
export async function pageWithToken(path: string, token: string): Promise<string> {
  const html = await readFile(path, 'utf8');
  return html.replace('<meta charset="utf-8" />', `$&<meta name="write-token" content="${token}" />`);
}
