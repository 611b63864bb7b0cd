import type { Matrix4, Vec3 } from '../../geometry/index.ts';
import { nodeStride, type TriangleTree } from '../repair/triangle-tree.ts';

/** How two trees stand to each other, and along what to look at them. */
export interface Facing {
  /** Brings b's mesh to a's frame; lengths are a's. */
  readonly fromB: Matrix4;
  /**
   * Unit vector in a's frame along which b is thought to lie from a, such as from a point of a to a near one of b. It
   * only tells what can be left out sooner: two things are no nearer than they are along any one direction.
   */
  readonly along: Vec3;
}

/**
 * Visits pairs of faces of two trees, by their numbers in tree order, that may be nearer to each other than `within()`
 * says, nearer boxes first. `within` may shrink while visiting: whatever is nearer than what it shrinks to is visited.
 * Boxes of b count as the upright boxes round them in a's frame, so that a box is never taken to be farther off than
 * what is in it.
 */
export function facePairs(
  a: TriangleTree,
  b: TriangleTree,
  { fromB, along }: Facing,
  within: () => number,
  visit: (faceA: number, faceB: number) => void,
): void {
  const stack: number[] = [0, 0, 0];
  const box = new Float64Array(6);
  // The near end of b is the far end the other way.
  const back = rotatedBack(fromB, along);
  const shift = along[0] * fromB[12] + along[1] * fromB[13] + along[2] * fromB[14];
  const gapOf = (nodeA: number, nodeB: number): number => {
    const gap =
      shift - boxEnd(b.nodes, nodeB * nodeStride, back) - boxEnd(a.nodes, nodeA * nodeStride, along);
    moved(b.nodes, nodeB * nodeStride, fromB, box);
    return Math.max(gap, boxGap(a.nodes, nodeA * nodeStride, box));
  };
  const pushBoth = (a1: number, b1: number, a2: number, b2: number): void => {
    const [gap1, gap2] = [gapOf(a1, b1), gapOf(a2, b2)];
    if (gap1 > gap2) stack.push(a1, b1, gap1, a2, b2, gap2);
    else stack.push(a2, b2, gap2, a1, b1, gap1);
  };
  while (stack.length > 0) {
    const gap = stack.pop() as number;
    const nodeB = stack.pop() as number;
    const nodeA = stack.pop() as number;
    if (!(gap < within())) continue;
    const [countA, countB] = [a.links[nodeA * 2 + 1], b.links[nodeB * 2 + 1]];
    const [nextA, nextB] = [a.links[nodeA * 2], b.links[nodeB * 2]];
    if (countA > 0 && countB > 0) {
      for (let i = nextA; i < nextA + countA; i++) {
        const left = shift - faceEnd(a.corners, i * 9, along);
        for (let k = nextB; k < nextB + countB; k++) {
          if (left - faceEnd(b.corners, k * 9, back) < within()) visit(i, k);
        }
      }
    } else if (countB > 0 || (countA === 0 && widthOf(a.nodes, nodeA) >= widthOf(b.nodes, nodeB))) {
      pushBoth(nodeA + 1, nodeB, nextA, nodeB);
    } else {
      pushBoth(nodeA, nodeB + 1, nodeA, nextB);
    }
  }
}

/** The opposite of a direction in a's frame, as b's own coordinates are measured along it. */
const rotatedBack = (m: Matrix4, [x, y, z]: Vec3): Vec3 => [
  -(m[0] * x + m[1] * y + m[2] * z),
  -(m[4] * x + m[5] * y + m[6] * z),
  -(m[8] * x + m[9] * y + m[10] * z),
];

/** How far a node's box reaches along a direction. */
const boxEnd = (nodes: Float64Array, n: number, [x, y, z]: Vec3): number =>
  Math.max(x * nodes[n], x * nodes[n + 3]) +
  Math.max(y * nodes[n + 1], y * nodes[n + 4]) +
  Math.max(z * nodes[n + 2], z * nodes[n + 5]);

/** How far a face reaches along a direction. */
const faceEnd = (c: Float64Array, i: number, [x, y, z]: Vec3): number =>
  Math.max(
    x * c[i] + y * c[i + 1] + z * c[i + 2],
    x * c[i + 3] + y * c[i + 4] + z * c[i + 5],
    x * c[i + 6] + y * c[i + 7] + z * c[i + 8],
  );

/** Longest side of a node's box. Meshes of one mold differ little in scale: it only steers which is parted first. */
const widthOf = (nodes: Float64Array, node: number): number => {
  const n = node * nodeStride;
  return Math.max(nodes[n + 3] - nodes[n], nodes[n + 4] - nodes[n + 1], nodes[n + 5] - nodes[n + 2]);
};

/** The upright box round a node's box where a matrix puts it: least x, y, z, then greatest. */
function moved(nodes: Float64Array, n: number, m: Matrix4, box: Float64Array): void {
  for (let row = 0; row < 3; row++) {
    let [low, high] = [m[12 + row], m[12 + row]];
    for (let axis = 0; axis < 3; axis++) {
      const p = m[axis * 4 + row] * nodes[n + axis];
      const q = m[axis * 4 + row] * nodes[n + 3 + axis];
      low += Math.min(p, q);
      high += Math.max(p, q);
    }
    box[row] = low;
    box[row + 3] = high;
  }
}

function boxGap(nodes: Float64Array, n: number, box: Float64Array): number {
  let square = 0;
  for (let axis = 0; axis < 3; axis++) {
    const gap = Math.max(0, nodes[n + axis] - box[axis + 3], box[axis] - nodes[n + 3 + axis]);
    square += gap * gap;
  }
  return Math.sqrt(square);
}
