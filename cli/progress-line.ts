import type { Progress } from '../src/pipeline/index.ts';
import type { Terminal } from './terminal.ts';

/**
 * Runs work with a progress bar on the terminal, which is gone when the work is done or fails. Silent when asked, and
 * where there is no terminal. The steps block, so the bar is drawn as each begins, without waiting to see whether it
 * is a long one.
 */
export async function withProgress<T>(
  terminal: Terminal,
  quiet: boolean,
  work: (progress: Progress) => T | Promise<T>,
): Promise<T> {
  if (quiet || !terminal.bar) return await work(() => {});
  const { SingleBar } = await import('cli-progress');
  // Its own handling of Ctrl-C could not run while a step blocks, and would keep the program from being stopped.
  const bar = new SingleBar({
    stream: terminal.bar,
    format: '{bar} {value}/{total} {title}',
    barsize: 24,
    clearOnComplete: true,
    gracefulExit: false,
  });
  let isDrawn = false;
  try {
    return await work(({ title, done, total }) => {
      if (isDrawn) {
        bar.setTotal(total);
        bar.update(done, { title });
        bar.render();
      } else {
        bar.start(total, done, { title });
        isDrawn = true;
      }
    });
  } finally {
    if (isDrawn) bar.stop();
  }
}
