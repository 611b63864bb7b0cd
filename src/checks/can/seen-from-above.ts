import { type Boss, bossReach, type Tab, tabCorners } from '../../mold/index.ts';

/** A boss or tab seen from above: a circle or the corners of a tab, mm. */
export type Thing =
  | { readonly id: string; readonly x: number; readonly y: number; readonly reach: number }
  | { readonly id: string; readonly corners: readonly (readonly [number, number])[] };

/** The circle round a boss. */
export const roundOf = (boss: Boss): Thing => ({ id: boss.id, x: boss.x, y: boss.y, reach: bossReach(boss) });

export const cornersOf = (tab: Tab, discRadius: number): Thing => ({
  id: tab.id,
  corners: tabCorners(tab, discRadius),
});

/** Least and greatest distance of a thing from the axis; 0 at least for what holds the axis, which no tab does. */
export function span(thing: Thing): { least: number; most: number } {
  if (!('corners' in thing)) {
    const middle = Math.hypot(thing.x, thing.y);
    return { least: middle - thing.reach, most: middle + thing.reach };
  }
  return {
    least: distanceTo(thing, 0, 0),
    most: Math.max(...thing.corners.map(([x, y]) => Math.hypot(x, y))),
  };
}

/** Distance of a point from the outline of a thing, negative inside. */
export function distanceTo(thing: Thing, x: number, y: number): number {
  if (!('corners' in thing)) return Math.hypot(x - thing.x, y - thing.y) - thing.reach;
  const { corners } = thing;
  const sides = corners.map((a, i) => sideDistance(a, corners[(i + 1) % corners.length], x, y));
  const nearest = Math.min(...sides.map(({ distance }) => distance));
  const inside = sides.every(({ left }) => left) || sides.every(({ left }) => !left);
  return inside ? -nearest : nearest;
}

type Corner = readonly [number, number];

function sideDistance([ax, ay]: Corner, [bx, by]: Corner, x: number, y: number) {
  const [dx, dy] = [bx - ax, by - ay];
  const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return {
    distance: Math.hypot(x - ax - along * dx, y - ay - along * dy),
    left: dx * (y - ay) - dy * (x - ax) > 0,
  };
}
