import { translation } from '../../geometry/index.ts';
import type { Mold, Placement } from '../../mold/index.ts';
import type { Dragged } from './messages.ts';

/** So often is something moved to warm up: an engine compiles well what it has run some times. */
const moves = 12;
/** So often each master, at least. */
const leastOfEach = 3;

/**
 * Poses in which one of each master comes nearer and nearer to its neighbor, from far enough that it has a wall worth
 * watching until their circles nearly touch. Worked through before a hand does the like, so that its first moves are not
 * the slow ones. None where there is one placement alone.
 */
export function warmUpMoves({ masters, placements, limits }: Mold): Dragged[] {
  const count = Math.max(leastOfEach, Math.ceil(moves / Math.max(1, masters.length)));
  return masters.flatMap(({ id }) => {
    const one = placements.find(({ master }) => master === id);
    return one ? approach(one, placements, 2 * limits.wall, count) : [];
  });
}

function approach(one: Placement, placements: readonly Placement[], from: number, count: number): Dragged[] {
  const apart = ({ x, y }: Placement): number => Math.hypot(x - one.x, y - one.y);
  const gapTo = (other: Placement): number => apart(other) - one.reach - other.reach;
  const others = placements.filter((other) => apart(other) > 0);
  if (others.length === 0) return [];
  const near = others.reduce((best, other) => (gapTo(other) < gapTo(best) ? other : best));
  return Array.from({ length: count }, (_, k) => {
    const way = (gapTo(near) - from * (1 - k / count)) / apart(near);
    const matrix = translation((near.x - one.x) * way, (near.y - one.y) * way, 0);
    return { kind: 'placement', id: one.id, matrix };
  });
}
