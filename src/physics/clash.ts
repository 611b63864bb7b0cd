/** A point of an outline: distance from the axis and height over the plane it stands on, mm. */
type OutlinePoint = readonly [r: number, z: number];

type Point = readonly [x: number, y: number];

/** A body standing upright on a plane, or a hollow of that shape in it: round, or with six sides. mm. */
export interface Standing {
  readonly x: number;
  readonly y: number;
  /** From its edge on the plane to its top on the axis, of a hexagon at its flats: r never grows, z never falls. */
  readonly outline: readonly OutlinePoint[];
  /** Of a hexagon the direction of one of its corners, rad; left out, it is round. */
  readonly cornerRad?: number;
}

/** Directions looked at where more than one hollow is near; with one alone the worst directions are known. */
const directions = 72;
/** Just beyond an edge, mm: a wall is as high as its top on the edge, and nothing behind it. */
const beyond = 1e-7;
/** Places this much past an edge, mm, are on it: what is left of adding and taking away again. */
const rounding = 1e-9;

const sixth = Math.PI / 3;
/** Directions of a hexagon's corners, or `from` half way between them, of its flats. */
const six = (from: number): number[] => Array.from({ length: 6 }, (_, k) => from + k * sixth);
const unit = (angle: number): Point => [Math.cos(angle), Math.sin(angle)];

/** Directions square to a hexagon's flats; none of a round body. */
const flatsOf = ({ cornerRad }: Standing): Point[] =>
  cornerRad === undefined ? [] : six(cornerRad + sixth / 2).map(unit);

/** Distance from the axis as the outline counts it: to the circle or hexagon through the place (from the axis). */
function ringOf(flats: readonly Point[], [x, y]: Point): number {
  return flats.length === 0 ? Math.hypot(x, y) : Math.max(...flats.map(([nx, ny]) => nx * x + ny * y));
}

/** Height of the body at a distance from its axis: 0 beside it, the top of the wall on an upright wall. */
function heightOf({ outline }: Standing, r: number): number {
  for (let i = outline.length - 1; i >= 0; i--) {
    const [outer, low] = outline[i];
    if (r > outer) continue;
    const inner = outline[i + 1];
    return inner === undefined ? low : low + ((outer - r) / (outer - inner[0])) * (inner[1] - low);
  }
  return 0;
}

/** How far along a direction, from a place (from the hollow's axis), its circle or flats of radius r are met. */
function* meets(flats: readonly Point[], [x, y]: Point, [ux, uy]: Point, r: number): Generator<number> {
  for (const [nx, ny] of flats) {
    const steep = nx * ux + ny * uy;
    if (steep > rounding) yield (r - nx * x - ny * y) / steep;
  }
  if (flats.length > 0) return;
  const along = x * ux + y * uy;
  const square = along * along - x * x - y * y + r * r;
  if (square >= 0) yield Math.sqrt(square) - along;
}

interface Near {
  readonly hollow: Standing;
  readonly flats: readonly Point[];
  /** Of the head's axis from the hollow's. */
  readonly off: Point;
}

/** Directions from the head's axis in which it may stand out of a hollow the most: where its own height is the same. */
function worstWays(head: Standing, near: readonly Near[]): number[] {
  const corners = head.cornerRad === undefined ? [] : six(head.cornerRad);
  const ways = near.flatMap(({ hollow, off: [x, y] }) =>
    hollow.cornerRad === undefined ? [Math.atan2(y, x)] : six(hollow.cornerRad + sixth / 2),
  );
  const round = corners.length === 0 ? ways : [];
  const all =
    near.length > 1 ? Array.from({ length: directions }, (_, k) => (2 * Math.PI * k) / directions) : [];
  return [...corners, ...round, ...all, 0];
}

/**
 * How deep a head reaches into a plate that comes down on it, mm: the greatest height of what both fill, which is by
 * how much the plate would have to be raised to be clear. The plate's face lies `lift` mm over the plane the head
 * stands on and has hollows open to it. 0 where they are clear of one another.
 *
 * Over every place (x, y) of the head: head(x, y) - lift - hollow(x, y). Where the head is as high, on a ring of its
 * own, the hollow's ring is convex in (x, y): farthest out in the direction away from a round hollow's axis, square to a
 * hexagon's flats, or at the head's own corners. In each of these the greatest lies where one of the two outlines has
 * a corner: exact for the outlines as given. Where hollows meet within one head, directions are also looked at every 5
 * degrees.
 */
export function clashDepth(head: Standing, hollows: readonly Standing[], lift: number): number {
  const own = flatsOf(head);
  const reach = head.outline[0][0];
  const wide = (one: Standing): number =>
    one.outline[0][0] * (one.cornerRad === undefined ? 1 : 2 / Math.sqrt(3));
  const near = hollows.flatMap((hollow): Near[] => {
    const off: Point = [head.x - hollow.x, head.y - hollow.y];
    return Math.hypot(...off) < wide(head) + wide(hollow) ? [{ hollow, flats: flatsOf(hollow), off }] : [];
  });
  let deepest = 0;
  for (const way of worstWays(head, near)) {
    const [ux, uy] = unit(way);
    const share = ringOf(own, [ux, uy]);
    const corners = [
      ...head.outline.map(([r]) => r / share),
      ...near.flatMap(({ hollow, flats, off }) =>
        hollow.outline.flatMap(([r]) => [...meets(flats, off, [ux, uy], r)]),
      ),
    ];
    for (const t of corners.flatMap((one) => [one, one + beyond])) {
      if (t < 0 || t * share > reach + rounding) continue;
      const over = heightOf(head, t * share - rounding) - lift;
      if (over <= deepest) continue;
      const roofs = near.map(({ hollow, flats, off: [x, y] }) =>
        heightOf(hollow, ringOf(flats, [x + t * ux, y + t * uy]) - rounding),
      );
      deepest = Math.max(deepest, over - Math.max(0, ...roofs));
    }
  }
  return deepest < beyond ? 0 : deepest;
}
