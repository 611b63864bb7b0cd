import type { TriangleMesh } from './triangles.ts';

const leafSize = 6;

/** Faces in a tree of boxes. */
interface Boxes {
  /** Faces, so that those of a node lie together. */
  readonly order: Uint32Array;
  /** Least x, y, z and greatest x, y, z: of each face, as they stand in `order`, and of each node. */
  readonly faces: Float32Array;
  readonly nodes: Float32Array;
  /** For each node the first of its faces in `order`, the one after its last, and its second child (0: a leaf; its first child is the next node). */
  readonly links: Uint32Array;
}

/**
 * Calls `visit` once with every two faces whose boxes meet, and that do not both lie in one plane across an axis. Ends early when `visit` says false.
 */
export function eachPairOfFaces(mesh: TriangleMesh, visit: (f: number, g: number) => boolean): void {
  const boxes = boxesOf(mesh);
  if (boxes.order.length === 0) return;
  const stack = [0, 0];
  while (stack.length > 0) {
    const b = stack.pop() ?? 0;
    const a = stack.pop() ?? 0;
    if (a !== b && !meet(boxes.nodes, a, boxes.nodes, b)) continue;
    const [secondA, secondB] = [boxes.links[a * 3 + 2], boxes.links[b * 3 + 2]];
    if (secondA === 0 && secondB === 0) {
      if (!visitLeaves(boxes, a, b, visit)) return;
    } else if (a === b) stack.push(a + 1, a + 1, secondA, secondA, a + 1, secondA);
    else if (secondB === 0 || (secondA !== 0 && countOf(boxes, a) >= countOf(boxes, b)))
      stack.push(a + 1, b, secondA, b);
    else stack.push(a, b + 1, a, secondB);
  }
}

/** Calls `visit` with each of some faces and each face of the mesh whose boxes meet, as above; ends early as above. */
export function eachPairWith(
  mesh: TriangleMesh,
  some: readonly number[],
  visit: (f: number, g: number) => boolean,
): void {
  const { positions, triangles } = mesh;
  const corners = Uint32Array.from(some.flatMap((f) => [...triangles.subarray(f * 3, f * 3 + 3)]));
  const { order, faces, nodes, links } = boxesOf({ positions, triangles: corners });
  const box = new Float32Array(6);
  const stack: number[] = [];
  for (let g = 0; g * 3 < triangles.length && order.length > 0; g++) {
    putFaceBox(mesh, g * 3, box, 0);
    stack.push(0);
    while (stack.length > 0) {
      const node = stack.pop() ?? 0;
      if (!meet(box, 0, nodes, node)) continue;
      const second = links[node * 3 + 2];
      if (second !== 0) stack.push(node + 1, second);
      for (let i = links[node * 3]; second === 0 && i < links[node * 3 + 1]; i++) {
        const f = some[order[i]];
        if (f !== g && meet(box, 0, faces, i) && !visit(f, g)) return;
      }
    }
  }
}

const countOf = ({ links }: Boxes, node: number): number => links[node * 3 + 1] - links[node * 3];

function visitLeaves(
  { order, faces, nodes, links }: Boxes,
  a: number,
  b: number,
  visit: (f: number, g: number) => boolean,
): boolean {
  const end = links[b * 3 + 1];
  for (let i = links[a * 3]; i < links[a * 3 + 1]; i++) {
    if (a !== b && !meet(faces, i, nodes, b)) continue;
    for (let j = a === b ? i + 1 : links[b * 3]; j < end; j++) {
      if (meet(faces, i, faces, j) && !visit(order[i], order[j])) return false;
    }
  }
  return true;
}

/** Whether two boxes meet otherwise than in one plane that both lie in. One axis after the other, no loop: asked most of all. */
function meet(p: Float32Array, a: number, q: Float32Array, b: number): boolean {
  const i = a * 6;
  const j = b * 6;
  if (p[i] > q[j + 3] || q[j] > p[i + 3]) return false;
  if (p[i + 1] > q[j + 4] || q[j + 1] > p[i + 4]) return false;
  if (p[i + 2] > q[j + 5] || q[j + 2] > p[i + 5]) return false;
  return !(isLevel(p, i, q, j) || isLevel(p, i + 1, q, j + 1) || isLevel(p, i + 2, q, j + 2));
}

