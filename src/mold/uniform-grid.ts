import { type Bounds2, boundsOf, memoPerMesh, type TriangleMesh } from '../geometry/index.ts';

/** Side of the cells a sheet's faces are sorted into, mm: some of them make a master's place. */
const side = 8;

/** The faces that reach into each cell, one list behind the other: those of cell k are starts[k]..starts[k + 1]. */
interface UniformGrid {
  readonly x0: number;
  readonly y0: number;
  readonly nx: number;
  readonly ny: number;
  readonly starts: Uint32Array;
  readonly faces: Uint32Array;
}

/**
 * The faces of a sheet that may reach into a box, each once and in the sheet's order, by where they start in its list
 * of corners.
 */
export function facesWithin(sheet: TriangleMesh, { min, max }: Bounds2): Uint32Array {
  const { x0, y0, nx, ny, starts, faces } = gridOfFaces(sheet);
  const [i0, i1] = [cellOf(min[0], x0, nx), cellOf(max[0], x0, nx)];
  const rows: Uint32Array[] = [];
  for (let j = cellOf(min[1], y0, ny); j <= cellOf(max[1], y0, ny); j++) {
    rows.push(faces.subarray(starts[j * nx + i0], starts[j * nx + i1 + 1]));
  }
  const found = new Uint32Array(rows.reduce((sum, row) => sum + row.length, 0));
  let count = 0;
  for (const row of rows) {
    found.set(row, count);
    count += row.length;
  }
  found.sort();
  let kept = 0;
  for (let k = 0; k < count; k++) {
    if (kept === 0 || found[kept - 1] !== found[k]) found[kept++] = found[k];
  }
  return found.subarray(0, kept);
}

/** What lies outside counts to the cell at the edge. */
const cellOf = (at: number, from: number, count: number): number =>
  Math.min(count - 1, Math.max(0, Math.floor((at - from) / side)));

const gridOfFaces = memoPerMesh((sheet): UniformGrid => {
  const { min, max } = boundsOf(sheet.positions);
  const [x0, y0] = min;
  const [nx, ny] = [0, 1].map((axis) => Math.floor((max[axis] - min[axis]) / side) + 1);
  const starts = new Uint32Array(nx * ny + 1);
  const grid = { x0, y0, nx, ny };
  eachCell(sheet, grid, (cell) => starts[cell + 1]++);
  for (let k = 0; k < nx * ny; k++) starts[k + 1] += starts[k];
  const next = starts.slice();
  const faces = new Uint32Array(starts[nx * ny]);
  eachCell(sheet, grid, (cell, face) => {
    faces[next[cell]++] = face;
  });
  return { ...grid, starts, faces };
});

/** Visits every cell the box round each face reaches into. */
function eachCell(
  { positions: p, triangles }: TriangleMesh,
  { x0, y0, nx, ny }: Pick<UniformGrid, 'x0' | 'y0' | 'nx' | 'ny'>,
  visit: (cell: number, face: number) => void,
): void {
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] * 3, triangles[t + 1] * 3, triangles[t + 2] * 3];
    const i1 = cellOf(Math.max(p[a], p[b], p[c]), x0, nx);
    const j1 = cellOf(Math.max(p[a + 1], p[b + 1], p[c + 1]), y0, ny);
    for (let j = cellOf(Math.min(p[a + 1], p[b + 1], p[c + 1]), y0, ny); j <= j1; j++) {
      for (let i = cellOf(Math.min(p[a], p[b], p[c]), x0, nx); i <= i1; i++) visit(j * nx + i, t);
    }
  }
}
