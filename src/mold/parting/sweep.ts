/** Improvements below this (mm) are not followed up. */
const settled = 5e-4;
const mostRounds = 12;
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
  let changed = tilesBelow(field, rows, across, ceiling);
  for (let round = 0; round < mostRounds; round++) {
    const awake = changed;
    changed = new Uint8Array(awake.length);
    const state: Sweep = { field, slope, rows, ceiling, across, awake, changed };
    sweep(state, 1, 1);
    sweep(state, -1, 1);
    sweep(state, -1, -1);
    sweep(state, 1, -1);
    if (!changed.includes(1)) return;
  }
}

interface Sweep {
  readonly field: Float32Array;
  readonly slope: Float32Array;
  readonly rows: Rows;
  readonly ceiling: number;
  /** Tiles in a row. */
  readonly across: number;
  /** Tiles that changed in the last round. */
  readonly awake: Uint8Array;
  readonly changed: Uint8Array;
}

function tilesBelow(field: Float32Array, { nx, ny }: Rows, across: number, ceiling: number): Uint8Array {
  const below = new Uint8Array(across * Math.ceil(ny / tile));
  for (let j = 0; j < ny; j++) {
    const row = Math.floor(j / tile) * across;
    for (let i = 0; i < nx; i++) if (field[j * nx + i] < ceiling) below[row + Math.floor(i / tile)] = 1;
  }
  return below;
}

function sweep(state: Sweep, di: 1 | -1, dj: 1 | -1): void {
  const { rows, across } = state;
  const { nx, ny } = rows;
  for (let row = 1; row < ny - 1; row++) {
    const j = dj === 1 ? row : ny - 1 - row;
    const down = Math.floor(j / tile);
    for (let step = 0; step < across; step++) {
      const right = di === 1 ? step : across - 1 - step;
      if (!awakeNear(state, right, down)) continue;
      const first = Math.max(1, right * tile);
      const last = Math.min(nx - 2, right * tile + tile - 1);
      const most =
        di === 1
          ? lowerRun(state, j * nx + first, j * nx + last + 1, 1)
          : lowerRun(state, j * nx + last, j * nx + first - 1, -1);
      if (most > settled) state.changed[down * across + right] = 1;
    }
  }
}

function awakeNear({ awake, changed, across }: Sweep, right: number, down: number): boolean {
  const here = down * across + right;
  for (const row of [here, here - across, here + across]) {
    // Past the lattice's edge these read another tile or nothing: a tile too many is swept, never one too few.
    if (awake[row] || awake[row - 1] || awake[row + 1]) return true;
    if (changed[row] || changed[row - 1] || changed[row + 1]) return true;
  }
  return false;
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
