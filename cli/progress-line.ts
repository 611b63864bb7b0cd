import { SingleBar } from 'cli-progress';
import type { Progress } from '../src/pipeline/index.ts';
import type { Terminal } from './terminal.ts';

/** Work shorter than this shows no bar, in ms. */
const patience = 1000;

export interface ProgressLine {
  readonly step: Progress;
  end(): void;
}

/** A progress bar on the terminal once the work has taken over a second; silent when asked or when not a terminal. */
export function progressLine(terminal: Terminal, quiet: boolean): ProgressLine {
  if (quiet || !terminal.isTerminal) return { step: () => {}, end: () => {} };
  const began = Date.now();
  let bar: SingleBar | undefined;
  return {
    step: ({ title, done, total }) => {
      if (bar === undefined && Date.now() - began > patience) {
        bar = new SingleBar({
          format: '{bar} {value}/{total} {title}',
          clearOnComplete: true,
          hideCursor: true,
        });
        bar.start(total, done, { title });
      }
      bar?.setTotal(total);
      // The work that follows blocks, so the line must be drawn now and not by the bar's timer.
      bar?.update(done, { title });
      bar?.render();
    },
    end: () => bar?.stop(),
  };
}
