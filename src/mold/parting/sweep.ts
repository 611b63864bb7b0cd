/** Improvements below this (mm) are not followed up. */
const settled = 5e-4;
const mostSweeps = 48;
/** Side of the tiles that are left out while nothing changes in them or beside them. */
const tile = 32;

/** Nodes in rows: index j * nx + i, `cell` mm apart. */
export interface Rows {
  readonly nx: number;
  readonly ny: number;
  readonly cell: number;
}

/**
 * Lowers every value to the least it can be reached for from the others when one step costs slope x cell: the
 * viscosity solution of |grad f| = slope from above, f <= the values given. In place; border nodes stay as they are;
 * values of `ceiling` and more are not passed on.
 * Fast sweeping with the Godunov scheme (Zhao, Math. Comp. 74 (2005) 603-627), tiles at rest left out.
 */
export function spread(field: Float32Array, slope: Float32Array, rows: Rows, ceiling: number): void {
  const across = Math.ceil(rows.nx / tile);
  const changedAt = tilesBelow(field, rows, across, ceiling);
  let last = 0;
  for (let now = 1; now <= mostSweeps && now - last <= 4; now++) {
    const [di, dj] = directions[now % 4];
    if (sweep({ field, slope, rows, ceiling, across, changedAt, now }, di, dj)) last = now;
  }
}

const directions = [
  [1, -1],
  [1, 1],
  [-1, 1],
  [-1, -1],
] as const;

interface Sweep {
  readonly field: Float32Array;
  readonly slope: Float32Array;
  readonly rows: Rows;
  readonly ceiling: number;
  /** Tiles in a row. */
  readonly across: number;
  /** Number of the sweep each tile changed in last. */
  readonly changedAt: Int32Array;
  /** Number of this sweep. */
  readonly now: number;
}

const never = -1000;

function tilesBelow(field: Float32Array, { nx, ny }: Rows, across: number, ceiling: number): Int32Array {
  const changedAt = new Int32Array(across * Math.ceil(ny / tile)).fill(never);
  for (let j = 0; j < ny; j++) {
    const row = Math.floor(j / tile) * across;
    for (let i = 0; i < nx; i++) if (field[j * nx + i] < ceiling) changedAt[row + Math.floor(i / tile)] = 0;
  }
  return changedAt;
}

/** One sweep over all tiles that are not at rest; whether anything changed. */
function sweep(state: Sweep, di: 1 | -1, dj: 1 | -1): boolean {
  const { rows, across, changedAt, now } = state;
  const { nx, ny } = rows;
  let any = false;
  for (let row = 1; row < ny - 1; row++) {
    const j = dj === 1 ? row : ny - 1 - row;
    const down = Math.floor(j / tile);
    for (let step = 0; step < across; step++) {
      const right = di === 1 ? step : across - 1 - step;
      if (atRest(state, down * across + right)) continue;
      const first = Math.max(1, right * tile);
      const last = Math.min(nx - 2, right * tile + tile - 1);
      const most =
        di === 1
          ? lowerRun(state, j * nx + first, j * nx + last + 1, 1)
          : lowerRun(state, j * nx + last, j * nx + first - 1, -1);
      if (most <= settled) continue;
      changedAt[down * across + right] = now;
      any = true;
    }
  }
  return any;
}

/** Nothing changed in the tile or beside it since the last sweep in this direction. */
function atRest({ changedAt, across, now }: Sweep, here: number): boolean {
  for (const row of [here, here - across, here + across]) {
    // Past the lattice's edge these read another tile or nothing: a tile too many is swept, never one too few.
    for (let at = row - 1; at <= row + 1; at++) if (now - changedAt[at] <= 4) return false;
  }
  return true;
}

/** Lowers the nodes from `k` up to, not including, `end`; gives the greatest gain, mm. */
function lowerRun({ field, slope, rows, ceiling }: Sweep, k: number, end: number, by: 1 | -1): number {
  const { nx, cell } = rows;
  let most = 0;
  for (let at = k; at !== end; at += by) {
    const old = field[at];
    const a = Math.min(field[at - 1], field[at + 1]);
    const b = Math.min(field[at - nx], field[at + nx]);
    const least = Math.min(a, b);
    if (least >= old || least >= ceiling) continue;
    const step = slope[at] * cell;
    const apart = a - b;
    const reached =
      Math.abs(apart) < step ? (a + b + Math.sqrt(2 * step * step - apart * apart)) / 2 : least + step;
    if (reached >= old) continue;
    field[at] = reached;
    most = Math.max(most, old - reached);
  }
  return most;
}
