import { movePoint } from '../../geometry/index.ts';
import { kindOfRole, type SolidRole } from '../../kinds/index.ts';
import { bossSpace, type Mold, masterOf, notchCorners, tabCorners } from '../../mold/index.ts';

/** What a split line keeps away from: corners of a convex outline round it, seen from above, mold frame, mm. */
export interface Obstacle {
  readonly id: string;
  /** A text: to cut through it is bad, to cut through anything else is worse. */
  readonly text?: true;
  readonly corners: readonly (readonly [number, number])[];
}

const directions = 64;

/** Bosses, tabs and notches of a mold, and its placements where a solid of that role shows them. */
export function obstaclesOf(mold: Mold, role: SolidRole): Obstacle[] {
  const { placements, bosses, tabs, notches, disc, process } = mold;
  return [
    ...(kindOfRole(role).showsMasters ? placements : []).map((placement) => {
      const { positions } = masterOf(mold, placement).mesh;
      const points: [number, number][] = [];
      for (let i = 0; i < positions.length; i += 3) {
        const [x, y] = movePoint(placement.matrix, [positions[i], positions[i + 1], positions[i + 2]]);
        points.push([x, y]);
      }
      return { id: placement.id, corners: extremes(points) };
    }),
    ...bosses.map((boss) => circle(boss.id, boss.x, boss.y, bossSpace(boss, process).reach)),
    ...tabs.map((tab) => ({ id: tab.id, corners: tabCorners(tab, disc.radius) })),
    ...notches
      .map((notch) => ({ id: notch.id, corners: notchCorners(notch, disc.radius) }))
      .filter(({ corners }) => corners.length > 0),
  ];
}

const unit = (k: number): [number, number] => {
  const angle = (2 * Math.PI * k) / directions;
  return [Math.cos(angle), Math.sin(angle)];
};

const circle = (id: string, x: number, y: number, radius: number): Obstacle => ({
  id,
  corners: Array.from({ length: directions }, (_, k) => {
    const [c, s] = unit(k);
    return [x + radius * c, y + radius * s] as const;
  }),
});

/** The farthest points in 64 directions: the outline to within 0.12 % of its width. */
export function extremes(points: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  return Array.from({ length: directions }, (_, k) => {
    const [c, s] = unit(k);
    let best = points[0];
    let far = Number.NEGATIVE_INFINITY;
    for (const point of points) {
      const along = point[0] * c + point[1] * s;
      if (along > far) {
        far = along;
        best = point;
      }
    }
    return best;
  });
}

/** Distance of a ray from the axis to an obstacle, mm; negative by how far it runs inside. */
export function rayClearance({ corners }: Obstacle, angleRad: number): number {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const ahead = corners.filter(([x, y]) => x * c + y * s > 0);
  if (ahead.length === 0) return Math.min(...corners.map(([x, y]) => Math.hypot(x, y)));
  const across = ahead.map(([x, y]) => -x * s + y * c);
  return Math.max(Math.min(...across), -Math.max(...across));
}

type Point = readonly [number, number];

const sidesOf = (corners: readonly Point[]): (readonly [Point, Point])[] =>
  corners.map((at, k) => [at, corners[(k + 1) % corners.length]]);

/** On which side of a line through two points a third lies: positive on the left. */
const leftOf = ([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number =>
  (bx - ax) * (y - ay) - (by - ay) * (x - ax);

const isInside = (corners: readonly Point[], at: Point): boolean =>
  sidesOf(corners).every(([a, b]) => leftOf(a, b, at) >= 0);

/** Distance of a point to the outline of an obstacle; negative inside it. */
export function pointClearance({ corners }: Obstacle, x: number, y: number): number {
  const near = Math.min(...sidesOf(corners).map(([a, b]) => distanceToSide(a, b, [x, y])));
  return isInside(corners, [x, y]) ? -near : near;
}

function distanceToSide([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square > 0 ? ((x - ax) * dx + (y - ay) * dy) / square : 0;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** Whether an outline reaches into a (convex) obstacle: a corner of it lies inside, or their sides cross. */
export function reachesInto({ corners }: Obstacle, outline: readonly Point[]): boolean {
  if (outline.some((at) => isInside(corners, at))) return true;
  return sidesOf(outline).some(([a, b]) =>
    sidesOf(corners).some(
      ([c, d]) => leftOf(a, b, c) * leftOf(a, b, d) < 0 && leftOf(c, d, a) * leftOf(c, d, b) < 0,
    ),
  );
}
