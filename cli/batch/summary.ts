import { createWriteStream } from 'node:fs';
import { mkdtemp, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { finished } from 'node:stream/promises';
import { readFinished } from './finished.ts';
import { summaryCsv } from './summary-csv.ts';
import { summaryJson } from './summary-json.ts';
import { summaryPage } from './summary-page.ts';
import type { SummaryWriter } from './summary-writer.ts';
import type { Variant } from './variant.ts';

const writers: readonly SummaryWriter[] = [summaryCsv, summaryJson, summaryPage];

export interface SummaryOptions {
  readonly folder: string;
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
  const { folder, title, variants, temporary } = options;
  const paths = [...new Set(variants.flatMap(({ settings }) => settings.map(({ path }) => path)))];
  const fresh = await mkdtemp(join(folder, `.${temporary}-${process.pid}-`));
  try {
    const open = writers.map((writer) => ({ writer, to: createWriteStream(join(fresh, writer.file)) }));
    for (const { writer, to } of open) to.write(writer.head(paths, title));
    let there = 0;
    for (const { name } of variants) {
      const row = (await readFinished(join(folder, name)))?.row;
      if (!row) continue;
      for (const { writer, to } of open) await send(to, writer.row(row, paths, there === 0));
      there++;
    }
    for (const { writer, to } of open) {
      to.end(writer.foot());
      await finished(to);
    }
    for (const { file } of writers) await rename(join(fresh, file), join(folder, file));
    return { there, missing: variants.length - there };
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}

/** Waits where the disk is slower than the rows come. */
async function send(to: NodeJS.WritableStream, text: string): Promise<void> {
  if (!to.write(text)) await new Promise((resolve) => to.once('drain', resolve));
}
