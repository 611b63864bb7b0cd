import type { Ground, Kind } from '../../src/arrange/problem.ts';
import { shapeOf } from '../../src/arrange/shape.ts';
import type { Point2 } from '../../src/geometry/index.ts';

/** A regular polygon round the circle of a radius. */
export const ngon = (radius: number, sides: number): Point2[] =>
  Array.from({ length: sides }, (_, k): Point2 => {
    const angle = (2 * Math.PI * k) / sides;
    const far = radius / Math.cos(Math.PI / sides);
    return [far * Math.cos(angle), far * Math.sin(angle)];
  });

/** A lopsided four-sided fin, its tip outward. */
export const fin = (long: number, wide: number): Point2[] => [
  [long, 0],
  [-long / 3, wide],
  [-long, 0],
  [-long / 2, -wide],
];

export const piece = (outline: readonly Point2[], margin = 25) => ({ shape: shapeOf(outline, margin) });

export const ground: Ground = { radius: 60, rim: 5, wall: 2, ample: 3, gateGap: 1.5, leanRad: 0.5 };

interface Wish {
  readonly count: number;
  readonly more?: number;
  readonly gate?: number;
  readonly vent?: number;
  readonly weight?: number;
  readonly margin?: number;
}

/** A kind whose gate opens at the end nearest to the axis at turn 0. */
export function kindOf(id: string, outline: readonly Point2[], wish: Wish): Kind {
  const inner = outline.reduce((a, b) => (b[0] < a[0] ? b : a));
  const { count, more = 0, gate, vent, weight = 1, margin } = wish;
  const mouth = gate && { entry: inner, within: [inner[0] + gate / 2, inner[1]] as Point2 };
  return {
    id,
    ...piece(outline, margin),
    scale: 1,
    count,
    more,
    worth: 1,
    weight,
    ...(gate && mouth && { gate: { width: gate, mouths: [mouth] } }),
    ...(vent !== undefined && { vent }),
  };
}
