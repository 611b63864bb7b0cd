import { memoPerMesh, sidesCrossed, type TriangleMesh } from '../../geometry/index.ts';
import { distance2ToTriangle, solidAngle } from './triangle-measures.ts';

const leafSize = 4;
/** A group of faces is taken as one dipole when the point is farther than this many times its radius. */
const farEnough = 2;
/** Numbers per node: box (6), area vector (3), its middle (3), radius (1). */
export const nodeStride = 13;
const stride = nodeStride;

/**
 * Faces of a mesh in a tree of boxes, to ask how far a point is from the surface and how often the surface winds
 * round it. Winding numbers: Jacobson, Kavan and Sorkine-Hornung 2013, "Robust inside-outside segmentation using
 * generalized winding numbers"; far groups as dipoles: Barill and others 2018, "Fast winding numbers for soups and
 * clouds". The mesh may be open, overlapping or doubled.
 */
export class TriangleTree {
  /** Nine coordinates a face, in tree order. */
  readonly corners: Float64Array;
  readonly nodes: Float64Array;
  /** Per node: for a leaf first face and face count; for a branch its second child and 0 (its first is the next). */
  readonly links: Uint32Array;
  /** Nodes and faces looked at so far, by all questions: what they cost, the same on every machine. */
  steps = 0;
  private nodeCount = 0;
  private readonly stack = new Uint32Array(512);

  constructor(mesh: TriangleMesh) {
    const count = mesh.triangles.length / 3;
    const { order, middles } = faceMiddles(mesh);
    const most = Math.max(1, 2 * count);
    this.nodes = new Float64Array(most * stride);
    this.links = new Uint32Array(most * 2);
    this.corners = new Float64Array(count * 9);
    if (count === 0) return;
    this.build(mesh, order, middles, 0, count);
  }

  /** How often the surface winds round the point: 1 inside a closed mesh, 0 outside, in between near holes. */
  windingAt(x: number, y: number, z: number): number {
    const { nodes, links, corners, stack } = this;
    if (this.nodeCount === 0) return 0;
    let sum = 0;
    let steps = 0;
    let top = 0;
    stack[top++] = 0;
    while (top > 0) {
      const node = stack[--top];
      steps++;
      const n = node * stride;
      const dx = nodes[n + 9] - x;
      const dy = nodes[n + 10] - y;
      const dz = nodes[n + 11] - z;
      const d2 = dx * dx + dy * dy + dz * dz;
      const reach = nodes[n + 12] * farEnough;
      if (d2 > reach * reach) {
        sum += (dx * nodes[n + 6] + dy * nodes[n + 7] + dz * nodes[n + 8]) / (d2 * Math.sqrt(d2));
      } else if (links[node * 2 + 1] > 0) {
        const first = links[node * 2];
        steps += links[node * 2 + 1];
        for (let f = first; f < first + links[node * 2 + 1]; f++) sum += solidAngle(corners, f * 9, x, y, z);
      } else {
        stack[top++] = links[node * 2];
        stack[top++] = node + 1;
      }
    }
    this.steps += steps;
    return sum / (4 * Math.PI);
  }

  /** Distance in mm from a point to the nearest face, or `limit` where it is farther than that. */
  distanceTo(x: number, y: number, z: number, limit = Number.POSITIVE_INFINITY): number {
    const face = this.nearestFace(x, y, z, limit);
    return face < 0 ? limit : Math.sqrt(distance2ToTriangle(this.corners, face * 9, x, y, z));
  }

  /** The face nearest to a point, by its number in tree order; -1 where none is nearer than `limit` (mm). */
  nearestFace(x: number, y: number, z: number, limit = Number.POSITIVE_INFINITY): number {
    const { links, corners, stack } = this;
    if (this.nodeCount === 0) return -1;
    let nearest = -1;
    let best = limit * limit;
    let steps = 0;
    let top = 0;
    stack[top++] = 0;
    while (top > 0) {
      const node = stack[--top];
      steps++;
      if (this.boxDistance2(node, x, y, z) >= best) continue;
      if (links[node * 2 + 1] > 0) {
        const first = links[node * 2];
        steps += links[node * 2 + 1];
        for (let f = first; f < first + links[node * 2 + 1]; f++) {
          const square = distance2ToTriangle(corners, f * 9, x, y, z);
          if (!(square < best)) continue;
          best = square;
          nearest = f;
        }
        continue;
      }
      const left = node + 1;
      const right = links[node * 2];
      const nearer = this.boxDistance2(left, x, y, z) <= this.boxDistance2(right, x, y, z);
      stack[top++] = nearer ? right : left;
      stack[top++] = nearer ? left : right;
    }
    this.steps += steps;
    return nearest;
  }

  private boxDistance2(node: number, x: number, y: number, z: number): number {
    const { nodes } = this;
    const n = node * stride;
    const dx = Math.max(0, nodes[n] - x, x - nodes[n + 3]);
    const dy = Math.max(0, nodes[n + 1] - y, y - nodes[n + 4]);
    const dz = Math.max(0, nodes[n + 2] - z, z - nodes[n + 5]);
    return dx * dx + dy * dy + dz * dz;
  }

