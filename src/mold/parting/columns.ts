import { boundsOf, type Grid, type TriangleMesh } from '../../geometry/index.ts';
import { columnsOf, type Window } from '../../mesh/index.ts';
import { gridOf, windowOver } from './lattice.ts';

/** Nodes this close to a master's outline (counted inward) belong to its silhouette. */
export const silhouetteCells = 3;

/**
 * What one master puts over the nodes of a window (mm, mold frame): lowest and highest surface, NaN where it is not
 * over the node; length of solid between them; number of surfaces; and how many nodes inward from the outline the
 * node is: 0 outside, 1 at the outline, at most `silhouetteCells` + 1.
 */
export interface MasterColumns extends Window {
  readonly id: string;
  readonly bottom: Float32Array;
  readonly top: Float32Array;
  readonly solid: Float32Array;
  readonly surfaces: Uint8Array;
  readonly depth: Uint8Array;
  /** Nodes where begin and end of the solid do not alternate: the mesh crosses or overlaps itself there. */
  readonly crossed: number;
}

/** Columns of a placed master over the lattice's nodes; the window has one node of nothing on each side. */
export function masterColumns(id: string, mesh: TriangleMesh, lattice: Grid): MasterColumns {
  const window = windowOver(lattice, boundsOf(mesh.positions), 1);
  const { start, z, up } = columnsOf(mesh, gridOf(lattice, window));
  const count = window.nx * window.ny;
  const bottom = new Float32Array(count).fill(Number.NaN);
  const top = new Float32Array(count).fill(Number.NaN);
  const solid = new Float32Array(count);
  const surfaces = new Uint8Array(count);
  let crossed = 0;
  for (let k = 0; k < count; k++) {
    const [from, to] = [start[k], start[k + 1]];
    if (from === to) continue;
    bottom[k] = z[from];
    top[k] = z[to - 1];
    surfaces[k] = Math.min(255, to - from);
    let alternates = true;
    let length = 0;
    for (let at = from; at < to; at++) {
      length += up[at] ? z[at] : -z[at];
      if (up[at] !== ((at - from) & 1)) alternates = false;
    }
    solid[k] = length;
    if (!alternates) crossed++;
  }
  return { id, ...window, bottom, top, solid, surfaces, depth: depthOf(surfaces, window), crossed };
}

/** Chessboard distance to the nearest node without surfaces, up to `silhouetteCells` + 1, in two passes. */
function depthOf(surfaces: Uint8Array, { nx, ny }: Window): Uint8Array {
  const depth = new Uint8Array(surfaces.length);
  const nearer = (k: number, a: number, b: number, c: number, d: number): void => {
    const least = Math.min(depth[a], depth[b], depth[c], depth[d]) + 1;
    if (least < depth[k]) depth[k] = least;
  };
  for (let k = 0; k < depth.length; k++) depth[k] = surfaces[k] ? silhouetteCells + 1 : 0;
  for (let j = 1; j < ny; j++) {
    for (let i = 1; i < nx - 1; i++) {
      const k = j * nx + i;
      nearer(k, k - 1, k - nx - 1, k - nx, k - nx + 1);
    }
  }
  for (let j = ny - 2; j >= 0; j--) {
    for (let i = nx - 2; i > 0; i--) {
      const k = j * nx + i;
      nearer(k, k + 1, k + nx - 1, k + nx, k + nx + 1);
    }
  }
  return depth;
}
