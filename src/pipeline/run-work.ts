import { type Finding, finding } from '../findings/index.ts';
import { KernelFault } from '../kernel/index.ts';
import type { Mold, Tools, Work } from '../mold/index.ts';
import { Cache } from './cache.ts';
import { contentKey } from './content-key.ts';
import type { Progress } from './progress.ts';
import { rememberIn } from './remember-in.ts';

export interface RunOptions {
  readonly cache?: Cache;
  readonly progress?: Progress;
}

/** What one job gave. */
export interface Done<O> {
  readonly work: Pick<Work<unknown>, 'id'>;
  readonly output: O;
}

/** A job that the kernel could not do. */
export interface Failure {
  readonly work: Pick<Work<unknown>, 'id' | 'title'>;
  readonly finding: Finding;
}

/** Runs every job of every work, in order; see `stepWorks`. */
export function runWorks<O>(
  works: readonly Work<O>[],
  mold: Mold,
  tools: Tools,
  options: RunOptions = {},
): { done: Done<O>[]; failures: Failure[] } {
  return toTheEnd(stepWorks(works, mold, tools, options));
}

/** Takes every step of what can be left off between steps. */
export function toTheEnd<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Runs every job of every work, in order, with a stop before each at which it may be left off: a shell that has to
 * answer meanwhile can do so there. A kernel fault becomes a failure with a finding about the job's subject; any
 * other throw is a programmer's error and passes through.
 */
export function* stepWorks<O>(
  works: readonly Work<O>[],
  mold: Mold,
  tools: Tools,
  { cache, progress }: RunOptions = {},
): Generator<void, { done: Done<O>[]; failures: Failure[] }> {
  // What works share is kept for the run where nobody keeps it for longer.
  const shared: Tools = { remember: rememberIn(cache ?? new Cache()), ...tools };
  const results: Done<O>[] = [];
  const failures: Failure[] = [];
  const jobs = works.flatMap((work) => work.jobs(mold).map((job) => ({ work, job })));
  for (const [before, { work, job }] of jobs.entries()) {
    progress?.({ title: work.title, done: before, total: jobs.length });
    yield;
    try {
      const run = () => job.run(shared);
      const output = cache ? cache.remember(`${work.id} ${contentKey(job.input)}`, run) : run();
      results.push({ work, output });
    } catch (error) {
      if (!(error instanceof KernelFault)) throw error;
      const values = { work: work.title, fault: error.message };
      failures.push({ work, finding: finding('solid.failed', { subject: job.subject, values }) });
    }
  }
  return { done: results, failures };
}
