import { translation } from '../../kernel/index.ts';
import type { Mold, Placement } from '../../mold/index.ts';
import type { Held } from './messages.ts';

/** So often is something moved in practice: an engine compiles well what it has run some times. */
const moves = 12;

/**
 * Poses in which a master comes nearer and nearer to its neighbor, from far enough that it has a wall worth watching
 * until their circles touch. Worked through before a hand does the like, so that its first moves are not the slow ones.
 * None where there is one placement alone.
 */
export function practiceMoves({ placements, limits }: Mold): Held[] {
  const [one, ...others] = placements;
  if (!one || others.length === 0) return [];
  const gapTo = ({ x, y, reach }: Placement): number => Math.hypot(x - one.x, y - one.y) - one.reach - reach;
  const near = others.reduce((best, other) => (gapTo(other) < gapTo(best) ? other : best));
  const apart = Math.hypot(near.x - one.x, near.y - one.y);
  if (apart === 0) return [];
  return Array.from({ length: moves }, (_, k) => {
    const gap = 2 * limits.wall * (1 - k / moves);
    const way = (gapTo(near) - gap) / apart;
    const matrix = translation((near.x - one.x) * way, (near.y - one.y) * way, 0);
    return { kind: 'placement', id: one.id, matrix };
  });
}
