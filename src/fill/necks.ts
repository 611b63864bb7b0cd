import type { Vec3 } from '../geometry/index.ts';
import { type Cells, cellAt, middleOf, sides, wall } from './cells.ts';
import { nearestParts, notOpen, type OpenParts, reachAlong } from './open-parts.ts';

/** A narrow stretch of the room: a leg that ends in a wall, or a neck between open parts. Lengths in mm. */
export interface Neck {
  readonly cells: readonly number[];
  /** Of them those beside what is open. */
  readonly mouth: readonly number[];
  /** Steps from the mouth, for each of `cells`. */
  readonly steps: readonly number[];
  /** Distance from the mouth of its farthest cell. */
  readonly length: number;
  /** Half its smallest and half its largest clear width, where the larger one is least. */
  readonly half: { readonly small: number; readonly large: number; readonly at: number };
}

/** What is deeper in a corner than so many needed balls, and cells for the grid, is no corner but a neck. */
const cornerBalls = 1.75;
const cornerCells = 1.5;

/**
 * The necks of a room: what lies deeper than a corner does beyond what is open, or between two open parts, with the way
 * there. Corners themselves count as open.
 */
export function findNecks(
  cells: Cells,
  clearance: Float32Array,
  needed: Float32Array,
  open: OpenParts,
): Neck[] {
  const { count, cell } = cells;
  const between = betweenParts(cells, open);
  const isCore = (c: number): boolean =>
    open.part[c] === notOpen &&
    (between[c] !== 0 || open.beyond[c] > cornerBalls * needed[c] + cornerCells * cell);
  const owner = new Uint8Array(count);
  const own = new Int32Array(count).fill(outside);
  const necks: Neck[] = [];
  for (let c = 0; c < count; c++) {
    if (owner[c] !== 0 || !isCore(c)) continue;
    const core = together(cells, c, owner, isCore);
    necks.push(neckRound(cells, clearance, needed, open, core, owner, own));
  }
  return necks;
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

/** A neck grown from its core to what is open, and no farther than its own width along the corners there. */
function neckRound(
  cells: Cells,
  clearance: Float32Array,
  needed: Float32Array,
  open: OpenParts,
  core: readonly number[],
  owner: Uint8Array,
  own: Int32Array,
): Neck {
  const { cell } = cells;
  const members = [...core];
  const mouth: number[] = [];
  let widest = 0;
  for (const c of core) widest = Math.max(widest, clearance[c]);
  // Aslant to all three axes a way takes up to the root of three more steps.
  let left = Math.ceil(Math.sqrt(3) * ((cornerBalls * needed[core[0]]) / cell + cornerCells));
  for (let ring = core; ring.length > 0; left--) {
    const next: number[] = [];
    for (const c of ring) if (growFrom(cells, open, owner, c, left > 0 ? next : undefined)) mouth.push(c);
    for (const c of next) members.push(c);
    if (mouth.length > 0) left = Math.min(left, Math.ceil((2 * widest) / cell) + 1);
    ring = next;
  }
  const steps = stepsFrom(cells, members, mouth, own);
  const half = clearWidths(cells, clearance, members, own);
  for (const c of members) own[c] = outside;
  return { cells: members, mouth, steps, length: lengthOf(cells, members, mouth), half };
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

/** Steps from the mouth, for each cell of the neck; left in `own` too, `outside` everywhere else. */
function stepsFrom(
  { beside }: Cells,
  members: readonly number[],
  mouth: readonly number[],
  own: Int32Array,
): number[] {
  for (const c of members) own[c] = unknown;
  for (const c of mouth) own[c] = 0;
  const queue = [...mouth];
  for (let k = 0; k < queue.length; k++)
    for (let s = sides * queue[k]; s < sides * queue[k] + sides; s++) {
      const n = beside[s];
      if (n === wall || own[n] !== unknown) continue;
      own[n] = own[queue[k]] + 1;
      queue.push(n);
    }
  return members.map((c) => Math.max(0, own[c]));
}

const unknown = -1;
const outside = -2;

function lengthOf(cells: Cells, members: readonly number[], mouth: readonly number[]): number {
  if (mouth.length === 0) return 0;
  const sum = [0, 0, 0];
  for (const c of mouth) {
    const middle = middleOf(cells, c);
    for (let x = 0; x < 3; x++) sum[x] += middle[x] / mouth.length;
  }
  let far = 0;
  for (const c of members) {
    const [x, y, z] = middleOf(cells, c);
    far = Math.max(far, Math.hypot(x - sum[0], y - sum[1], z - sum[2]));
  }
  return far;
}

/** Places along a neck at which it is measured, at most. */
const samples = 24;
/** Directions across a neck in which it is measured, over half a turn. */
const directions = 12;

/**
 * The neck's section where its larger clear width is least: a blade that is thin one way and wide the other lets metal and air
 * pass along its width. The widths are chords through the middle of the section, the smaller first, square to each other.
 */
function clearWidths(
  cells: Cells,
  clearance: Float32Array,
  members: readonly number[],
  own: Int32Array,
): Neck['half'] {
  const middles = members.filter((c) => isMiddle(cells, clearance, c));
  const asked = middles.length > 0 ? middles : members;
  const stride = Math.ceil(asked.length / samples);
  let best: Neck['half'] | undefined;
  for (let k = 0; k < asked.length; k += stride) {
    const section = sectionAt(cells, clearance, own, asked[k]);
    if (!best || section.large < best.large) best = section;
  }
  if (!best) throw new Error('a neck without cells');
  return best;
}

/** Whether none of the cells round it, corners among them, is farther from the walls: not on an edge or at an end. */
function isMiddle(cells: Cells, clearance: Float32Array, c: number): boolean {
  const [x, y, z] = middleOf(cells, c);
  const { cell } = cells;
  for (let k = 0; k < 27; k++) {
    const there = [
      x + ((k % 3) - 1) * cell,
      y + ((((k / 3) | 0) % 3) - 1) * cell,
      z + (((k / 9) | 0) - 1) * cell,
    ];
    const n = cellAt(cells, [there[0], there[1], there[2]]);
    if (n !== wall && clearance[n] > clearance[c] * 1.001) return false;
  }
  return true;
}

function sectionAt(cells: Cells, clearance: Float32Array, own: Int32Array, c: number): Neck['half'] {
  const along = directionToMouth(cells, own, c, Math.ceil((3 * clearance[c]) / cells.cell) + 2);
  const [u, v] = across(along);
  const half = (way: Vec3): number =>
    (reachAlong(cells, c, way) + reachAlong(cells, c, [-way[0], -way[1], -way[2]])) / 2;
  if (cells.planar) {
    const only = half([-along[2], 0, along[0]]);
    return { small: only, large: only, at: c };
  }
  const chords = Array.from({ length: directions }, (_, k) => {
    const [cos, sin] = [Math.cos((Math.PI * k) / directions), Math.sin((Math.PI * k) / directions)];
    return half([u[0] * cos + v[0] * sin, u[1] * cos + v[1] * sin, u[2] * cos + v[2] * sin]);
  });
  const least = chords.indexOf(Math.min(...chords));
  const large = chords[(least + directions / 2) % directions];
  return { small: chords[least], large, at: c };
}

/** Toward the cell some steps nearer to the mouth, of length 1; upright where there is none. */
function directionToMouth(cells: Cells, own: Int32Array, from: number, most: number): Vec3 {
  let c = from;
  for (let k = 0; k < most; k++) {
    let next = wall;
    for (let s = sides * c; s < sides * c + sides && next === wall; s++) {
      const n = cells.beside[s];
      if (n !== wall && own[n] >= 0 && own[n] < own[c]) next = n;
    }
    if (next === wall) break;
    c = next;
  }
  const [a, b] = [middleOf(cells, from), middleOf(cells, c)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  return length > 0 ? [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length] : [0, 0, 1];
}

/** Two directions square to one and to each other. */
function across([x, y, z]: Vec3): readonly [Vec3, Vec3] {
  const [ux, uy, uz] = Math.abs(z) < 0.9 ? [y, -x, 0] : [0, z, -y];
  const length = Math.hypot(ux, uy, uz);
  const u = [ux / length, uy / length, uz / length] as const;
  return [u, [y * u[2] - z * u[1], z * u[0] - x * u[2], x * u[1] - y * u[0]]];
}