  /** Puts faces order[from..to) in a node and returns its number. */
  private build(
    mesh: TriangleMesh,
    order: Uint32Array,
    middles: Float32Array,
    from: number,
    to: number,
  ): number {
    const node = this.nodeCount++;
    if (to - from <= leafSize) {
      this.links[node * 2] = from;
      this.links[node * 2 + 1] = to - from;
      this.copyCorners(mesh, order, from, to);
    } else {
      const middle = halve(order, middles, from, to);
      this.build(mesh, order, middles, from, middle);
      this.links[node * 2] = this.build(mesh, order, middles, middle, to);
    }
    this.summarize(node, from, to);
    return node;
  }

  private copyCorners({ positions, triangles }: TriangleMesh, order: Uint32Array, from: number, to: number) {
    for (let f = from; f < to; f++) {
      for (let k = 0; k < 9; k++) {
        const vertex = triangles[order[f] * 3 + Math.floor(k / 3)];
        this.corners[f * 9 + k] = positions[vertex * 3 + (k % 3)];
      }
    }
  }

  /** Box, area vector, area-weighted middle and radius of the faces from..to, whose corners are in place. */
  private summarize(node: number, from: number, to: number): void {
    const { nodes } = this;
    const n = node * stride;
    for (let axis = 0; axis < 3; axis++) {
      nodes[n + axis] = Number.POSITIVE_INFINITY;
      nodes[n + 3 + axis] = Number.NEGATIVE_INFINITY;
    }
    if (this.links[node * 2 + 1] > 0) this.sumFaces(n, from, to);
    else this.sumChildren(n, node + 1, this.links[node * 2]);
    let r2 = 0;
    for (let axis = 0; axis < 3; axis++) {
      const far = Math.max(nodes[n + 9 + axis] - nodes[n + axis], nodes[n + 3 + axis] - nodes[n + 9 + axis]);
      r2 += far * far;
    }
    nodes[n + 12] = Math.sqrt(r2);
  }

  private sumFaces(n: number, from: number, to: number): void {
    const { nodes, corners } = this;
    let weight = 0;
    for (let f = from; f < to; f++) {
      const c = f * 9;
      const v = sidesCrossed(corners, 3 * f, 3 * f + 1, 3 * f + 2);
      const area = Math.hypot(v[0], v[1], v[2]) / 2 + 1e-30;
      weight += area;
      for (let axis = 0; axis < 3; axis++) {
        const p = corners[c + axis];
        const q = corners[c + 3 + axis];
        const r = corners[c + 6 + axis];
        nodes[n + axis] = Math.min(nodes[n + axis], p, q, r);
        nodes[n + 3 + axis] = Math.max(nodes[n + 3 + axis], p, q, r);
        nodes[n + 6 + axis] += v[axis] / 2;
        nodes[n + 9 + axis] += (area * (p + q + r)) / 3;
      }
    }
    for (let axis = 0; axis < 3; axis++) nodes[n + 9 + axis] /= weight;
  }

  private sumChildren(n: number, left: number, right: number): void {
    const { nodes } = this;
    const l = left * stride;
    const r = right * stride;
    const wl = Math.hypot(nodes[l + 6], nodes[l + 7], nodes[l + 8]) + 1e-30;
    const wr = Math.hypot(nodes[r + 6], nodes[r + 7], nodes[r + 8]) + 1e-30;
    for (let axis = 0; axis < 3; axis++) {
      nodes[n + axis] = Math.min(nodes[l + axis], nodes[r + axis]);
      nodes[n + 3 + axis] = Math.max(nodes[l + 3 + axis], nodes[r + 3 + axis]);
      nodes[n + 6 + axis] = nodes[l + 6 + axis] + nodes[r + 6 + axis];
      nodes[n + 9 + axis] = (nodes[l + 9 + axis] * wl + nodes[r + 9 + axis] * wr) / (wl + wr);
    }
  }
}

function faceMiddles({ positions, triangles }: TriangleMesh) {
  const count = triangles.length / 3;
  const order = new Uint32Array(count);
  const middles = new Float32Array(count * 3);
  for (let f = 0; f < count; f++) {
    order[f] = f;
    for (let axis = 0; axis < 3; axis++) {
      middles[f * 3 + axis] =
        (positions[triangles[f * 3] * 3 + axis] +
          positions[triangles[f * 3 + 1] * 3 + axis] +
          positions[triangles[f * 3 + 2] * 3 + axis]) /
        3;
    }
  }
  return { order, middles };
}

/** Sorts order[from..to) about the middle of its longest side and returns where the second part begins. */
function halve(order: Uint32Array, middles: Float32Array, from: number, to: number): number {
  let axis = 0;
  let widest = -1;
  let cut = 0;
  for (let a = 0; a < 3; a++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = from; i < to; i++) {
      const value = middles[order[i] * 3 + a];
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (high - low > widest) {
      widest = high - low;
      axis = a;
      cut = (low + high) / 2;
    }
  }
  let at = from;
  for (let i = from; i < to; i++) {
    if (middles[order[i] * 3 + axis] >= cut) continue;
    const swap = order[at];
    order[at] = order[i];
    order[i] = swap;
    at++;
  }
  // Faces heaped on one spot cannot be told apart by place: halve them by number, so the tree stays shallow.
  const least = Math.max(1, Math.floor((to - from) / 64));
  return at - from < least || to - at < least ? (from + to) >> 1 : at;
}

/** The tree of a mesh that stays: made when first asked for. */
export const treeOf = memoPerMesh((mesh) => new TriangleTree(mesh));
