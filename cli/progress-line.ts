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

/**
 * Runs work on many things with a bar that counts them and says how long the rest will take; `tick` counts one and
 * shows its name. Silent when asked, and where there is no terminal.
 */
export async function withCount<T>(
  terminal: Terminal,
  quiet: boolean,
  total: number,
  work: (tick: (name: string) => void) => Promise<T>,
): Promise<T> {
  if (quiet || !terminal.bar) return await work(() => {});
  const { SingleBar } = await import('cli-progress');
  const bar = new SingleBar({
    stream: terminal.bar,
    format: '{bar} {value}/{total}  {eta_formatted} left  {title}',
    barsize: 24,
    clearOnComplete: true,
    gracefulExit: false,
    etaBuffer: 32,
  });
  bar.start(total, 0, { title: '' });
  try {
    return await work((title) => bar.increment(1, { title }));
  } finally {
    bar.stop();
  }
}
