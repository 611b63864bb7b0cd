import type { Channel } from '../src/mold/index.ts';

interface Straight extends Omit<Channel, 'run' | 'laps' | 'section'> {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly width: number;
  readonly depth: number;
}

/** A channel in one straight line, as gates (half-round) and vents (trapezoids) are where the plan says no more. */
export function straightChannel({ from, to, width, depth, ...rest }: Straight): Channel {
  const section =
    rest.kind === 'vent'
      ? ({ kind: 'trapezoid', draftRad: Math.PI / 9 } as const)
      : ({ kind: 'half-round' } as const);
  const run = [from, to].map((at) => ({ at, width, depth }));
  return { ...rest, run, laps: [width / 2, width / 2], section };
}
