import { halfWidthAt } from '../physics/index.ts';
import type { Cells } from './cells.ts';
import { clearanceOf } from './clearance.ts';
import type { Conditions } from './conditions.ts';
import { type LockRule, lockLimits } from './lock.ts';
import { findNecks, type Neck } from './necks.ts';
import { openParts } from './open-parts.ts';
import { pullAt, type Ranks, rankCells } from './potential.ts';

/** A cavity before metal comes: what no gate or vent changes. */
export interface EmptyRoom {
  readonly cells: Cells;
  readonly conditions: Conditions;
  readonly ranks: Ranks;
  /** Distance of each cell's middle from the nearest wall, mm. */
  readonly clearance: Float32Array;
  /** Its narrow stretches under one rule of what narrow is; found once for each. */
  necksUnder(lock: LockRule): readonly Neck[];
}

export function emptyRoom(cells: Cells, conditions: Conditions): EmptyRoom {
  const clearance = clearanceOf(cells);
  const known = new Map<number, readonly Neck[]>();
  const necksUnder = (lock: LockRule): readonly Neck[] => {
    const bond = lockLimits(lock, 1).edge;
    const found = known.get(bond) ?? necksOf(cells, clearance, neededRoom(cells, conditions, bond));
    known.set(bond, found);
    return found;
  };
  return { cells, conditions, ranks: rankCells(cells, conditions.field), clearance, necksUnder };
}

function necksOf(cells: Cells, clearance: Float32Array, needed: Float32Array): readonly Neck[] {
  const open = openParts(cells, clearance, needed);
  return open.parts === 0 ? [] : findNecks(cells, clearance, needed, open);
}

/** Half width (mm) an opening needs at each cell to let metal and air pass each other. */
function neededRoom(cells: Cells, { field, metal }: Conditions, bond: number): Float32Array {
  const { at, low, cell, count } = cells;
  const needed = new Float32Array(count);
  for (let c = 0; c < count; c++) {
    const pull = pullAt(field, low[0] + at[3 * c] * cell, low[1] + at[3 * c + 1] * cell);
    needed[c] = halfWidthAt(bond, metal.densityKgM3, pull, metal.tensionNM);
  }
  return needed;
}
