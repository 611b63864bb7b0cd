import { compose } from '../../geometry/index.ts';
import type { Mold } from '../../mold/index.ts';
import type { Dragged } from './messages.ts';

/** The mold with one thing where it is dragged to. Its gates, vents and build-up stay where they were. */
export function withDragged(mold: Mold, { id, kind, matrix }: Dragged): Mold {
  const [c, s, tx, ty] = [matrix[0], matrix[1], matrix[12], matrix[13]];
  const turnRad = Math.atan2(s, c);
  const moved = (x: number, y: number) => ({ x: c * x - s * y + tx, y: s * x + c * y + ty });
  switch (kind) {
    case 'placement':
      return {
        ...mold,
        placements: mold.placements.map((one) => {
          if (one.id !== id) return one;
          const [lowest, highest] = [one.lowest + matrix[14], one.highest + matrix[14]];
          return { ...one, ...moved(one.x, one.y), lowest, highest, matrix: compose(matrix, one.matrix) };
        }),
      };
    case 'boss':
      return {
        ...mold,
        bosses: mold.bosses.map((one) =>
          one.id === id ? { ...one, ...moved(one.x, one.y), turnRad: one.turnRad + turnRad } : one,
        ),
      };
    case 'tab':
      return { ...mold, tabs: mold.tabs.map((one) => rotated(one, id, turnRad)) };
    case 'notch':
      return { ...mold, notches: mold.notches.map((one) => rotated(one, id, turnRad)) };
  }
}

const rotated = <T extends { readonly id: string; readonly angleRad: number }>(
  one: T,
  id: string,
  by: number,
): T => (one.id === id ? { ...one, angleRad: one.angleRad + by } : one);
