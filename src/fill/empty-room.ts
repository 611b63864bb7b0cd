import { halfWidthAt } from '../physics/index.ts';
import type { Cells } from './cells.ts';
import { clearanceOf } from './clearance.ts';
import type { Conditions } from './conditions.ts';
import { type LockRule, lockLimits } from './lock.ts';
import { findNarrow } from './necks.ts';
import { openParts } from './open-parts.ts';
import { pullAt, type Ranks, rankCells } from './potential.ts';
import { type Slate, type Stretch, slateFor, stretchesOf } from './stretches.ts';

/** A cavity before metal comes: what no gate or vent changes. */
export interface EmptyRoom {
  readonly cells: Cells;
  readonly conditions: Conditions;
  readonly ranks: Ranks;
  /** Distance of each cell's middle from the nearest wall, mm. */
  readonly clearance: Float32Array;
  /** Its narrow places under one rule of what narrow is; found once for each. */
  narrowUnder(rule: LockRule): readonly NarrowPlace[];
}

/** A narrow place, with the stretches metal meets in it from its mouth and from the cells of gates. */
interface NarrowPlace {
  stretchesFrom(gate: ReadonlySet<number>): readonly Stretch[];
}

export function emptyRoom(cells: Cells, conditions: Conditions): EmptyRoom {
  const clearance = clearanceOf(cells);
  const slate = slateFor(cells);
  const known = new Map<number, readonly NarrowPlace[]>();
  const narrowUnder = (rule: LockRule): readonly NarrowPlace[] => {
    const bond = lockLimits(rule, 1).edge;
    const found =
      known.get(bond) ?? narrowPlaces(cells, clearance, neededRoom(cells, conditions, bond), slate);
    known.set(bond, found);
    return found;
  };
  return { cells, conditions, ranks: rankCells(cells, conditions.field), clearance, narrowUnder };
}

function narrowPlaces(
  cells: Cells,
  clearance: Float32Array,
  needed: Float32Array,
  slate: Slate,
): readonly NarrowPlace[] {
  return findNarrow(cells, clearance, needed, openParts(cells, clearance, needed)).map((narrow) => {
    const from = (gate: ReadonlySet<number>) => stretchesOf(cells, clearance, narrow, gate, slate);
    let plain: readonly Stretch[] | undefined;
    return {
      stretchesFrom: (gate) => {
        if (narrow.cells.some((c) => gate.has(c))) return from(gate);
        // Where nothing is open and no gate opens metal never comes.
        plain ??= narrow.mouth.length > 0 ? from(new Set()) : [];
        return plain;
      },
    };
  });
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
