import { boyleShare, leakFlow } from '../physics/index.ts';
import { type Cells, cellAt, middleOf, sides, volumeOf, wall } from './cells.ts';
import type { Conditions, Pocket, Port, SealedBy } from './conditions.ts';
import { type Seals, shut } from './escape.ts';
import type { Lock } from './locks.ts';
import { potentialAt, pressureUnder, type Ranks, type SpinField } from './potential.ts';

/** Pockets smaller than this are not told, mm3. */
export const leastPocket = 0.5;

/** What is known of a room when its pockets are sought. */
export interface SealedRoom {
  readonly cells: Cells;
  readonly ranks: Ranks;
  readonly clearance: Float32Array;
  readonly seals: Seals;
  readonly out: Int32Array;
  readonly ports: readonly Port[];
  readonly locks: readonly Lock[];
}

/** Air that is shut in, each stretch by itself and parted where a neck ends; the largest first. */
export function pocketsOf(room: SealedRoom, conditions: Conditions): Pocket[] {
  const { cells, seals, out, locks } = room;
  const { count, beside } = cells;
  // 0 is the open room, from 1 on locks.
  const stretch = new Int32Array(count);
  locks.forEach((lock, k) => {
    for (const c of lock.cells) stretch[c] = k + 1;
  });
  const isTrapped = (c: number): boolean => out[c] < seals.rank[c];
  const seen = new Uint8Array(count);
  const pockets: Pocket[] = [];
  for (let first = 0; first < count; first++) {
    if (seen[first] !== 0 || !isTrapped(first)) continue;
    seen[first] = 1;
    const members = [first];
    for (let k = 0; k < members.length; k++)
      for (let s = sides * members[k]; s < sides * members[k] + sides; s++) {
        const n = beside[s];
        if (n === wall || seen[n] !== 0 || stretch[n] !== stretch[first] || !isTrapped(n)) continue;
        seen[n] = 1;
        members.push(n);
      }
    if (volumeOf(cells, members) < leastPocket) continue;
    const pocket = pocketIn(room, conditions, members, locks[stretch[first] - 1]);
    if (pocket.volume >= leastPocket && !isFlat(room, pocket)) pockets.push(pocket);
  }
  return pockets.sort((a, b) => b.volume - a.volume);
}

function pocketIn(room: SealedRoom, conditions: Conditions, found: number[], lock: Lock | undefined): Pocket {
  const { cells, seals, out } = room;
  found.sort((a, b) => seals.rank[a] - seals.rank[b]);
  const members = lock ? found : aboveSeal(room, conditions, found);
  const { volume, pressurePa, face } = pressedTogether(room, conditions, members);
  const last = members[members.length - 1];
  const isUnder = lock?.state === 'rises';
  const at = isUnder ? lock.mouth[0] : last;
  const key = out[members[0]];
  const by = key === shut ? undefined : seals.bySeal[key];
  return {
    cells: members,
    shutIn: volumeOf(cells, members),
    volume,
    place: middleOf(cells, at),
    where: isUnder ? 'mouth' : lock ? 'leg' : 'room',
    ...(lock && { clear: [2 * lock.section.small, 2 * lock.section.large] as const }),
    sealedBy: sealedBy(room, by, lock),
    ...(by !== undefined && { sealedAt: middleOf(cells, by) }),
    pressurePa,
    leaksOut: leaksOut(room, conditions, members, pressurePa, face),
  };
}

function sealedBy({ ports, locks }: SealedRoom, by: number | undefined, lock: Lock | undefined): SealedBy {
  if (by === undefined) return 'never';
  const port = ports.find(({ cells }) => cells.includes(by));
  if (port) return port.kind;
  return lock || locks.some(({ cells }) => cells.includes(by)) ? 'neck' : 'metal';
}

/**
 * Metal closes a way not when it has come to the middle of its last open cell but when it has come to the wall over it:
 * cells lower than that are still filled. A pocket keeps its last cell at least.
 */
function aboveSeal(room: SealedRoom, { field }: Conditions, members: number[]): number[] {
  const { ranks, seals, out } = room;
  const key = out[members[0]];
  if (key === shut) return members;
  const level = wallOver(room, field, seals.bySeal[key]);
  let filled = 0;
  while (filled < members.length - 1 && ranks.potential[members[filled]] < level) filled++;
  return members.slice(filled);
}

