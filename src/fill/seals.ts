import { atmospherePa, bondNumber } from '../physics/index.ts';
import { type Cells, middleOf, sides, wall } from './cells.ts';
import type { Conditions, Port } from './conditions.ts';
import type { Seals } from './escape.ts';
import { type Filling, never } from './fill-order.ts';
import { type LockRule, lockLimits } from './lock.ts';
import type { Neck } from './necks.ts';
import { potentialAt, pressureUnder, pullAt } from './potential.ts';
import { ranksOf, sortedBy } from './sort.ts';

/**
 * What a neck does once metal stands before it: `passes` lets metal and air change places; `shuts` holds the metal off;
 * `rises` lets metal run to its end while the air comes up and stays under the mouth.
 */
export type NeckState = 'passes' | 'shuts' | 'rises';

/**
 * Judged by the larger clear width, along which a meniscus tilts. Over the limit of a mouth's edge it passes. Between that
 * and the limit inside a leg it hangs on the edge, unless pressure has pushed the face deeper than about half the width.
 */
export function stateOf(cells: Cells, neck: Neck, rule: LockRule, conditions: Conditions): NeckState {
  const { field, metal, wellLevel } = conditions;
  const [x, y, z] = middleOf(cells, neck.half.at);
  const { small, large } = neck.half;
  const bond = bondNumber(metal.densityKgM3, pullAt(field, x, y), large, metal.tensionNM);
  const { leg, edge } = lockLimits(rule, cells.planar ? 0 : small / large);
  if (bond >= edge) return 'passes';
  if (bond < leg || neck.mouth.length === 0) return 'shuts';
  const head = -wellLevel * wellLevel;
  const [mx, my, mz] = middleOf(cells, neck.mouth[0]);
  const pressure = Math.max(0, pressureUnder(field, metal.densityKgM3, head, potentialAt(field, mx, my, mz)));
  const pushed = (neck.length * pressure) / (atmospherePa + pressure);
  return pushed > small && potentialAt(field, x, y, z) < potentialAt(field, mx, my, mz) ? 'rises' : 'shuts';
}

/**
 * When each cell is shut to air: when it is filled; in a neck that does not pass, from when metal first wets what is
 * beside its mouth, step by step inward. A neck with a gate in it is the metal's own way and shuts as it is filled; a vent
 * shuts as soon as it is wetted.
 */
export function sealsOf(
  cells: Cells,
  { filled, wet }: Filling,
  shutting: readonly Neck[],
  ports: readonly Port[],
): Seals {
  const { count } = cells;
  const time = Uint32Array.from(filled, (value) => (value === never ? count : value));
  const steps = new Uint32Array(shutting.length > 0 ? count : 0);
  for (const neck of shutting) {
    const first = firstWet(cells, neck, wet);
    neck.cells.forEach((c, k) => {
      time[c] = first;
      // Just after what was filled then.
      steps[c] = neck.steps[k] + 1;
    });
  }
  for (const { kind, cells: mouth } of ports)
    if (kind === 'vent') for (const c of mouth) if (wet[c] !== never) time[c] = Math.min(time[c], wet[c]);
  const bySeal = sortedBy(time, shutting.length > 0 ? sortedBy(steps) : undefined);
  return { rank: ranksOf(bySeal), bySeal };
}

function firstWet({ beside, count }: Cells, { cells, mouth }: Neck, wet: Int32Array): number {
  const own = new Set(cells);
  let first = count;
  for (const c of mouth)
    for (let s = sides * c; s < sides * c + sides; s++) {
      const n = beside[s];
      if (n !== wall && !own.has(n) && wet[n] !== never) first = Math.min(first, wet[n]);
    }
  return first;
}
