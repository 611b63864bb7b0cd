import { boundsOf, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type Kernel, KernelFault } from '../../kernel/index.ts';
import { dropCollapsed, keepFaces } from './drop-faces.ts';
import { findShells, type Shells } from './shells.ts';
import { splitLong } from './split-long.ts';
import { sizeOf } from './surface.ts';
import type { TriangleTree } from './triangle-tree.ts';

/** Cells along the longest side where no edge length is asked for. */
export const remeshCells = 100;

/** A winding number this close to a whole one is whole: the dipoles of the tree are off by up to 0.05 beside a ball. */
const wholeWithin = 0.1;

/** Most cells in the box of a surface made anew: 200 along each side, or 290 by 290 by 100. Each takes 16 bytes. */
const mostCells = 8_000_000;

/**
 * Most steps in the tree of faces. Scans with a third of their faces missing take 200 million; a heap of triangles
 * without an inside, every one of which is asked for again at every point, takes any number.
 */
const mostSteps = 400_000_000;

/** More work than a surface made anew may take. Counted, so that the answer is the same on every machine. */
export class RemeshTooLong extends Error {
  constructor(
    readonly takes: 'cells' | 'steps',
    readonly measured: number,
    readonly limit: number,
  ) {
    super(`a surface made anew takes ${measured} ${takes}, more than ${limit}`);
  }
}

export interface Remeshed {
  readonly mesh: TriangleMesh;
  /** Pieces and bubbles smaller than a few cells, left out. */
  readonly smallComponents: number;
}

/**
 * The surface made anew: where the generalized winding number of the old faces passes one half, on cells of `edge`
 * mm. Works on open, crossing and doubled surfaces as long as most faces look outward. Corners are rounded by up to
 * about a third of `edge`; what is thinner than a cell may be lost, so measure afterwards. Throws KernelFault where
 * nothing is inside; RemeshTooLong where it would take too long.
 */
export function remesh(
  mesh: TriangleMesh,
  tree: TriangleTree,
  edge: number,
  kernel: Kernel,
  stepLimit = mostSteps,
): Remeshed {
  const { min, max } = boundsOf(mesh.positions);
  const low = min.map((value) => value - 2 * edge) as [number, number, number];
  const high = max.map((value) => value + 2 * edge) as [number, number, number];
  const inside = boundedBySteps(insideness(tree, low, high, edge), tree, -2 * edge, stepLimit);
  const raw = withinSteps(tree, stepLimit, () =>
    kernel.scope((scope) => scope.toMesh(scope.levelSet(inside, low, high, edge, 'the master made anew'))),
  );
  const { mesh: rest, smallComponents } = withoutSmallComponents(raw, (2 * edge) ** 3);
  if (rest.triangles.length === 0) throw new KernelFault('the master made anew', 'nothing is left of it');
  return { mesh: rest, smallComponents };
}

/** Throws RemeshTooLong where the box of the mesh holds more cells of `edge` mm than are made. */
export function limitCells(mesh: TriangleMesh, edge: number): void {
  const { min, max } = boundsOf(mesh.positions);
  const cells = min.reduce((product, low, axis) => product * Math.ceil((max[axis] - low) / edge + 4), 1);
  if (cells > mostCells) throw new RemeshTooLong('cells', cells, mostCells);
}

/** Nothing can be thrown through the kernel that asks: past the limit it is told `otherwise` until it has asked all. */
const boundedBySteps =
  (at: (point: Vec3) => number, tree: TriangleTree, otherwise: number, limit: number) =>
  (point: Vec3): number =>
    tree.steps > limit ? otherwise : at(point);

/** What comes of it, where the tree was not asked too much; of a surface told only in part nothing may be left. */
function withinSteps<T>(tree: TriangleTree, limit: number, make: () => T): T {
  try {
    const made = make();
    if (tree.steps <= limit) return made;
  } catch (error) {
    if (tree.steps <= limit) throw error;
  }
  throw new RemeshTooLong('steps', tree.steps, limit);
}

/** More faces than this per cell of surface are finer than a new surface can show. */
const facesPerCell = 8;

/**
 * The faces a new surface with cells of `edge` mm is made from: long ones split, and where there are far more of
 * them than cells, points within a sixth of a cell drawn together (a dense scan, a fan of needles), which keeps the
 * time for a cell bounded. `slack` is how far (mm) such a face may lie from the surface.
 */
