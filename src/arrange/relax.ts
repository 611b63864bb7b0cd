/** A sum of squares and its slopes: gives the sum, fills in the slopes. */
export type Slopes = (x: Float64Array, slopes: Float64Array) => number;

const remembered = 8;

/**
 * Goes downhill from `x`, in place, by L-BFGS (Nocedal, Mathematics of Computation 35, 1980) with steps shortened until
 * they go down enough (Armijo). Stops below `enough`, where it is level, or after so many steps. Gives the sum reached.
 */
export function relax(sum: Slopes, x: Float64Array, steps: number, enough: number): number {
  const n = x.length;
  let slopes = new Float64Array(n);
  let next = new Float64Array(n);
  const trial = new Float64Array(n);
  const way = new Float64Array(n);
  const past: Turn[] = [];
  let value = sum(x, slopes);
  for (let step = 0; step < steps && value > enough; step++) {
    direction(slopes, past, way);
    let down = dot(way, slopes);
    if (!(down < 0)) {
      past.length = 0;
      for (let i = 0; i < n; i++) way[i] = -slopes[i];
      down = dot(way, slopes);
      if (!(down < 0)) return value;
    }
    // Without a memory the slope says the direction but no length: about a fifth of a millimeter for each violation.
    let length = past.length === 0 ? Math.min(0.25, 2 / Math.sqrt(-down)) : 1;
    let found = Number.POSITIVE_INFINITY;
    for (let shorter = 0; shorter < 12; shorter++) {
      for (let i = 0; i < n; i++) trial[i] = x[i] + length * way[i];
      found = sum(trial, next);
      if (found <= value + 1e-4 * length * down) break;
      length *= 0.4;
    }
    if (!(found < value)) {
      if (past.length === 0) return value;
      past.length = 0;
      continue;
    }
    remember(past, x, trial, slopes, next);
    const level = value - found < 1e-7 * value;
    x.set(trial);
    value = found;
    [slopes, next] = [next, slopes];
    if (level) return value;
  }
  return value;
}

interface Turn {
  readonly s: Float64Array;
  readonly y: Float64Array;
  readonly rho: number;
}

function remember(
  past: Turn[],
  x: Float64Array,
  to: Float64Array,
  before: Float64Array,
  after: Float64Array,
): void {
  const s = to.map((v, i) => v - x[i]);
  const y = after.map((v, i) => v - before[i]);
  const curve = dot(s, y);
  if (!(curve > 1e-12)) return;
  past.push({ s, y, rho: 1 / curve });
  if (past.length > remembered) past.shift();
}

/** The two loops of the recursion. */
function direction(slopes: Float64Array, past: readonly Turn[], way: Float64Array): void {
  const alpha = new Float64Array(past.length);
  for (let i = 0; i < way.length; i++) way[i] = -slopes[i];
  for (let k = past.length - 1; k >= 0; k--) {
    const { s, y, rho } = past[k];
    alpha[k] = rho * dot(s, way);
    for (let i = 0; i < way.length; i++) way[i] -= alpha[k] * y[i];
  }
  const last = past.at(-1);
  if (last) {
    const scale = 1 / (last.rho * dot(last.y, last.y));
    for (let i = 0; i < way.length; i++) way[i] *= scale;
  }
  for (let k = 0; k < past.length; k++) {
    const { s, y, rho } = past[k];
    const beta = rho * dot(y, way);
    for (let i = 0; i < way.length; i++) way[i] += (alpha[k] - beta) * s[i];
  }
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
