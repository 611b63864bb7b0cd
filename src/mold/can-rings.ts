import { mediumTolerance } from '../tables/index.ts';
import type { Mold } from './mold.ts';

/** A turned plate or ring that lies in the can while the mold cures, mm. `inner` is 0 for a plate. */
export interface CanRing {
  readonly id: 'can-spacer' | 'centering-collar' | 'thickness-stop';
  readonly outer: number;
  readonly inner: number;
  readonly height: number;
}

/** A thinner ring bends, a thinner plate is left to shims. Common practice, mm. */
const leastWall = 3;
const leastSpacer = 1;

/**
 * What fills a can that is larger than its disc: a plate for the depth left over (or as thick as the plan's spacer),
 * a collar round the lower half that centers the disc, and on it a stop ring as high as the upper half, so that the
 * lid comes to rest exactly at the thickness of the disc. Diameters differ from can and disc by what both may be off
 * (ISO 2768-1, class m). Radii, not diameters. None without the can's measures.
 */
export function canRings({ process, disc, bench }: Pick<Mold, 'process' | 'disc' | 'bench'>): CanRing[] {
  const { diameter, depth, spacer } = bench.can ?? {};
  if (process !== 'rubber' || diameter === undefined) return [];
  const outer = diameter / 2 - mediumTolerance(diameter);
  const inner = disc.radius + mediumTolerance(2 * disc.radius) / 2;
  const filling = spacer ?? (depth === undefined ? 0 : depth - disc.lower - disc.upper);
  const plate: CanRing[] =
    filling >= leastSpacer ? [{ id: 'can-spacer', outer, inner: 0, height: filling }] : [];
  if (outer - inner < leastWall) return plate;
  return [
    ...plate,
    { id: 'centering-collar', outer, inner, height: disc.lower },
    { id: 'thickness-stop', outer, inner, height: disc.upper },
  ];
}
