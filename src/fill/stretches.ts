import { type Cells, sides, wall } from './cells.ts';
import type { Narrow } from './necks.ts';
import { type Section, sectionAt } from './section.ts';

/** A piece of a narrow place, two cells along the way metal comes in by, with its own section. */
export interface Stretch {
  readonly cells: readonly number[];
  /** Steps from where metal comes in, for each of `cells`. */
  readonly steps: readonly number[];
  readonly section: Section;
  /** Numbers of the stretches beside it. */
  readonly beside: readonly number[];
  /** Whether it is beside what is open, holds cells of a gate, or any deeper than a corner. */
  readonly atMouth: boolean;
  readonly atGate: boolean;
  readonly deep: boolean;
}

const outside = -2;
const unknown = -1;
/** Two steps: cells that are equally far are joined only by those one step nearer. */
const along = 2;

/** Numbers for each cell of a room that are used over and over; `outside` between uses. */
export interface Slate {
  readonly steps: Int32Array;
  readonly number: Int32Array;
}
export const slateFor = ({ count }: Cells): Slate => ({
  steps: new Int32Array(count).fill(outside),
  number: new Int32Array(count).fill(outside),
});

/** A narrow place by the stretches that metal meets one after another, from its mouth and from the cells of gates in it. */
export function stretchesOf(
  cells: Cells,
  clearance: Float32Array,
  { cells: members, deep, mouth }: Narrow,
  gate: ReadonlySet<number>,
  { steps, number }: Slate,
): Stretch[] {
  countSteps(cells, members, [...mouth, ...members.filter((c) => gate.has(c))], steps);
  const pieces = piecesOf(cells, members, steps, number);
  const isDeep = new Uint8Array(pieces.length);
  for (const c of members.slice(0, deep)) isDeep[number[c]] = 1;
  const atMouth = new Uint8Array(pieces.length);
  for (const c of mouth) atMouth[number[c]] = 1;
  const stretches = pieces.map(
    (piece, k): Stretch => ({
      cells: piece,
      steps: piece.map((c) => steps[c]),
      section: tightest(cells, clearance, piece, steps),
      beside: numbersBeside(cells, piece, number, k),
      atMouth: atMouth[k] !== 0,
      atGate: piece.some((c) => gate.has(c)),
      deep: isDeep[k] !== 0,
    }),
  );
  for (const c of members) {
    steps[c] = outside;
    number[c] = outside;
  }
  return stretches;
}

function countSteps(
  { beside }: Cells,
  members: readonly number[],
  from: readonly number[],
  steps: Int32Array,
): void {
  for (const c of members) steps[c] = unknown;
  const queue = [...new Set(from)];
  for (const c of queue) steps[c] = 0;
  for (let k = 0; k < queue.length; k++)
    for (let s = sides * queue[k]; s < sides * queue[k] + sides; s++) {
      const n = beside[s];
      if (n === wall || steps[n] !== unknown) continue;
      steps[n] = steps[queue[k]] + 1;
      queue.push(n);
    }
  // Where metal does not come.
  for (const c of members) if (steps[c] === unknown) steps[c] = 0;
}

function piecesOf(
  { beside }: Cells,
  members: readonly number[],
  steps: Int32Array,
  number: Int32Array,
): number[][] {
  const band = (c: number): number => Math.floor(steps[c] / along);
  const pieces: number[][] = [];
  for (const first of members) {
    if (number[first] !== outside) continue;
    const piece = [first];
    number[first] = pieces.length;
    for (let k = 0; k < piece.length; k++)
      for (let s = sides * piece[k]; s < sides * piece[k] + sides; s++) {
        const n = beside[s];
        if (n === wall || steps[n] < 0 || number[n] !== outside || band(n) !== band(first)) continue;
        number[n] = pieces.length;
        piece.push(n);
      }
    pieces.push(piece);
  }
  return pieces;
}

function numbersBeside(
  { beside }: Cells,
  piece: readonly number[],
  number: Int32Array,
  own: number,
): number[] {
  const found = new Set<number>();
  for (const c of piece)
    for (let s = sides * c; s < sides * c + sides; s++) {
      const n = beside[s];
      if (n !== wall && number[n] >= 0 && number[n] !== own) found.add(number[n]);
    }
  return [...found];
}

/** Of the sections through the middle of its nearer and its farther cells the one whose larger width is less. */
function tightest(
  cells: Cells,
  clearance: Float32Array,
  piece: readonly number[],
  steps: Int32Array,
): Section {
  const sections = Array.from({ length: along }, (_, k) => piece.filter((c) => steps[c] % along === k))
    .filter((ring) => ring.length > 0)
    .map((ring) => sectionAt(cells, clearance, steps, middleOfRing(clearance, ring)));
  return sections.reduce((least, one) => (one.large < least.large ? one : least));
}

/** Farthest from the walls; of several as far the middle one. */
function middleOfRing(clearance: Float32Array, ring: readonly number[]): number {
  let most = 0;
  for (const c of ring) most = Math.max(most, clearance[c]);
  const widest = ring.filter((c) => clearance[c] >= 0.999 * most);
  return widest[widest.length >> 1];
}
