import { boundsOf, type TriangleMesh, type Vec3 } from '../geometry/index.ts';
import { type Columns, columnsOf, measureMesh } from '../mesh/index.ts';

/** Neighbors of a cell, in the order of `Cells.beside`: toward -x, +x, -y, +y, -z, +z. */
export const sides = 6;
/** In `Cells.beside`: there is wall. */
export const wall = -1;

/**
 * A room as cubes of `cell` mm whose middles lie in it, numbered row by row along x, then y, then z. Plain data; all
 * that is known of a cell stands in arrays of its own under that number.
 */
export interface Cells {
  readonly cell: number;
  readonly count: number;
  /** Middle of the cell at (0, 0, 0) of the lattice, mm; cells along x, y and z. */
  readonly low: Vec3;
  readonly size: Vec3;
  /** Place of each in the lattice: i, j, k. */
  readonly at: Int16Array;
  /** Number of the cell at a place of the lattice, or `wall`. */
  readonly numbers: Int32Array;
  /** Six for each cell: the numbers beside it, or `wall`. */
  readonly beside: Int32Array;
  /** How far the wall beside each cell is along x, y and z, mm, with its sign; NaN where none is beside it. */
  readonly walls: Float32Array;
  /** Volume of the room that each stands for, in whole cells: those at the ends of an upright line have what is left over. */
  readonly share: Float32Array;
  /** One layer of cells seen as a section without end across it (y): the walls before and behind it are none. */
  readonly planar?: true;
}

/** Where the grid would be larger than the limit: the smallest cell that fits. */
export interface TooFine {
  readonly wouldFit: number;
}

/** Bytes held for each cell in the worst of its passes, measured by `bench/fill.ts`; and the most cells of one grid. */
export const mostCells = 4_000_000;
/** Places of the lattice round them, four bytes each. */
const mostPlaces = 64_000_000;

export const isTooFine = (made: Cells | TooFine): made is TooFine => 'wouldFit' in made;

/**
 * Cells of a closed mesh (mm, looking outward). The lattice is fixed in the mold frame, whatever the mesh. A middle is in
 * the room where an upright line through it has come in oftener than out; faces that share an edge are cut alike, so no line
 * slips between them.
 */
export function cellsOf(mesh: TriangleMesh, cell: number): Cells | TooFine {
  const { min, max } = boundsOf(mesh.positions);
  const first = min.map((value) => Math.floor(value / cell));
  const size = max.map((value, axis) => Math.floor(value / cell) - first[axis] + 1) as [
    number,
    number,
    number,
  ];
  const places = size[0] * size[1] * size[2];
  const volume = measureMesh(mesh).volume;
  const over = Math.max(places / mostPlaces, volume / cell ** 3 / mostCells);
  // A little more, for rounding up along each side.
  if (!(over <= 1) || Math.max(...size) > 30_000)
    return { wouldFit: cell * Math.cbrt(Math.max(over, 1)) * 1.02 };
  const low = first.map((value) => (value + 0.5) * cell) as [number, number, number];
  const lattice = { cell, low, size };
  const numbers = new Int32Array(places).fill(wall);
  const columns = [0, 1, 2].map((axis) => columnsAlong(mesh, axis, lattice));
  eachRun(columns[2], lattice, 2, (place, step, n) => {
    for (let k = 0; k < n; k++) numbers[place + k * step] = 0;
  });
  const cells = numbered(numbers, lattice);
  for (const axis of [0, 1, 2]) noteWalls(columns[axis], cells, axis);
  eachRun(columns[2], lattice, 2, (place, step, n, from, to) => {
    const [first, last] = [numbers[place], numbers[place + (n - 1) * step]];
    cells.share[first] += (middleOf(cells, first)[2] - from) / cell - 0.5;
    cells.share[last] += (to - middleOf(cells, last)[2]) / cell - 0.5;
  });
  return cells;
}

type Lattice = Pick<Cells, 'cell' | 'low' | 'size'>;

