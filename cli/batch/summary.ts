import { mkdtemp, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { UnitSystem } from '../../src/findings/index.ts';
import { asUnwritable } from './batch-folder.ts';
import { readFinished } from './finished.ts';
import { summaryCsv } from './summary-csv.ts';
import { summaryJson } from './summary-json.ts';
import { summaryPage } from './summary-page.ts';
import type { SummaryWriter } from './summary-writer.ts';
import type { Variant } from './variant.ts';

const writers: readonly SummaryWriter[] = [summaryCsv, summaryJson, summaryPage];

export interface SummaryOptions {
  readonly folder: string;
  /** The system the plan is written in. */
  readonly units: UnitSystem;
  /** Shown over the page. */
  readonly title: string;
  /** All of the batch, whoever makes them: those whose folder is there are in the summary. */
  readonly variants: readonly Variant[];
  /** Begin of the temporary folder's name; no two runs that may be at work at once have the same. */
  readonly temporary: string;
}

/** How many of the variants are in the summary. */
export interface Summed {
  readonly there: number;
  readonly missing: number;
}

/**
 * Writes batch-summary.csv, .json and .html from the variants' folders, in the order of the variants. Each file is
 * renamed into its place when it is whole.
 */
export async function writeSummary(options: SummaryOptions): Promise<Summed> {
  const { folder, variants, temporary } = options;
  const paths = [...new Set(variants.flatMap(({ settings }) => settings.map(({ path }) => path)))];
  try {
    const fresh = await mkdtemp(join(folder, `.${temporary}-${process.pid}-`));
    try {
      const there = await writeAll(fresh, options, paths);
      for (const { file } of writers) await rename(join(fresh, file), join(folder, file));
      return { there, missing: variants.length - there };
    } finally {
      await rm(fresh, { recursive: true, force: true });
    }
  } catch (error) {
    throw asUnwritable(error, folder, 'the variants that are finished are whole, the summary is not new');
  }
}

/** Every summary, row by row; how many variants are in them. */
async function writeAll(
  fresh: string,
  { folder, title, units, variants }: SummaryOptions,
  paths: readonly string[],
): Promise<number> {
  const files = await Promise.all(
    writers.map(async (writer) => ({ writer, to: await open(join(fresh, writer.file), 'w') })),
  );
  try {
    for (const { writer, to } of files) await to.appendFile(writer.head(paths, title, units));
    let there = 0;
    for (const { name } of variants) {
      const row = (await readFinished(join(folder, name)))?.row;
      if (!row) continue;
      for (const { writer, to } of files) await to.appendFile(writer.row(row, paths, there === 0, units));
      there++;
    }
    for (const { writer, to } of files) await to.appendFile(writer.foot());
    return there;
  } finally {
    for (const { to } of files) await to.close();
  }
}
