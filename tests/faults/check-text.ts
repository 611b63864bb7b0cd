import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Report } from '../../src/findings/index.ts';
import { loadKernel } from '../../src/kernel/index.ts';
import { Cache, checkMold, readMold, unreadReport } from '../../src/pipeline/index.ts';

export const faultFolder = fileURLToPath(new URL('.', import.meta.url));

// One for all plans of a test file: most of a plan with one fault is the same as without it.
const cache = new Cache(20_000);

/** The report on the text of a plan, with its files read from a folder. */
export async function checkText(text: string, name: string, folder = faultFolder): Promise<Report> {
  const kernel = await loadKernel();
  const { mold, findings, units } = await readMold(
    {
      bytes: new TextEncoder().encode(text),
      name,
      files: async (path) => ({
        bytes: readFileSync(join(folder, path)),
        name: basename(path),
        outside: false,
      }),
    },
    kernel,
    { cache },
  );
  return mold ? checkMold(mold, findings, kernel, { cache }) : unreadReport(findings, units);
}

/** What of a report is no answer, by the place it stands at: numbers that are NaN or infinite, and words left blank. */
export function badNumbers(value: unknown, at = 'report'): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at}: ${value}`];
  if (typeof value === 'string')
    return value.trim() === '' || /\b(NaN|Infinity|undefined|null)\b/.test(value) ? [`${at}: ${value}`] : [];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, item]) => badNumbers(item, `${at}.${key}`));
}
