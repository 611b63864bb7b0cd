import { nextCorner } from '../../geometry/index.ts';

/** Marks in `EdgePairs.twin`: an edge with one face only, and one that three or more faces share. */
export const openEdge = -1;
export const nonManifoldEdge = -2;

/**
 * Which faces meet at which edge. Half-edge h = 3 t + k runs from corner k of face t to its next corner.
 * `twin[h]` is the other half-edge of the same edge where exactly two faces meet there, else one of the marks.
 */
export interface EdgePairs {
  readonly twin: Int32Array;
  /** Edges with one face. */
  readonly open: number;
  /** Edges with three or more faces, and how many of them are not run through equally often both ways. */
  readonly nonManifold: number;
  readonly uneven: number;
  /** Edges whose two faces run through them the same way: one of the two is turned over. */
  readonly against: number;
}

/** True where every edge has exactly two faces that run through it in opposite ways. */
export const isPaired = (pairs: EdgePairs): boolean =>
  pairs.open === 0 && pairs.nonManifold === 0 && pairs.against === 0;

/** Pairs the half-edges of `triangles` (three vertex indices a face) over `vertexCount` vertices. */
export function pairEdges(triangles: Uint32Array, vertexCount: number): EdgePairs {
  const { starts, slots } = halfEdgesByLowerVertex(triangles, vertexCount);
  const twin = new Int32Array(triangles.length).fill(openEdge);
  const far = (h: number): number => Math.max(triangles[h], triangles[nextCorner(h)]);
  const tally = { open: 0, nonManifold: 0, uneven: 0, against: 0 };
  for (let v = 0; v < vertexCount; v++) {
    const from = starts[v];
    const to = starts[v + 1];
    sortByFar(slots, from, to, far);
    for (let i = from; i < to; ) {
      const end = endOfRun(slots, i, to, far);
      pairRun(triangles, slots, i, end, twin, tally);
      i = end;
    }
  }
  return { twin, ...tally };
}

function halfEdgesByLowerVertex(triangles: Uint32Array, vertexCount: number) {
  const starts = new Uint32Array(vertexCount + 1);
  for (let h = 0; h < triangles.length; h++) {
    starts[Math.min(triangles[h], triangles[nextCorner(h)]) + 1]++;
  }
  for (let v = 0; v < vertexCount; v++) starts[v + 1] += starts[v];
  const fill = starts.slice();
  const slots = new Uint32Array(triangles.length);
  for (let h = 0; h < triangles.length; h++) {
    slots[fill[Math.min(triangles[h], triangles[nextCorner(h)])]++] = h;
  }
  return { starts, slots };
}

/** Sorts slots[from..to) by far vertex, equal ones by half-edge, so that the outcome is the same every time. */
function sortByFar(slots: Uint32Array, from: number, to: number, far: (h: number) => number): void {
  if (to - from > 32) {
    slots.subarray(from, to).sort((a, b) => far(a) - far(b) || a - b);
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const h = slots[i];
    const key = far(h);
    let j = i - 1;
    for (; j >= from && far(slots[j]) > key; j--) slots[j + 1] = slots[j];
    slots[j + 1] = h;
  }
}

function endOfRun(slots: Uint32Array, from: number, to: number, far: (h: number) => number): number {
  const key = far(slots[from]);
  let end = from + 1;
  while (end < to && far(slots[end]) === key) end++;
  return end;
}

function pairRun(
  triangles: Uint32Array,
  slots: Uint32Array,
  from: number,
  end: number,
  twin: Int32Array,
  tally: { open: number; nonManifold: number; uneven: number; against: number },
): void {
  const a = slots[from];
  if (end - from === 1) {
    tally.open++;
  } else if (end - from === 2) {
    const b = slots[from + 1];
    twin[a] = b;
    twin[b] = a;
    if (triangles[a] === triangles[b]) tally.against++;
  } else {
    let balance = 0;
    for (let i = from; i < end; i++) {
      twin[slots[i]] = nonManifoldEdge;
      balance += triangles[slots[i]] === triangles[a] ? 1 : -1;
    }
    tally.nonManifold++;
    if (balance !== 0) tally.uneven++;
  }
}
