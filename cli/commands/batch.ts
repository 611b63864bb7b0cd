import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { usualFormats } from '../../src/export/index.ts';
import type { PlanSource } from '../../src/pipeline/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import { batchFolderName, batchName, openBatchFolder, recoverAll } from '../batch/batch-folder.ts';
import type { VariantTask } from '../batch/make-variant.ts';
import { type Outcome, runVariants } from '../batch/run-variants.ts';
import { readShard, type Shard, shareOf } from '../batch/shard.ts';
import { describeBatch, tallyOf } from '../batch/show-batch.ts';
import { type SummaryOptions, writeSummary } from '../batch/summary.ts';
import type { Variant } from '../batch/variant.ts';
import { readVariants, type VaryOptions } from '../batch/variants.ts';
import type { CacheOption } from '../cache/kept-results.ts';
import { planFile, refuseOtherPlan } from '../earlier-build.ts';
import { type ExitCode, exitCode, Unreadable } from '../exit.ts';
import { formatsAsked } from '../formats-asked.ts';
import { onlyAsked } from '../only-asked.ts';
import { openPlan } from '../plan-files.ts';
import { withCount } from '../progress-line.ts';
import { showFindings } from '../show-findings.ts';
import type { Terminal } from '../terminal.ts';

export interface BatchCommandOptions extends VaryOptions, CacheOption {
  readonly out: string;
  readonly only?: readonly string[];
  readonly formats?: readonly string[];
  readonly workers?: string;
  readonly shard?: string;
  readonly summary?: true;
  /** Whether variants of another plan are given up. */
  readonly replace?: true;
  readonly json?: true;
  readonly quiet?: true;
}

/**
 * Makes every variant of a plan in a folder of its own, and a summary over all. Exit 1 where one has a stop or could not
 * be built, 2 where something cannot be read or written, 130 after Ctrl-C.
 */
export async function runBatch(
  argument: string,
  options: BatchCommandOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const formats = formatsAsked(options.formats, [...usualFormats, 'overview']);
  const shard = options.shard === undefined ? undefined : readShard(options.shard);
  const workers = readWorkers(options.workers);
  const names = onlyAsked(options.only);
  const plan = await openPlan(argument);
  const text = new TextDecoder().decode(plan.bytes);
  const { source, findings, units } = readPlan(plan.bytes, plan.name);
  if (!source) {
    terminal.err(showFindings(findings, units, terminal.width));
    return exitCode.unreadable;
  }
  const variants = await readVariants(options, text);
  const folder = join(options.out, batchFolderName(plan.name));
  await openBatchFolder(folder);
  const summary = { ...summaryOf(plan, folder, variants, shard), units };
  const mine = options.summary ? [] : shard ? shareOf(variants, shard) : variants;
  await recoverAll(folder, [...mine.map(({ name }) => name), summary.temporary]);
  if (!options.replace) {
    const file = planFile(plan.name);
    for (const { name } of variants) await refuseOtherPlan(join(folder, name), { file });
  }
  const tasks = function* (): Generator<VariantTask> {
    const only = names && { only: names };
    for (const variant of mine)
      yield { plan: argument, text, variant, folder, formats, cache: options.cache === true, ...only };
  };
  const { outcomes, interrupted } = await makeAll(tasks(), mine, workers, options.quiet === true, terminal);
  if (interrupted) await recoverAll(folder, [...mine.map(({ name }) => name), summary.temporary]);
  const summed = await writeSummary(summary);
  const notBegun = interrupted ? 0 : mine.length - outcomes.length;
  if (options.json)
    terminal.out(JSON.stringify({ folder, ...tallyOf(outcomes), notBegun, ...summed, variants: outcomes }));
  else
    terminal.out(
      describeBatch({
        folder,
        outcomes,
        notBegun,
        summed,
        interrupted,
        quiet: options.quiet === true,
        width: terminal.width,
      }),
    );
  return interrupted ? exitCode.interrupted : verdict(outcomes);
}

function verdict(outcomes: readonly Outcome[]): ExitCode {
  if (outcomes.some(({ state }) => state === 'broken')) return exitCode.ours;
  if (outcomes.some(({ state }) => state === 'unwritten' || state === 'no room')) return exitCode.unreadable;
  return outcomes.some(({ built, stops }) => !built || stops > 0) ? exitCode.stop : exitCode.fine;
}

function readWorkers(text: string | undefined): number {
  if (text === undefined) return availableParallelism();
  if (!/^[1-9]\d{0,2}$/.test(text)) throw new Unreadable(`--workers ${text}: give a number from 1 to 999`);
  return Number(text);
}

const summaryOf = (
  { name }: PlanSource,
  folder: string,
  variants: readonly Variant[],
  shard: Shard | undefined,
): Omit<SummaryOptions, 'units'> => ({
  folder,
  variants,
  title: `Variants of ${batchName(name)}`,
  temporary: `batch-summary${shard ? `-${shard.part}-of-${shard.of}` : ''}`,
});

interface AllMade {
  readonly outcomes: readonly Outcome[];
  readonly interrupted: boolean;
}

/** Makes all, with a count of them on the terminal. Ctrl-C breaks it off; a second one ends the program at once. */
async function makeAll(
  tasks: Iterable<VariantTask>,
  mine: readonly Variant[],
  workers: number,
  quiet: boolean,
  terminal: Terminal,
): Promise<AllMade> {
  if (mine.length === 0) return { outcomes: [], interrupted: false };
  const breakOff = new AbortController();
  const stop = (): void => breakOff.abort();
  const signals = ['SIGINT', 'SIGTERM'] as const;
  for (const signal of signals) process.once(signal, stop);
  const made = new Map<string, Outcome>();
  try {
    await withCount(terminal, quiet, mine.length, (tick) =>
      runVariants(tasks, Math.min(workers, mine.length), breakOff.signal, (outcome) => {
        made.set(outcome.name, outcome);
        tick(outcome.name);
      }),
    );
  } finally {
    for (const signal of signals) process.off(signal, stop);
  }
  const outcomes = mine.flatMap(({ name }) => made.get(name) ?? []);
  return { outcomes, interrupted: breakOff.signal.aborted };
}
