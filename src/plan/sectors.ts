import type { Plan } from './plan.ts';
import { resolveRadius } from './resolve-radius.ts';
import type { PlaceAngle } from './sections/placements.ts';

/** The disc and how it is divided. */
export type Divided = Pick<Plan, 'disc' | 'sectors'>;

/** How many of a length find room round a circle, both in mm; at least one. */
export const findingRoom = (radius: number, spacing: number): number =>
  Math.max(1, Math.floor((2 * Math.PI * Math.max(0, radius)) / spacing + 1e-9));

/** Sectors of the disc, at least one; one where the plan does not divide it. */
export function sectorCount({ sectors, disc }: Divided): number {
  if (sectors?.spacing === undefined || sectors.radius === undefined) return sectors?.count ?? 1;
  return findingRoom(resolveRadius(sectors.radius, disc.diameter / 2), sectors.spacing);
}

/** An angle in rad; of one by rule the nearest of the directions that divide the disc, a half going onward. */
export function resolveAngle(angle: PlaceAngle, plan: Divided): number {
  if (typeof angle === 'number') return angle;
  const step = (2 * Math.PI) / (angle.perSector * sectorCount(plan));
  return Math.round(angle.nearRad / step) * step;
}
