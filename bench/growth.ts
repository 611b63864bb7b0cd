/** Slope of log time over log count by least squares: 1 for time in proportion to the count. */
export function growth(times: readonly (readonly [number, number])[]): number {
  const points = times.map(([n, t]) => [Math.log(n), Math.log(t)] as const);
  const mx = points.reduce((s, [x]) => s + x, 0) / points.length;
  const my = points.reduce((s, [, y]) => s + y, 0) / points.length;
  const xy = points.reduce((s, [x, y]) => s + (x - mx) * (y - my), 0);
  return xy / points.reduce((s, [x]) => s + (x - mx) ** 2, 0);
}
