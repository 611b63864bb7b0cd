import type { Matrix4 } from '../../kernel/index.ts';
import { nodeStride, type TriangleTree } from '../repair/triangle-tree.ts';

/**
 * Visits pairs of faces of two trees, by their numbers in tree order, that may be nearer to each other than `within()`
 * says, nearer boxes first; `fromB` brings b's mesh to a's frame, lengths are a's. `within` may shrink while visiting:
 * whatever is nearer than what it shrinks to is visited. Boxes of b count as the upright boxes round them in a's frame,
 * so that a box is never taken to be farther off than what is in it.
 */
export function facePairs(
  a: TriangleTree,
  b: TriangleTree,
  fromB: Matrix4,
  within: () => number,
  visit: (faceA: number, faceB: number) => void,
): void {
  const stack: number[] = [0, 0, 0];
  const box = new Float64Array(6);
  const gapOf = (nodeA: number, nodeB: number): number => {
    moved(b.nodes, nodeB * nodeStride, fromB, box);
    return boxGap(a.nodes, nodeA * nodeStride, box);
  };
  const push = (nodes: readonly (readonly [number, number])[]): void => {
    const [first, second] = nodes.map(([i, k]) => [i, k, gapOf(i, k)] as const);
    const farther = first[2] > second[2] ? first : second;
    stack.push(...farther, ...(farther === first ? second : first));
  };
  while (stack.length > 0) {
    const gap = stack.pop() as number;
    const nodeB = stack.pop() as number;
    const nodeA = stack.pop() as number;
    if (!(gap < within())) continue;
    const [countA, countB] = [a.links[nodeA * 2 + 1], b.links[nodeB * 2 + 1]];
    if (countA > 0 && countB > 0) {
      const [firstA, firstB] = [a.links[nodeA * 2], b.links[nodeB * 2]];
      for (let i = firstA; i < firstA + countA; i++) {
        for (let k = firstB; k < firstB + countB; k++) visit(i, k);
      }
    } else if (countB > 0 || (countA === 0 && widthOf(a.nodes, nodeA) >= widthOf(b.nodes, nodeB))) {
      push([
        [nodeA + 1, nodeB],
        [a.links[nodeA * 2], nodeB],
      ]);
    } else {
      push([
        [nodeA, nodeB + 1],
        [nodeA, b.links[nodeB * 2]],
      ]);
    }
  }
}

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
