import { type Cells, sides, wall } from './cells.ts';
import { nearestParts, notOpen, type OpenParts } from './open-parts.ts';

/** A narrow place of the room: a leg that ends in a wall, a neck between open parts, or all of it. */
export interface Narrow {
  readonly cells: readonly number[];
  /** So many of them, the first, lie deeper than a corner does; the others lead from there to what is open. */
  readonly deep: number;
  /** Of them those beside what is open. */
  readonly mouth: readonly number[];
}

/** What is deeper in a corner than so many needed balls, and cells for the grid, is no corner but a neck. */
const cornerBalls = 1.75;
const cornerCells = 1.5;
export const cornerDepth = (needed: number, cell: number): number =>
  cornerBalls * needed + cornerCells * cell;

/**
 * The narrow places of a room: what lies deeper than a corner does beyond what is open, or between two open parts, with the
 * way there; all of it where nothing is open. Corners themselves count as open.
 */
export function findNarrow(
  cells: Cells,
  clearance: Float32Array,
  needed: Float32Array,
  open: OpenParts,
): Narrow[] {
  const { count, cell } = cells;
  const between = betweenParts(cells, open);
  const isCore = (c: number): boolean =>
    open.part[c] === notOpen &&
    (open.parts === 0 || between[c] !== 0 || open.beyond[c] > cornerDepth(needed[c], cell));
  const owner = new Uint8Array(count);
  const found: Narrow[] = [];
  for (let c = 0; c < count; c++) {
    if (owner[c] !== 0 || !isCore(c)) continue;
    const core = together(cells, c, owner, isCore);
    found.push(narrowRound(cells, clearance, needed, open, core, owner));
  }
  return found;
}

/** 1 for what is not open and has parts of two numbers nearest on both sides. */
function betweenParts(cells: Cells, open: OpenParts): Uint8Array {
  const { count, beside } = cells;
  const between = new Uint8Array(count);
  if (open.parts < 2) return between;
  const nearest = nearestParts(cells, open);
  for (let c = 0; c < count; c++)
    for (let s = sides * c; s < sides * c + sides && open.part[c] === notOpen; s++) {
      const n = beside[s];
      if (n !== wall && nearest[n] !== nearest[c]) between[c] = 1;
    }
  return between;
}

/** All cells joined to one of which something holds, marked as taken. */
function together(
  { beside }: Cells,
  first: number,
  owner: Uint8Array,
  holds: (c: number) => boolean,
): number[] {
  const found = [first];
  owner[first] = 1;
  for (let k = 0; k < found.length; k++)
    for (let s = sides * found[k]; s < sides * found[k] + sides; s++) {
      const n = beside[s];
      if (n === wall || owner[n] !== 0 || !holds(n)) continue;
      owner[n] = 1;
      found.push(n);
    }
  return found;
}

/** A narrow place grown from its core to what is open, and no farther than its own width along the corners there. */
function narrowRound(
  cells: Cells,
  clearance: Float32Array,
  needed: Float32Array,
  open: OpenParts,
  core: readonly number[],
  owner: Uint8Array,
): Narrow {
  const { cell } = cells;
  const members = [...core];
  const mouth: number[] = [];
  let widest = 0;
  for (const c of core) widest = Math.max(widest, clearance[c]);
  // Aslant to all three axes a way takes up to the root of three more steps.
  let left = Math.ceil((Math.sqrt(3) * cornerDepth(needed[core[0]], cell)) / cell);
  for (let ring = core; ring.length > 0; left--) {
    const next: number[] = [];
    for (const c of ring) if (growFrom(cells, open, owner, c, left > 0 ? next : undefined)) mouth.push(c);
    for (const c of next) members.push(c);
    if (mouth.length > 0) left = Math.min(left, Math.ceil((2 * widest) / cell) + 1);
    ring = next;
  }
  return { cells: members, deep: core.length, mouth };
}

/** Adds to `next` what is beside a cell, neither open nor taken; tells whether something open is. */
function growFrom(
  { beside }: Cells,
  { part }: OpenParts,
  owner: Uint8Array,
  c: number,
  next: number[] | undefined,
): boolean {
  let isMouth = false;
  for (let s = sides * c; s < sides * c + sides; s++) {
    const n = beside[s];
    if (n === wall) continue;
    if (part[n] !== notOpen) isMouth = true;
    else if (next && owner[n] === 0) {
      owner[n] = 1;
      next.push(n);
    }
  }
  return isMouth;
}
