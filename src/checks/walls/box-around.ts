import type { Point2 } from '../../geometry/index.ts';

/** The upright rectangle round points on the parting plane. */
export interface BoxAround {
  readonly least: Point2;
  readonly most: Point2;
}

export function boxAround(points: readonly Point2[]): BoxAround {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    x1 = Math.min(x1, x);
    y1 = Math.min(y1, y);
    x2 = Math.max(x2, x);
    y2 = Math.max(y2, y);
  }
  return { least: [x1, y1], most: [x2, y2] };
}

/** How far two boxes are apart, along x or y, whichever is more; under 0 where they overlap. */
export const boxesApart = (a: BoxAround, b: BoxAround): number =>
  Math.max(a.least[0] - b.most[0], b.least[0] - a.most[0], a.least[1] - b.most[1], b.least[1] - a.most[1]);
