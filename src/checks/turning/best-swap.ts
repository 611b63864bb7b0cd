import type { Mold } from '../../mold/index.ts';
import { type PointMass, sizeOf, staticUnbalance } from '../../physics/index.ts';
import { type Densities, metalInCavity } from '../from-mold/index.ts';

/** A placement as it can change places with another: each keeps how it lies toward the axis. */
export interface Swappable {
  readonly id: string;
  readonly master: string;
  readonly x: number;
  readonly y: number;
  readonly mass: PointMass;
}

export const swappables = (mold: Mold, densities: Densities): Swappable[] =>
  mold.placements.map((one) => ({
    id: one.id,
    master: one.master,
    x: one.x,
    y: one.y,
    mass: metalInCavity(mold, one, densities),
  }));

export interface Swap {
  readonly a: string;
  readonly b: string;
  /** Static unbalance that is left, g.mm. */
  readonly size: number;
}

/** The two placements of different masters whose change of places leaves the least static unbalance. */
export function bestSwap(placed: readonly Swappable[], masses: readonly PointMass[]): Swap | undefined {
  const [x, y] = staticUnbalance(masses);
  let best: Swap | undefined;
  for (let i = 0; i < placed.length; i++) {
    for (let k = i + 1; k < placed.length; k++) {
      const [a, b] = [placed[i], placed[k]];
      if (a.master === b.master) continue;
      const before = staticUnbalance([a.mass, b.mass]);
      const after = staticUnbalance([movedTo(a, b), movedTo(b, a)]);
      const size = sizeOf([x - before[0] + after[0], y - before[1] + after[1]]);
      if (!best || size < best.size) best = { a: a.id, b: b.id, size };
    }
  }
  return best;
}

/** The mass of one at the place of the other, turned with it about the axis. */
function movedTo({ x, y, mass }: Swappable, there: Swappable): PointMass {
  const turn = Math.atan2(there.y, there.x) - Math.atan2(y, x);
  const [dx, dy] = [mass.x - x, mass.y - y];
  return {
    ...mass,
    x: there.x + dx * Math.cos(turn) - dy * Math.sin(turn),
    y: there.y + dx * Math.sin(turn) + dy * Math.cos(turn),
  };
}
