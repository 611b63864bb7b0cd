import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { FontFiles } from '../src/export/index.ts';

const resolve = createRequire(import.meta.url).resolve;

/** The faces of the shop sheet, from the font package. */
export async function readFonts(): Promise<FontFiles> {
  const read = (name: string) => readFile(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  const [plain, bold] = await Promise.all([read('DejaVuSans'), read('DejaVuSans-Bold')]);
  return { plain, bold };
}
