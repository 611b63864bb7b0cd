import { type Finding, finding } from '../findings/index.ts';
import { KernelFault } from '../kernel/index.ts';
import type { Mold, Tools, Work } from '../mold/index.ts';
import type { Cache } from './cache.ts';
import { contentKey } from './content-key.ts';
import type { Progress } from './progress.ts';

export interface RunOptions {
  readonly cache?: Cache;
  readonly progress?: Progress;
}

/**
 * Runs every job of every work, in order. A kernel fault becomes a finding about the job's subject; any other throw
 * is a programmer's error and passes through.
 */
export function runWorks<O>(
  works: readonly Work<O>[],
  mold: Mold,
  tools: Tools,
  { cache, progress }: RunOptions = {},
): { results: O[]; findings: Finding[] } {
  const results: O[] = [];
  const findings: Finding[] = [];
  const jobs = works.flatMap((work) => work.jobs(mold).map((job) => ({ work, job })));
  for (const [done, { work, job }] of jobs.entries()) {
    progress?.({ title: work.title, done, total: jobs.length });
    try {
      const run = () => job.run(tools);
      results.push(cache ? cache.remember(`${work.id} ${contentKey(job.input)}`, run) : run());
    } catch (error) {
      if (!(error instanceof KernelFault)) throw error;
      findings.push(
        finding('solid.failed', { subject: job.subject, says: `${work.title}: ${error.message}.` }),
      );
    }
  }
  return { results, findings };
}
