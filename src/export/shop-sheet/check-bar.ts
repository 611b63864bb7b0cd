import { mmPerInch } from '../../geometry/index.ts';
import type { Paper } from './paper.ts';

/** Between the two bars, mm. */
const apart = 1;
/** Height of the longest ticks, mm. */
const tallest = 3;

/** Room the bars take over and under the line of the lower one, mm. */
export const barReach = { over: apart + tallest, under: 6 } as const;

/**
 * Two bars that show whether the printer kept the scale, one for each ruler at the bench: the line of the 100 mm one at
 * (x, y) with ticks each 10 mm under it, over it that of 4 in with ticks each quarter inch.
 */
export function checkBars(paper: Paper, x: number, y: number): void {
  bar(paper, x, y, { step: 10, steps: 10, long: 5, down: 1 });
  bar(paper, x, y - apart, { step: mmPerInch / 4, steps: 16, long: 4, down: -1 });
  paper.write('100 mm and 4 in: measure them before you trust this page', x + 8, y + 3.2, { size: 2.4 });
}

interface Ticks {
  /** From one to the next, mm. */
  readonly step: number;
  readonly steps: number;
  /** Every so many-th is long. */
  readonly long: number;
  readonly down: 1 | -1;
}

function bar(paper: Paper, x: number, y: number, { step, steps, long, down }: Ticks): void {
  const whole = steps * step;
  paper.rule(x, y, x + whole, y, 0.4);
  for (let tick = 0; tick <= steps; tick++) {
    const [height, width] = tick % long === 0 ? [tallest, 0.3] : [1.5, 0.15];
    // The outer edges of the end ticks are the ends of the bar.
    const inward = tick === 0 ? width / 2 : tick === steps ? -width / 2 : 0;
    const at = x + tick * step + inward;
    paper.rule(at, y, at, y + down * height, width);
  }
}
