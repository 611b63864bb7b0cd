import { boundsOf, type Kernel, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { keepFaces } from './drop-faces.ts';
import { findShells, type Shells } from './shells.ts';
import type { TriangleTree } from './triangle-tree.ts';

/** Cells along the longest side where no edge length is asked for. */
export const remeshCells = 110;

export interface Remeshed {
  readonly mesh: TriangleMesh;
  /** Pieces and bubbles smaller than a few cells, left out. */
  readonly specks: number;
}

/**
 * The surface made anew: where the generalized winding number of the old faces passes one half, on cells of `edge`
 * mm. Works on open, crossing and doubled surfaces as long as most faces look outward. Corners are rounded by up to
 * about a third of `edge`; what is thinner than a cell may be lost, so measure afterwards. Throws KernelFault where
 * nothing is inside.
 */
export function remesh(mesh: TriangleMesh, tree: TriangleTree, edge: number, kernel: Kernel): Remeshed {
  const { min, max } = boundsOf(mesh.positions);
  const low = min.map((value) => value - 2 * edge) as [number, number, number];
  const high = max.map((value) => value + 2 * edge) as [number, number, number];
  const inside = insideness(tree, low, high, edge);
  const raw = kernel.scope((scope) =>
    scope.toMesh(scope.levelSet(inside, low, high, edge, 'the master made anew')),
  );
  return withoutSpecks(raw, (2 * edge) ** 3);
}

/** Leaves out shells that enclose less than `least` mm3, whichever way they look. */
export function withoutSpecks(mesh: TriangleMesh, least: number, shells = findShells(mesh)): Speckless {
  const speck = shells.volumes.map((volume) => (Math.abs(volume) < least ? 1 : 0));
  const specks = speck.reduce((sum, one) => sum + one, 0);
  if (specks === 0) return { mesh, shells, specks };
  const keep = Uint8Array.from(shells.of, (shell) => 1 - speck[shell]);
  const { mesh: rest, place } = keepFaces(mesh, keep);
  return { mesh: rest, shells: findShells(rest), specks, ...(place && { place }) };
}

export interface Speckless extends Remeshed {
  readonly shells: Shells;
  readonly place?: Vec3;
}

/**
 * Positive inside, in mm, no farther than two cells from the surface. Distance times (2 w - 1): beside faces that is
 * the signed distance (w is 0 or 1 there), and across a hole it passes zero smoothly where w is one half.
 * Blocks of 4 cells that no face comes near hold one value: the winding number is harmonic away from the faces, so
 * one that is near 0 or 1 in the middle of a ball stays on its side in the inner quarter (Harnack).
 */
function insideness(tree: TriangleTree, low: Vec3, high: Vec3, edge: number): (at: Vec3) => number {
  const cap = 2 * edge;
  const side = 4 * edge;
  const [nx, ny, nz] = [0, 1, 2].map((axis) => Math.ceil((high[axis] - low[axis]) / side) + 1) as [
    number,
    number,
    number,
  ];
  const radius = (side * Math.sqrt(3)) / 2;
  const unknown = Number.NaN;
  const blocks = new Float32Array(nx * ny * nz).fill(unknown);
  const mixed = Number.POSITIVE_INFINITY;
  const value = (x: number, y: number, z: number): number => {
    const w = tree.windingAt(x, y, z);
    return Math.max(-1, Math.min(1, 2 * w - 1)) * tree.distanceTo(x, y, z, cap);
  };
  const ofBlock = (i: number, j: number, k: number): number => {
    const x = low[0] + (i + 0.5) * side;
    const y = low[1] + (j + 0.5) * side;
    const z = low[2] + (k + 0.5) * side;
    const near = tree.distanceTo(x, y, z, 4 * radius);
    const w = tree.windingAt(x, y, z);
    if (near >= 4 * radius && (w < 0.1 || w > 0.9)) return w > 0.5 ? cap : -cap;
    // A closed surface keeps its winding number up to the surface itself.
    if (near > radius + cap && Math.abs(w - Math.round(w)) < 0.01) return w > 0.5 ? cap : -cap;
    return mixed;
  };
  return ([x, y, z]) => {
    const i = Math.max(0, Math.min(nx - 1, Math.floor((x - low[0]) / side)));
    const j = Math.max(0, Math.min(ny - 1, Math.floor((y - low[1]) / side)));
    const k = Math.max(0, Math.min(nz - 1, Math.floor((z - low[2]) / side)));
    const at = (k * ny + j) * nx + i;
    if (Number.isNaN(blocks[at])) blocks[at] = ofBlock(i, j, k);
    return blocks[at] === mixed ? value(x, y, z) : blocks[at];
  };
}
