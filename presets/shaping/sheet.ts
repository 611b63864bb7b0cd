import type { Point2 } from './curve.ts';
import type { Shape } from './shapes.ts';

export interface SheetSpec {
  /** Closed outline seen from above, mm, either way round, not repeating its first point. */
  readonly outline: readonly Point2[];
  /** Height of the sheet's middle, mm. */
  readonly middle: (x: number, y: number) => number;
  /** Half its thickness, mm; its edge is rounded with that radius. */
  readonly half: number;
}

const step = 0.05;

/** A leaf-like sheet: an outline laid over a curved surface, equally thick all over, with a round edge. */
export function sheet({ outline, middle, half }: SheetSpec): Shape {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const heights = outline.map(([x, y]) => middle(x, y));
  let [columnX, columnY] = [Number.NaN, Number.NaN];
  let [inward, height, lean] = [0, 0, 1];
  // Points come column by column; what depends on x and y alone is worked out once for each.
  const enterColumn = (x: number, y: number): void => {
    [columnX, columnY] = [x, y];
    inward = Math.max(0, signedDistance(outline, x, y) + half);
    height = middle(x, y);
    const dx = (middle(x + step, y) - middle(x - step, y)) / (2 * step);
    const dy = (middle(x, y + step) - middle(x, y - step)) / (2 * step);
    lean = 1 / Math.sqrt(1 + dx * dx + dy * dy);
  };
  const reach = 4 * half;
  return {
    min: [Math.min(...xs) - half, Math.min(...ys) - half, Math.min(...heights) - reach],
    max: [Math.max(...xs) + half, Math.max(...ys) + half, Math.max(...heights, middle(0, 0)) + reach],
    distance: (x, y, z) => {
      if (x !== columnX || y !== columnY) enterColumn(x, y);
      return Math.hypot(inward, (z - height) * lean) - half;
    },
  };
}

/** Distance to a closed outline in the plane, negative inside (even-odd). */
export function signedDistance(outline: readonly Point2[], x: number, y: number): number {
  let nearest = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[j];
    const [bx, by] = outline[i];
    const [dx, dy] = [bx - ax, by - ay];
    const length2 = dx * dx + dy * dy;
    const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length2)) : 0;
    nearest = Math.min(nearest, (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2);
    if (ay > y !== by > y && x < ax + ((y - ay) / dy) * dx) inside = !inside;
  }
  return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest);
}
