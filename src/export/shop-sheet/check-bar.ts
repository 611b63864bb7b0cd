import type { Paper } from './paper.ts';

/** Length of the bar that shows whether the printer kept the scale, mm. */
const barLength = 100;

/** A bar of 100 mm, upper left end at (x, y), lying or standing, with ticks each 10 mm. */
export function checkBar(paper: Paper, x: number, y: number, lying: boolean): void {
  const to = (along: number, across: number): [number, number] =>
    lying ? [x + along, y + across] : [x + across, y + along];
  const stroke = (a: [number, number], b: [number, number], width: number) =>
    paper.rule(a[0], a[1], b[0], b[1], width);
  stroke(to(0, 0), to(barLength, 0), 0.4);
  for (let tick = 0; tick <= barLength; tick += 10) {
    const [length, width] = tick % 50 === 0 ? [3, 0.3] : [1.5, 0.15];
    // The outer edges of the end ticks are the ends of the bar.
    const at = tick + (tick === 0 ? width / 2 : tick === barLength ? -width / 2 : 0);
    stroke(to(at, 0), to(at, length), width);
  }
  const text = lying ? '100 mm: measure it before you trust this page' : '100 mm';
  if (lying) paper.write(text, x + 8, y + 3.2, { size: 2.4 });
  else paper.write(text, x + 3.6, y + barLength / 2, { size: 2.4 });
}
