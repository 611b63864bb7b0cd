/** A point of a turned body's outline: distance from its axis and height over the plane it stands on, mm. */
type OutlinePoint = readonly [r: number, z: number];

/** A turned body standing upright on a plane, or a hollow of that shape in it. mm. */
export interface Standing {
  readonly x: number;
  readonly y: number;
  /** From its edge on the plane to its top on the axis: r never grows, z never falls. */
  readonly outline: readonly OutlinePoint[];
}

/** Directions looked at where more than one hollow is near; with one alone the worst direction is known. */
const directions = 72;
/** Just beyond an edge, mm: a wall is as high as its top on the edge, and nothing behind it. */
const beyond = 1e-7;
/** Places this much past an edge, mm, are on it: what is left of adding and taking away again. */
const rounding = 1e-9;

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

/**
 * How deep a head reaches into a plate that comes down on it, mm: the greatest height of what both fill, which is by
 * how much the plate would have to be raised to be clear. The plate's face lies `lift` mm over the plane the head
 * stands on and has hollows open to it. 0 where they are clear of one another.
 *
 * Over every place (x, y) of the head: head(x, y) - lift - hollow(x, y). Both fall outward, so for one hollow the
 * greatest lies on the side of the head that faces away from the hollow's axis, at a corner of one of the two
 * outlines: exact for the outlines as given. Where hollows meet within one head, directions are looked at every 5
 * degrees.
 */
export function clashDepth(head: Standing, hollows: readonly Standing[], lift: number): number {
  const reach = head.outline[0][0];
  const near = hollows.flatMap((hollow) => {
    const [dx, dy] = [head.x - hollow.x, head.y - hollow.y];
    const apart = Math.hypot(dx, dy);
    return apart < reach + hollow.outline[0][0] ? [{ hollow, apart, away: Math.atan2(dy, dx) }] : [];
  });
  const ways = near.map(({ away }) => away);
  if (near.length > 1) for (let k = 0; k < directions; k++) ways.push((2 * Math.PI * k) / directions);
  const corners = [
    ...head.outline.map(([r]) => r),
    ...near.flatMap(({ hollow, apart }) => hollow.outline.map(([r]) => r - apart)),
  ];
  const radii = corners.flatMap((r) => [r, r + beyond]).filter((r) => r >= 0 && r <= reach);
  let deepest = 0;
  for (const r of radii) {
    const over = heightOf(head, r) - lift;
    if (over <= deepest) continue;
    let roof = Number.POSITIVE_INFINITY;
    for (const way of ways.length > 0 ? ways : [0]) {
      const [x, y] = [head.x + r * Math.cos(way), head.y + r * Math.sin(way)];
      const above = near.map(({ hollow }) =>
        heightOf(hollow, Math.hypot(x - hollow.x, y - hollow.y) - rounding),
      );
      roof = Math.min(roof, Math.max(0, ...above));
    }
    deepest = Math.max(deepest, over - roof);
  }
  return deepest < beyond ? 0 : deepest;
}
