import type { Cells } from './cells.ts';
import type { Port } from './conditions.ts';
import type { Seals } from './escape.ts';
import { type Filling, never } from './fill-order.ts';
import type { Lock } from './locks.ts';
import { ranksOf, sortedBy } from './sort.ts';

/**
 * When each cell is shut to air: when it is filled; in a lock from when metal first wets what is
 * before its mouth, step by step inward; a vent shuts as soon as it is wetted.
 */
export function sealsOf(
  cells: Cells,
  { filled, wet }: Filling,
  locks: readonly Lock[],
  ports: readonly Port[],
): Seals {
  const { count } = cells;
  const time = Uint32Array.from(filled, (value) => (value === never ? count : value));
  const steps = new Uint32Array(locks.length > 0 ? count : 0);
  for (const lock of locks) {
    const first = lock.before.reduce(
      (least, c) => (wet[c] === never ? least : Math.min(least, wet[c])),
      count,
    );
    lock.cells.forEach((c, k) => {
      time[c] = first;
      // Just after what was filled then.
      steps[c] = lock.steps[k] + 1;
    });
  }
  for (const { kind, cells: mouth } of ports)
    if (kind === 'vent') for (const c of mouth) if (wet[c] !== never) time[c] = Math.min(time[c], wet[c]);
  const bySeal = sortedBy(time, locks.length > 0 ? sortedBy(steps) : undefined);
  return { rank: ranksOf(bySeal), bySeal };
}
