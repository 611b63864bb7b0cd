import { movePoint } from '../../kernel/index.ts';
import type { Mold } from '../../mold/index.ts';
import { bossReach } from '../../mold/index.ts';
import { masterOf } from '../cavities.ts';

/** What a split line keeps away from: corners of a convex outline round it, seen from above, mold frame, mm. */
export interface Obstacle {
  readonly id: string;
  readonly corners: readonly (readonly [number, number])[];
}

const directions = 64;

/** Placements, bosses, tabs and notches of a mold. */
export function obstaclesOf({ placements, masters, bosses, tabs, notches, disc }: Mold): Obstacle[] {
  const atRim = (id: string, angleRad: number, radius: number, reach: number): Obstacle =>
    circle(id, radius * Math.cos(angleRad), radius * Math.sin(angleRad), reach);
  return [
    ...placements.map((placement) => {
      const { positions } = masterOf(masters, placement).mesh;
      const points: [number, number][] = [];
      for (let i = 0; i < positions.length; i += 3) {
        const [x, y] = movePoint(placement.matrix, [positions[i], positions[i + 1], positions[i + 2]]);
        points.push([x, y]);
      }
      return { id: placement.id, corners: extremes(points) };
    }),
    ...bosses.map((boss) => circle(boss.id, boss.x, boss.y, bossReach(boss))),
    ...tabs.map(({ id, angleRad, inset, length, width }) =>
      atRim(id, angleRad, disc.radius - inset - length / 2, Math.hypot(length, width) / 2),
    ),
    ...notches.map(({ id, angleRad, width }) => atRim(id, angleRad, disc.radius, width)),
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
function extremes(points: readonly [number, number][]): [number, number][] {
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

/** Distance of a point to the nearest corner of an obstacle; negative inside its outline. */
export function pointClearance({ corners }: Obstacle, x: number, y: number): number {
  const near = Math.min(...corners.map(([cx, cy]) => Math.hypot(cx - x, cy - y)));
  const inside = corners.every(([ax, ay], k) => {
    const [bx, by] = corners[(k + 1) % corners.length];
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0;
  });
  return inside ? -near : near;
}
