import { Piscina } from 'piscina';
import type { VariantOutcome, VariantTask } from './make-variant.ts';

/** A fault of the program while one variant was made. */
interface Broken {
  readonly name: string;
  readonly state: 'broken';
  readonly built: false;
  readonly stops: 0;
  readonly warnings: 0;
  readonly reason: string;
}

export type Outcome = VariantOutcome | Broken;

const worker = (): string =>
  new URL(import.meta.url.endsWith('.ts') ? './from-source.mjs' : './make-variant.js', import.meta.url).href;

/**
 * Makes variants on worker threads and tells of each as it is done. Each worker is given its next task when it has
 * done the last, so that a long list costs no memory. Begins no more where a full disk takes none; stops at once, between two folders or within one, when `signal`
 * does; what was finished stays.
 */
export async function runVariants(
  tasks: Iterable<VariantTask>,
  workers: number,
  signal: AbortSignal,
  tell: (outcome: Outcome) => void,
): Promise<void> {
  const pool = new Piscina({
    filename: worker(),
    name: 'makeVariant',
    minThreads: workers,
    maxThreads: workers,
  });
  const list = tasks[Symbol.iterator]();
  let isFull = false;
  const workThrough = async (): Promise<void> => {
    while (!isFull && !signal.aborted) {
      const next = list.next();
      if (next.done) return;
      const outcome = await makeOne(pool, next.value);
      isFull ||= outcome.state === 'no room';
      if (!signal.aborted) tell(outcome);
    }
  };
  const broken = new Promise<void>((resolve) => signal.addEventListener('abort', () => resolve()));
  try {
    const all = Promise.all(Array.from({ length: workers }, workThrough));
    await Promise.race([all, broken]);
    // What fails once the workers are gone has been told by the signal.
    if (signal.aborted) all.catch(() => {});
  } finally {
    await pool.destroy();
  }
}

async function makeOne(pool: Piscina, task: VariantTask): Promise<Outcome> {
  try {
    return (await pool.run(task)) as VariantOutcome;
  } catch (error) {
    const reason = `a fault of the program: ${error instanceof Error ? error.message : String(error)}`;
    return { name: task.variant.name, state: 'broken', built: false, stops: 0, warnings: 0, reason };
  }
}
