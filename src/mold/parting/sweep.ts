/** Improvements below this (mm) end the sweeps. */
const settled = 5e-4;
const mostRounds = 8;

/** Nodes in rows: index j * nx + i. */
export interface Rows {
  readonly nx: number;
  readonly ny: number;
  readonly cell: number;
}

/**
 * Lowers every value to the least it can be reached for from the others when one step costs slope x cell: the
 * viscosity solution of |grad f| = slope from above, f <= the values given. In place; border nodes stay as they are;
 * values of `ceiling` and more are not passed on.
 * Fast sweeping with the Godunov scheme (Zhao, Math. Comp. 74 (2005) 603-627).
 */
export function spread(field: Float32Array, slope: Float32Array, rows: Rows, ceiling: number): void {
  for (let round = 0; round < mostRounds; round++) {
    let most = 0;
    for (const [di, dj] of [
      [1, 1],
      [-1, 1],
      [-1, -1],
      [1, -1],
    ] as const) {
      most = Math.max(most, sweep(field, slope, rows, ceiling, di, dj));
    }
    if (most < settled) return;
  }
}

function sweep(
  field: Float32Array,
  slope: Float32Array,
  { nx, ny, cell }: Rows,
  ceiling: number,
  di: 1 | -1,
  dj: 1 | -1,
): number {
  let most = 0;
  for (let row = 1; row < ny - 1; row++) {
    const j = dj === 1 ? row : ny - 1 - row;
    const first = j * nx + (di === 1 ? 1 : nx - 2);
    const end = first + di * (nx - 2);
    for (let k = first; k !== end; k += di) {
      const left = field[k - 1];
      const right = field[k + 1];
      const down = field[k - nx];
      const up = field[k + nx];
      const a = left < right ? left : right;
      const b = down < up ? down : up;
      const least = a < b ? a : b;
      const old = field[k];
      if (least >= old || least >= ceiling) continue;
      const step = slope[k] * cell;
      const apart = a - b;
      const reached =
        apart >= step || apart <= -step
          ? least + step
          : (a + b + Math.sqrt(2 * step * step - apart * apart)) / 2;
      if (reached < old) {
        field[k] = reached;
        const gain = old - reached;
        if (gain > most) most = gain;
      }
    }
  }
  return most;
}
