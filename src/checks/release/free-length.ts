import type { Grid } from '../../geometry/index.ts';

/** Rounds of four sweeps; winding shapes need a few, and none gets better after that. */
const mostRounds = 40;

/**
 * How far every free node (mask 1) is from the nearest held one (mask 2) without leaving the mask, mm; 0 at held
 * nodes, infinity where none is reached. First-order upwind solution of |grad d| = 1 by sweeping: exact along the
 * grid, a little long (under 5 % from a straight edge) on a slant. Source: Zhao, A fast sweeping method for eikonal
 * equations, Math. Comp. 74 (2005) 603-627.
 */
export function freeLength(
  mask: Uint8Array,
  { nx, ny, cell }: Pick<Grid, 'nx' | 'ny' | 'cell'>,
): Float64Array {
  const d = Float64Array.from(mask, (kind) => (kind === 2 ? 0 : Number.POSITIVE_INFINITY));
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 || i >= nx || j >= ny ? Number.POSITIVE_INFINITY : d[j * nx + i];
  const update = (i: number, j: number): boolean => {
    const k = j * nx + i;
    if (mask[k] !== 1) return false;
    const a = Math.min(at(i - 1, j), at(i + 1, j));
    const b = Math.min(at(i, j - 1), at(i, j + 1));
    const near = Math.min(a, b);
    if (near === Number.POSITIVE_INFINITY) return false;
    const apart = Math.abs(a - b);
    const to = apart < cell ? (a + b + Math.sqrt(2 * cell * cell - apart * apart)) / 2 : near + cell;
    if (!(to < d[k] - 1e-9)) return false;
    d[k] = to;
    return true;
  };
  for (let round = 0; round < mostRounds; round++) {
    let changed = false;
    for (const [right, up] of [
      [true, true],
      [false, true],
      [false, false],
      [true, false],
    ]) {
      for (let q = 0; q < ny; q++) {
        const j = up ? q : ny - 1 - q;
        for (let p = 0; p < nx; p++) changed = update(right ? p : nx - 1 - p, j) || changed;
      }
    }
    if (!changed) break;
  }
  return d;
}
