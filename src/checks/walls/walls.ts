import { type Check, check, type Mold } from '../../mold/index.ts';
import { everyProcess, floorOf } from '../from-mold/index.ts';
import { type Cavity, cavityOf, measureWall, searchFactor, type WallKind } from './measure-wall.ts';
import { distanceAtMost, searchBoundsOf, worthMeasuring } from './search-bounds.ts';

interface PairInput {
  readonly a: Cavity;
  readonly b: Cavity;
  readonly kind: WallKind;
}

/**
 * The wall between every two neighboring cavities: true mesh distance, with both places. Neighbors are all within
 * twice the limit, and of each cavity the nearest however far it is.
 */
export const wallsBetweenCavities: Check = check<PairInput>({
  id: 'walls',
  title: 'Walls between cavities',
  follows: true,
  processes: everyProcess,
  units: (mold) => {
    const { placements } = mold;
    const kind = kindOf(mold);
    const where = placements.map((placement) => searchBoundsOf(mold, placement));
    const wanted = new Set<number>();
    for (const [i, one] of where.entries()) {
      // To itself it keeps no wall.
      const gaps = placements.map(({ x, y, reach }, k) =>
        k === i ? Number.POSITIVE_INFINITY : one.gapTo(x, y, reach),
      );
      for (const k of worthMeasuring(gaps, searchFactor * mold.limits.wall, (other) =>
        distanceAtMost(one, where[other]),
      )) {
        if (k !== i) wanted.add(Math.min(i, k) * placements.length + Math.max(i, k));
      }
    }
    return [...wanted]
      .sort((p, q) => p - q)
      .map((pair) => {
        const a = placements[Math.floor(pair / placements.length)];
        const b = placements[pair % placements.length];
        return {
          subject: a.id,
          about: [a.id, b.id],
          input: { a: cavityOf(mold, a), b: cavityOf(mold, b), kind },
        };
      });
  },
  run: ({ a, b, kind }, tools) => measureWall(a, b, kind, tools),
});

function kindOf(mold: Mold): WallKind {
  const floor = floorOf(mold);
  return {
    limit: mold.limits.wall,
    name: 'walls.least',
    code: 'walls.thin',
    broken: 'walls.broken',
    ...(floor && { floor }),
  };
}