/** Whether both boxes have no more than one and the same height along an axis; `i`, `j`: where their least along it is. */
const isLevel = (p: Float32Array, i: number, q: Float32Array, j: number): boolean =>
  p[i] === p[i + 3] && q[j] === p[i] && q[j + 3] === p[i];

function boxesOf(mesh: TriangleMesh): Boxes {
  const faces = faceBoxes(mesh);
  const count = faces.length / 6;
  const order = new Uint32Array(count);
  for (let f = 0; f < count; f++) order[f] = f;
  const nodes = new Float32Array(Math.max(1, count) * 6);
  const links = new Uint32Array(Math.max(1, count) * 3);
  let made = 0;
  const build = (from: number, to: number): number => {
    const node = made++;
    links[node * 3] = from;
    links[node * 3 + 1] = to;
    const axis = putNodeBox(faces, order, from, to, nodes, node * 6);
    if (to - from > leafSize) {
      const middle = halve(faces, order, from, to, axis);
      build(from, middle);
      links[node * 3 + 2] = build(middle, to);
    }
    return node;
  };
  if (count > 0) build(0, count);
  return { order, faces: inOrder(faces, order), nodes, links };
}

/** The boxes of the faces one beside the other as they are asked for: memory is read along. */
function inOrder(faces: Float32Array, order: Uint32Array): Float32Array {
  const sorted = new Float32Array(faces.length);
  for (let i = 0, at = 0; i < order.length; i++)
    for (let from = order[i] * 6, k = 0; k < 6; k++) sorted[at++] = faces[from + k];
  return sorted;
}

function faceBoxes(mesh: TriangleMesh): Float32Array {
  const boxes = new Float32Array(mesh.triangles.length * 2);
  for (let h = 0; h < mesh.triangles.length; h += 3) putFaceBox(mesh, h, boxes, h * 2);
  return boxes;
}

function putFaceBox(
  { positions: p, triangles }: TriangleMesh,
  h: number,
  boxes: Float32Array,
  at: number,
): void {
  for (let axis = 0; axis < 3; axis++) {
    const a = p[triangles[h] * 3 + axis];
    const b = p[triangles[h + 1] * 3 + axis];
    const c = p[triangles[h + 2] * 3 + axis];
    boxes[at + axis] = Math.min(a, b, c);
    boxes[at + 3 + axis] = Math.max(a, b, c);
  }
}

/** Puts the box round faces order[from..to) into `nodes` and gives the axis along which their middles spread most. */
function putNodeBox(
  faces: Float32Array,
  order: Uint32Array,
  from: number,
  to: number,
  nodes: Float32Array,
  at: number,
): number {
  let longest = 0;
  let widest = -1;
  for (let axis = 0; axis < 3; axis++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    let first = Number.POSITIVE_INFINITY;
    let last = Number.NEGATIVE_INFINITY;
    for (let i = from; i < to; i++) {
      const least = faces[order[i] * 6 + axis];
      const greatest = faces[order[i] * 6 + 3 + axis];
      const middle = least + greatest;
      if (least < low) low = least;
      if (greatest > high) high = greatest;
      if (middle < first) first = middle;
      if (middle > last) last = middle;
    }
    nodes[at + axis] = low;
    nodes[at + 3 + axis] = high;
    if (last - first > widest) {
      widest = last - first;
      longest = axis;
    }
  }
  return longest;
}

/** Sorts order[from..to) about the mean of the middles along an axis; about halves it where that leaves one side bare. */
function halve(faces: Float32Array, order: Uint32Array, from: number, to: number, axis: number): number {
  const middleOf = (face: number): number => faces[face * 6 + axis] + faces[face * 6 + 3 + axis];
  let sum = 0;
  for (let i = from; i < to; i++) sum += middleOf(order[i]);
  const cut = sum / (to - from);
  let at = from;
  for (let i = from; i < to; i++) {
    if (middleOf(order[i]) >= cut) continue;
    const swap = order[at];
    order[at] = order[i];
    order[i] = swap;
    at++;
  }
  const least = Math.max(1, (to - from) >> 6);
  return at - from < least || to - at < least ? (from + to) >> 1 : at;
}
