import type { Point2 } from '../../geometry/index.ts';
import { piecesApart } from './ring.ts';
import type { Obstacle } from './route.ts';

/** Where a line comes back to within a width of itself: pieces farther apart along it than a half turn of its tightest bend. */
export function meetsItself(
  line: readonly Point2[],
  width: number,
): { readonly at: Point2; readonly apart: number } | undefined {
  const passed = [0];
  for (let i = 1; i < line.length; i++)
    passed.push(passed[i - 1] + Math.hypot(line[i][0] - line[i - 1][0], line[i][1] - line[i - 1][1]));
  for (let i = 0; i < line.length - 1; i++)
    for (let k = i + 2; k < line.length - 1; k++) {
      if (passed[k] - passed[i + 1] < Math.PI * width) continue;
      const apart = piecesApart(line[i], line[i + 1], line[k], line[k + 1]);
      if (apart < width) return { at: line[i], apart };
    }
  return undefined;
}

/** The points of a line that lie farther along it. */
export function passedBy(line: readonly Point2[], least: number): readonly Point2[] {
  let passed = 0;
  return line.filter((at, i) => {
    if (i > 0) passed += Math.hypot(at[0] - line[i - 1][0], at[1] - line[i - 1][1]);
    return passed > least;
  });
}

/** Least distance of a line from outlines it does not begin in; 0 where it crosses one. */
export function leastGap(line: readonly Point2[], obstacles: readonly Pick<Obstacle, 'outline'>[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { outline } of obstacles) {
    const box = boxOf(outline);
    for (let i = 1; i < line.length; i++) {
      if (boxesApart(boxOf([line[i - 1], line[i]]), box) >= least) continue;
      for (let k = 0; k < outline.length; k++)
        least = Math.min(
          least,
          piecesApart(line[i - 1], line[i], outline[k], outline[(k + 1) % outline.length]),
        );
    }
  }
  return least;
}

type Box = readonly [x0: number, y0: number, x1: number, y1: number];

function boxOf(points: readonly Point2[]): Box {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
  }
  return [x0, y0, x1, y1];
}

const boxesApart = (a: Box, b: Box): number =>
  Math.hypot(Math.max(0, a[0] - b[2], b[0] - a[2]), Math.max(0, a[1] - b[3], b[1] - a[3]));
