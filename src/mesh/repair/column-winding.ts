import { boundsOf, type Grid, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { scan } from '../measure/scan.ts';

/** What upright lines through a mesh met. A sound solid has `wrong` = 0: every line is inside it 0 or 1 deep. */
export interface ColumnWinding {
  /** Lines that met the mesh. */
  readonly columns: number;
  /** Lines with a stretch whose depth is neither 0 nor 1, and the volume of those stretches, mm3. */
  readonly wrong: number;
  readonly wrongVolume: number;
  /** Ends of such stretches, on the faces at fault: x, y, z each; the first `mostPlaces` ends. */
  readonly ends: readonly number[];
  /** Middle of the longest such stretch, and its length in mm. */
  readonly place?: Vec3;
  readonly longest: number;
  /** Distance between lines, mm. */
  readonly pitch: number;
}

/** Stretches shorter than this (mm) are rounding of the meeting points: surfaces that touch. */
const shortestStretch = 2e-3;

/** Most ends that are remembered. */
const mostPlaces = 400;

interface Meetings {
  count: number;
  column: Uint32Array;
  z: Float64Array;
  up: Int8Array;
}

/**
 * Counts how deep inside a mesh the points of upright lines are: walking down a line, a face seen from its outside
 * adds one and a face seen from inside takes one away. `lines` is their number along the longer side of the plan
 * view. Overlapping bodies give 2, a solid turned inside out gives -1, a hole gives lines that never come out.
 * Neighbouring faces are cut alike along their common edge, so a line never slips between them.
 */
export function columnWinding(mesh: TriangleMesh, lines = 400): ColumnWinding {
  const { min, max } = boundsOf(mesh.positions);
  const cell = Math.max(max[0] - min[0], max[1] - min[1]) / lines;
  if (!(cell > 0)) return { columns: 0, wrong: 0, wrongVolume: 0, ends: [], longest: 0, pitch: 0 };
  const grid: Grid = {
    cell,
    // Off the middle of the cell by an odd share, so that lines seldom meet the edges of parts drawn on a grid.
    x0: min[0] + cell * 0.4871,
    y0: min[1] + cell * 0.5093,
    nx: Math.max(1, Math.ceil((max[0] - min[0]) / cell)),
    ny: Math.max(1, Math.ceil((max[1] - min[1]) / cell)),
  };
  const meetings = meet(mesh, grid);
  return judge(sortByColumn(meetings, grid.nx * grid.ny), meetings, grid);
}

function meet(mesh: TriangleMesh, grid: Grid): Meetings {
  const met: Meetings = {
    count: 0,
    column: new Uint32Array(1 << 16),
    z: new Float64Array(1 << 16),
    up: new Int8Array(1 << 16),
  };
  scan(mesh, grid, 'x', (row, from, to, zFrom, zTo, up) => {
    const slope = to > from ? (zTo - zFrom) / (to - from) : 0;
    let i = Math.max(0, Math.ceil((from - grid.x0) / grid.cell - 1e-9));
    // Which line is in the span is settled by the same comparison for both faces of an edge.
    for (; i < grid.nx; i++) {
      const x = grid.x0 + i * grid.cell;
      if (x >= to) break;
      if (x >= from) record(met, row * grid.nx + i, zFrom + (x - from) * slope, up);
    }
  });
  return met;
}

function record(met: Meetings, column: number, z: number, up: boolean): void {
  if (met.count === met.z.length) {
    const column = new Uint32Array(met.count * 2);
    const heights = new Float64Array(met.count * 2);
    const ups = new Int8Array(met.count * 2);
    column.set(met.column);
    heights.set(met.z);
    ups.set(met.up);
    Object.assign(met, { column, z: heights, up: ups });
  }
  met.column[met.count] = column;
  met.z[met.count] = z;
  met.up[met.count] = up ? 1 : -1;
  met.count++;
}

function sortByColumn(met: Meetings, columns: number) {
  const starts = new Uint32Array(columns + 1);
  for (let m = 0; m < met.count; m++) starts[met.column[m] + 1]++;
  for (let c = 0; c < columns; c++) starts[c + 1] += starts[c];
  const fill = starts.slice();
  const order = new Uint32Array(met.count);
  for (let m = 0; m < met.count; m++) order[fill[met.column[m]]++] = m;
  for (let c = 0; c < columns; c++) {
    for (let i = starts[c] + 1; i < starts[c + 1]; i++) {
      const m = order[i];
      let j = i - 1;
      for (; j >= starts[c] && met.z[order[j]] < met.z[m]; j--) order[j + 1] = order[j];
      order[j + 1] = m;
    }
  }
  return { starts, order };
}

/** Walks each line downward from above. */
function judge(
  { starts, order }: { starts: Uint32Array; order: Uint32Array },
  met: Meetings,
  { cell: pitch, x0, y0, nx }: Grid,
): ColumnWinding {
  const ends: number[] = [];
  const sum = { columns: 0, wrong: 0, wrongVolume: 0, ends, longest: 0, pitch };
  let place: Vec3 | undefined;
  for (let c = 0; c + 1 < starts.length; c++) {
    if (starts[c] === starts[c + 1]) continue;
    sum.columns++;
    let depth = 0;
    let bad = 0;
    for (let i = starts[c]; i < starts[c + 1]; i++) {
      depth += met.up[order[i]];
      const z = met.z[order[i]];
      const length = i + 1 < starts[c + 1] ? z - met.z[order[i + 1]] : 0;
      if (depth === 0 || depth === 1 || length <= shortestStretch) continue;
      bad += length;
      const x = x0 + (c % nx) * pitch;
      const y = y0 + Math.floor(c / nx) * pitch;
      if (ends.length < mostPlaces * 3) ends.push(x, y, z, x, y, z - length);
      if (length > sum.longest) {
        sum.longest = length;
        place = [x, y, z - length / 2];
      }
    }
    // A line that does not come out again went through a hole.
    if (bad > 0 || depth !== 0) sum.wrong++;
    sum.wrongVolume += bad * pitch * pitch;
  }
  return place === undefined ? sum : { ...sum, place };
}