export function facesForCells(mesh: TriangleMesh, edge: number): { faces: TriangleMesh; slack: number } {
  const split = splitLong(mesh, 8 * edge);
  const cells = sizeOf(mesh).area / (edge * edge);
  if (split.triangles.length / 3 <= facesPerCell * cells) return { faces: split, slack: 0 };
  const pitch = edge / 6;
  const first = new Map<string, number>();
  const { positions } = split;
  const drawn = split.triangles.map((v) => {
    const key = [0, 1, 2].map((axis) => Math.floor(positions[v * 3 + axis] / pitch)).join();
    const known = first.get(key);
    if (known !== undefined) return known;
    first.set(key, v);
    return v;
  });
  const { mesh: faces } = dropCollapsed({ positions, triangles: drawn });
  return { faces, slack: pitch * Math.sqrt(3) };
}

/** Leaves out shells that enclose less than `least` mm3, whichever way they look. */
export function withoutSmallComponents(
  mesh: TriangleMesh,
  least: number,
  shells = findShells(mesh),
): WithoutSmall {
  const small = shells.volumes.map((volume) => (Math.abs(volume) < least ? 1 : 0));
  const smallComponents = small.reduce((sum, one) => sum + one, 0);
  if (smallComponents === 0) return { mesh, shells, smallComponents };
  const keep = Uint8Array.from(shells.of, (shell) => 1 - small[shell]);
  const { mesh: rest, place } = keepFaces(mesh, keep);
  return { mesh: rest, shells: findShells(rest), smallComponents, ...(place && { place }) };
}

export interface WithoutSmall extends Remeshed {
  readonly shells: Shells;
  readonly place?: Vec3;
}

/**
 * Positive inside, in mm, no farther than two cells from the surface. Distance times (2 w - 1): beside faces that is
 * the signed distance (w is 0 or 1 there), and across a hole it passes zero smoothly where w is one half.
 * Blocks that no face comes near hold one value; they are asked once, large ones first.
 */
function insideness(tree: TriangleTree, low: Vec3, high: Vec3, edge: number): (at: Vec3) => number {
  const cap = 2 * edge;
  const large = blockValues(tree, low, high, 8 * edge, edge);
  const small = blockValues(tree, low, high, 2 * edge, edge);
  return ([x, y, z]) => {
    const sign = large(x, y, z) || small(x, y, z);
    if (sign !== 0) return sign * cap;
    const w = tree.windingAt(x, y, z);
    return Math.max(-1, Math.min(1, 2 * w - 1)) * tree.distanceTo(x, y, z, cap);
  };
}

/**
 * For a point: 1 or -1 where the whole block it is in lies inside or outside, 0 where that is not certain.
 * Certain is a block a cell away from every face whose middle has a whole winding number (a closed surface keeps it
 * up to its faces), or one so far from them that a fraction cannot reach one half: away from the faces w is
 * harmonic, and one that is within 0.1 of 0 or 1 in the middle of a ball stays on its side within a quarter of its
 * radius (Harnack).
 */
function blockValues(
  tree: TriangleTree,
  low: Vec3,
  high: Vec3,
  side: number,
  edge: number,
): (x: number, y: number, z: number) => number {
  const count = (axis: number): number => Math.ceil((high[axis] - low[axis]) / side) + 1;
  const [nx, ny, nz] = [count(0), count(1), count(2)];
  const unknown = 2;
  const signs = new Int8Array(nx * ny * nz).fill(unknown);
  const radius = (side * Math.sqrt(3)) / 2;
  const ask = (i: number, j: number, k: number): number => {
    const x = low[0] + (i + 0.5) * side;
    const y = low[1] + (j + 0.5) * side;
    const z = low[2] + (k + 0.5) * side;
    const near = tree.distanceTo(x, y, z, 4 * radius);
    if (near < radius + 1.01 * edge) return 0;
    const w = tree.windingAt(x, y, z);
    const whole = Math.abs(w - Math.round(w)) < wholeWithin;
    const far = near >= 4 * radius && (w < 0.1 || w > 0.9);
    return whole || far ? (w > 0.5 ? 1 : -1) : 0;
  };
  const cell = (value: number, from: number, n: number): number =>
    Math.max(0, Math.min(n - 1, Math.floor((value - from) / side)));
  return (x, y, z) => {
    const i = cell(x, low[0], nx);
    const j = cell(y, low[1], ny);
    const k = cell(z, low[2], nz);
    const at = (k * ny + j) * nx + i;
    if (signs[at] === unknown) signs[at] = ask(i, j, k);
    return signs[at];
  };
}