/** Least part of its length by which a way to the wall must lead up to count as up. */
const upward = 0.5;

/**
 * Potential of the wall over a cell: its own, or that over a neighbor, since a way along a wall aslant to the cells goes one
 * cell round its steps. The cell's own potential where no wall is over it.
 */
function wallOver({ cells, ranks }: SealedRoom, field: SpinField, c: number): number {
  const { beside, walls } = cells;
  let level = ranks.potential[c];
  for (const n of [c, ...beside.subarray(sides * c, sides * c + sides)]) {
    if (n === wall || ranks.potential[n] < ranks.potential[c]) continue;
    const middle = middleOf(cells, n);
    const steep = 2 * Math.hypot(middle[0], middle[1]) * upward;
    for (let axis = 0; axis < 3; axis++) {
      const offset = walls[3 * n + axis];
      if (Number.isNaN(offset)) continue;
      const [x, y, z] = middle.map((value, a) => (a === axis ? value + offset : value));
      const there = potentialAt(field, x, y, z);
      if (there - ranks.potential[n] > steep * Math.abs(offset)) level = Math.max(level, there);
    }
  }
  return level;
}

/** A pocket that reaches less than a cell inward of what shut it in is a matter of the grid. */
function isFlat({ cells, ranks }: SealedRoom, { cells: members, where, sealedAt }: Pocket): boolean {
  if (where !== 'room' || !sealedAt) return false;
  const level = ranks.potential[cellAt(cells, sealedAt)];
  const highest = members.reduce((most, c) => Math.max(most, ranks.potential[c]), level);
  // The potential falls by 2 r a mm outward.
  return highest - level < 2 * Math.hypot(sealedAt[0], sealedAt[1]) * cells.cell;
}

/**
 * How far metal presses the air together: the face moves on, cell by cell as it would fill them, until the air's
 * pressure is that of the metal at the face (Boyle, isothermal, from one atmosphere). Between two cells along a straight
 * line.
 */
function pressedTogether(
  { cells, ranks }: SealedRoom,
  { field, metal, wellLevel }: Conditions,
  members: readonly number[],
): { readonly volume: number; readonly pressurePa: number; readonly face: number } {
  const head = -wellLevel * wellLevel;
  const all = volumeOf(cells, members);
  let air = all;
  let before = 0;
  for (const [face, c] of members.entries()) {
    const pressurePa = Math.max(0, pressureUnder(field, metal.densityKgM3, head, ranks.potential[c]));
    // Air before the face is here less what would balance it.
    const over = air - all * boyleShare(pressurePa);
    const own = cells.share[c] * cells.cell ** 3;
    if (over <= 0) {
      const back = before > over ? (over / (over - before)) * own : 0;
      return { volume: Math.min(all, air + back), pressurePa, face };
    }
    before = over;
    air -= own;
  }
  return { volume: 0, pressurePa: 0, face: members.length };
}

/** Whether the leak at the parting plane passes a pocket's air while the metal round it is hot. Only where both are given. */
function leaksOut(
  { cells, clearance }: SealedRoom,
  { leak, superheatS }: Conditions,
  members: readonly number[],
  pressurePa: number,
  face: number,
): boolean {
  if (!leak || superheatS === undefined) return false;
  const along = partingLine(cells, members.slice(face));
  if (along === 0) return false;
  const widest = members.reduce((most, c) => Math.max(most, clearance[c]), 0);
  return (
    volumeOf(cells, members) / leakFlow(leak.gap, along, leak.land, pressurePa) < superheatS * widest ** 2
  );
}

/** Length of the parting line (z = 0) round cells, mm: walls of those that the plane goes through. */
function partingLine(cells: Cells, members: readonly number[]): number {
  const { at, low, cell, beside } = cells;
  let walls = 0;
  for (const c of members) {
    const z = low[2] + at[3 * c + 2] * cell;
    if (z < -cell / 2 || z >= cell / 2) continue;
    for (let s = 0; s < 4; s++) if (beside[sides * c + s] === wall) walls++;
  }
  return walls * cell;
}
