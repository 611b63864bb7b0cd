import { type Finding, finding } from '../findings/index.ts';
import { KernelFault } from '../kernel/index.ts';
import type { Mold, Task, Tools } from '../mold/index.ts';
import { Cache } from './cache.ts';
import { contentKey } from './content-key.ts';
import { memoizeIn } from './memoize-in.ts';
import type { Progress } from './progress.ts';

export interface RunOptions {
  readonly cache?: Cache;
  readonly progress?: Progress;
}

/** What one unit gave. */
export interface Done<O> {
  readonly task: Pick<Task<unknown>, 'id'>;
  readonly output: O;
}

/** A unit that the kernel could not do. */
export interface Failure {
  readonly task: Pick<Task<unknown>, 'id' | 'title'>;
  readonly finding: Finding;
}

/** Runs every unit of every task, in order; see `stepTasks`. */
export function runTasks<O>(
  tasks: readonly Task<O>[],
  mold: Mold,
  tools: Tools,
  options: RunOptions = {},
): { done: Done<O>[]; failures: Failure[] } {
  return drain(stepTasks(tasks, mold, tools, options));
}

/** Takes every step of what can be left off between steps. */
export function drain<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Runs every unit of every task, in order, with a stop before each at which it may be left off: a shell that has to
 * answer meanwhile can do so there. A kernel fault becomes a failure with a finding about the unit's subject; any
 * other throw is a programmer's error and passes through.
 */
export function* stepTasks<O>(
  tasks: readonly Task<O>[],
  mold: Mold,
  tools: Tools,
  { cache, progress }: RunOptions = {},
): Generator<void, { done: Done<O>[]; failures: Failure[] }> {
  // What tasks share is kept for the run where nobody keeps it for longer.
  const shared: Tools = { memoize: memoizeIn(cache ?? new Cache()), ...tools };
  const results: Done<O>[] = [];
  const failures: Failure[] = [];
  const units = tasks.flatMap((task) => task.units(mold).map((unit) => ({ task, unit })));
  for (const [before, { task, unit }] of units.entries()) {
    progress?.({ title: task.title, done: before, total: units.length });
    yield;
    try {
      const run = () => unit.run(shared);
      const output = cache ? cache.memoize(`${task.id} ${contentKey(unit.input)}`, run) : run();
      results.push({ task, output });
    } catch (error) {
      if (!(error instanceof KernelFault)) throw error;
      const values = { task: task.title, fault: error.message };
      failures.push({ task, finding: finding('solid.failed', { subject: unit.subject, values }) });
    }
  }
  return { done: results, failures };
}
