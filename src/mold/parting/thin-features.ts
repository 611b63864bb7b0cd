import { type Finding, finding } from '../../findings/index.ts';
import type { Grid, TriangleMesh, Vec3 } from '../../geometry/index.ts';
import type { MasterColumns } from './columns.ts';

/** Nodes this near to a patch of two by two covered nodes are the edge of a feature wide enough. */
const edge = 2;

/**
 * Features of a master's shadow under two cells wide: nodes far from any patch of 2 x 2 covered nodes, and vertices
 * with no covered node near them (features that fell between the nodes). One finding with the first place, or none.
 */
export function thinFeatures(master: MasterColumns, mesh: TriangleMesh, lattice: Grid): Finding[] {
  const wide = nearWidePatch(master);
  const { x0, y0, cell } = lattice;
  let place: Vec3 | undefined;
  let count = 0;
  const found = (x: number, y: number, z: number): void => {
    place ??= [x, y, z];
    count++;
  };
  for (let k = 0; k < wide.length; k++) {
    if (master.depth[k] === 0 || wide[k]) continue;
    const i = k % master.nx;
    found(
      x0 + (master.i0 + i) * cell,
      y0 + (master.j0 + (k - i) / master.nx) * cell,
      (master.bottom[k] + master.top[k]) / 2,
    );
  }
  const p = mesh.positions;
  for (let v = 0; v < p.length; v += 3) {
    const i = Math.round((p[v] - x0) / cell) - master.i0;
    const j = Math.round((p[v + 1] - y0) / cell) - master.j0;
    if (i < 0 || j < 0 || i >= master.nx || j >= master.ny) continue;
    if (!wide[j * master.nx + i]) found(p[v], p[v + 1], p[v + 2]);
  }
  if (!place) return [];
  const values = { measured: count, limit: 2 * cell };
  return [finding('mold.thin-features', { subject: master.id, place, values })];
}

/** 1 at nodes within `edge` nodes of a patch of 2 x 2 covered nodes. */
function nearWidePatch({ depth, nx, ny }: MasterColumns): Uint8Array {
  const near = new Uint8Array(depth.length);
  for (let j = 0; j + 1 < ny; j++) {
    for (let i = 0; i + 1 < nx; i++) {
      const k = j * nx + i;
      if (!(depth[k] && depth[k + 1] && depth[k + nx] && depth[k + nx + 1])) continue;
      const [left, right] = [Math.max(0, i - edge), Math.min(nx - 1, i + 1 + edge)];
      for (let row = Math.max(0, j - edge); row <= Math.min(ny - 1, j + 1 + edge); row++) {
        near.fill(1, row * nx + left, row * nx + right + 1);
      }
    }
  }
  return near;
}
