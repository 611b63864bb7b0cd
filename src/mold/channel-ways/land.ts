import type { Channel } from '../mold.ts';
import { cutRun, runLength } from '../shapes/index.ts';

/** The short last piece of a gate, where the casting is snapped off; left out, as wide and deep as the gate ends. */
export interface Land {
  readonly length: number;
  readonly width?: number | undefined;
  readonly depth?: number | undefined;
}

/** The gate narrowed to its land, at 45 degrees on both sides but within a third of its length. */
export function withLand(channel: Channel, land: Land): Channel {
  const { run, laps } = channel;
  const whole = runLength(run);
  const begin = Math.max(0, whole - laps[1] - land.length);
  const before = cutRun(run, 0, begin);
  const shoulder = before[before.length - 1] ?? run[0];
  const { width = run[run.length - 1].width, depth = run[run.length - 1].depth } = land;
  const narrowing = Math.min(Math.abs(shoulder.width - width) / 2, land.length / 3);
  const rest = cutRun(run, begin + narrowing, whole).map((station) => ({ ...station, width, depth }));
  return { ...channel, run: [...before, ...rest] };
}
