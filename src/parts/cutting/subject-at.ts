import type { Vec3 } from '../../geometry/index.ts';
import { bossSpace } from '../../mold/index.ts';
import type { HalvesInput } from '../halves/index.ts';

/** What lies this near beside a boss's room is its own: rounding, and what holes are cut wider, mm. */
const beside = 0.2;

/** What of a mold lies at a place, seen from above: a placement or a boss by its id, or neither. */
export interface SubjectAt {
  /** In the plan's order. */
  readonly ids: readonly string[];
  at(place: Vec3): string | undefined;
}

export function subjectAt({ placements, bosses, process }: HalvesInput): SubjectAt {
  const circles = [
    ...placements.map(({ id, x, y, reach }) => ({ id, x, y, reach })),
    ...bosses.map((boss) => ({
      id: boss.id,
      x: boss.x,
      y: boss.y,
      reach: bossSpace(boss, process).reach + beside,
    })),
  ];
  return {
    ids: circles.map(({ id }) => id),
    at: ([px, py]) => circles.find(({ x, y, reach }) => Math.hypot(x - px, y - py) <= reach)?.id,
  };
}