/** Numbers the places that are marked (not `wall`) in their order, and finds what is beside each. */
export function numbered(numbers: Int32Array, lattice: Lattice): Cells {
  const [nx, ny, nz] = lattice.size;
  let count = 0;
  for (let p = 0; p < numbers.length; p++) if (numbers[p] !== wall) numbers[p] = count++;
  const at = new Int16Array(3 * count);
  const beside = new Int32Array(sides * count);
  const steps = [1, nx, nx * ny];
  for (let k = 0, p = 0, c = 0; k < nz; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++, p++) {
        if (numbers[p] === wall) continue;
        at[3 * c] = i;
        at[3 * c + 1] = j;
        at[3 * c + 2] = k;
        for (let axis = 0; axis < 3; axis++) {
          const place = at[3 * c + axis];
          beside[sides * c + 2 * axis] = place > 0 ? numbers[p - steps[axis]] : wall;
          beside[sides * c + 2 * axis + 1] = place + 1 < lattice.size[axis] ? numbers[p + steps[axis]] : wall;
        }
        c++;
      }
  const share = new Float32Array(count).fill(1);
  return {
    ...lattice,
    count,
    at,
    numbers,
    beside,
    share,
    walls: new Float32Array(3 * count).fill(Number.NaN),
  };
}

/** Volume of some cells, mm3. */
export function volumeOf({ share, cell }: Cells, list: Iterable<number>): number {
  let sum = 0;
  for (const c of list) sum += share[c];
  return sum * cell ** 3;
}

/** Middle of a cell, mm. */
export const middleOf = ({ at, low, cell }: Cells, c: number): Vec3 => [
  low[0] + at[3 * c] * cell,
  low[1] + at[3 * c + 1] * cell,
  low[2] + at[3 * c + 2] * cell,
];

/** The cell whose cube holds a point, or `wall`. */
export function cellAt({ numbers, low, cell, size }: Cells, [x, y, z]: Vec3): number {
  const i = Math.round((x - low[0]) / cell);
  const j = Math.round((y - low[1]) / cell);
  const k = Math.round((z - low[2]) / cell);
  if (i < 0 || j < 0 || k < 0 || i >= size[0] || j >= size[1] || k >= size[2]) return wall;
  return numbers[(k * size[1] + j) * size[0] + i];
}

/** The mesh cut by the lines through all middles along one axis; turned so that they are upright. */
function columnsAlong(
  { positions, triangles }: TriangleMesh,
  axis: number,
  { cell, low, size }: Lattice,
): Columns {
  const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
  const turned = axis === 2 ? positions : new Float32Array(positions.length);
  if (axis !== 2)
    for (let i = 0; i < positions.length; i += 3) {
      turned[i] = positions[i + u];
      turned[i + 1] = positions[i + v];
      turned[i + 2] = positions[i + axis];
    }
  const grid = { cell, x0: low[u], y0: low[v], nx: size[u], ny: size[v] };
  return columnsOf({ positions: turned, triangles }, grid);
}

/** A stretch of a line within the room: the place of its first middle, steps to the next ones, and where the walls are. */
type Run = (place: number, step: number, n: number, from: number, to: number) => void;

function eachRun({ start, z, up }: Columns, { cell, low, size }: Lattice, axis: number, run: Run): void {
  const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
  const steps = [1, size[0], size[0] * size[1]];
  for (let b = 0, node = 0; b < size[v]; b++)
    for (let a = 0; a < size[u]; a++, node++) {
      let deep = 0;
      for (let m = start[node], from = 0; m < start[node + 1]; m++) {
        if (!up[m] && deep++ === 0) from = z[m];
        if (!(up[m] && --deep === 0)) continue;
        const first = Math.max(0, Math.ceil((from - low[axis]) / cell));
        const last = Math.min(size[axis] - 1, Math.ceil((z[m] - low[axis]) / cell) - 1);
        if (last < first) continue;
        run(a * steps[u] + b * steps[v] + first * steps[axis], steps[axis], last - first + 1, from, z[m]);
      }
    }
}

/** Notes where the walls at both ends of each stretch are, for the cells at its ends. */
function noteWalls(columns: Columns, cells: Cells, axis: number): void {
  const { numbers } = cells;
  eachRun(columns, cells, axis, (place, step, n, from, to) => {
    noteWall(cells, numbers[place], axis, from);
    noteWall(cells, numbers[place + (n - 1) * step], axis, to);
  });
}

/** Notes where the wall is on the line through a cell along one axis, if none nearer is known. */
export function noteWall({ at, low, cell, walls }: Cells, c: number, axis: number, value: number): void {
  // A middle on the wall itself may be in by one line and out by another.
  if (c === wall) return;
  const offset = value - low[axis] - at[3 * c + axis] * cell;
  if (!(Math.abs(offset) >= Math.abs(walls[3 * c + axis]))) walls[3 * c + axis] = offset;
}
