import {
  type Matrix4,
  memoPerObject,
  moveMesh,
  type Point2,
  type TriangleMesh,
} from '../../geometry/index.ts';
import { looseFootprint, looseVolume } from '../loose.ts';
import { masterOf } from '../master-of.ts';
import { type Memoize, makeAlways } from '../memoize.ts';
import type { Mold, Placement } from '../mold.ts';
import { cropSurface, type PartingSurface } from '../parting-surface.ts';

/** How far (mm, besides its own height) a build-up may reach past its master. */
const margin = 2;

/** A master's mesh and where it stands. */
interface PlacedMesh {
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
}

/** What bounds the build-up of one placement; `number` is its place in the mold's list of supports, from 1. */
export interface BuildUpSpace {
  readonly id: string;
  readonly number: number;
  readonly surface: PartingSurface;
  readonly own: PlacedMesh;
  readonly others: readonly PlacedMesh[];
  readonly clearance: number;
}

/**
 * The spaces of all build-ups wished; none where the parting surface is the plane. Found once for a mold, which is never
 * changed after it is made: several works look at them, and each crop would be a new array to be hashed.
 */
export const buildUpSpaces = memoPerObject((mold: Mold): readonly BuildUpSpace[] => {
  if (mold.parting.flat) return [];
  return mold.supports.flatMap(({ placement: id, clearance }, index) => {
    const placement = mold.placements.find((one) => one.id === id);
    return placement ? [{ id, number: index + 1, clearance, ...around(mold, placement) }] : [];
  });
});

function around(mold: Mold, placement: Placement): Pick<BuildUpSpace, 'surface' | 'own' | 'others'> {
  const { id, x, y, reach } = placement;
  // The surface stays between the masters' lowest and highest points, so a build-up is no taller.
  const tallest = Math.max(0, ...mold.placements.map(({ lowest, highest }) => Math.max(-lowest, highest)));
  const radius = reach + 2 * tallest + margin;
  const near = mold.placements.filter(
    (other) => other.id !== id && Math.hypot(other.x - x, other.y - y) < radius + other.reach,
  );
  return {
    surface: cropSurface(mold.parting, { min: [x - radius, y - radius], max: [x + radius, y + radius] }),
    own: placed(mold, placement),
    others: near.map((other) => placed(mold, other)),
  };
}

const placed = (mold: Mold, placement: Placement): PlacedMesh => ({
  mesh: masterOf(mold, placement).mesh,
  matrix: placement.matrix,
});

/** Points all over the ground the build-up takes, seen from above, nowhere farther apart than fifths of a mm. */
export function buildUpFootprint(
  { surface, own, others, clearance }: Omit<BuildUpSpace, 'id' | 'number'>,
  memoize: Memoize = makeAlways,
): readonly Point2[] {
  return memoize('build-up footprint', { surface, own, others, clearance }, () => {
    const [first, ...rest] = [own, ...others].map(({ mesh, matrix }) => moveMesh(mesh, matrix));
    return ([1, -1] as const).flatMap((side) =>
      looseFootprint({ side, surface, own: first, others: rest, clearance }),
    );
  });
}

/** Volume (mm3) of the build-up that fills a space, under the master and over it, the smallest bits included. */
export function buildUpVolume(
  { surface, own, others, clearance }: Omit<BuildUpSpace, 'id' | 'number'>,
  memoize: Memoize = makeAlways,
): number {
  return memoize('build-up volume', { surface, own, others, clearance }, () => {
    const [first, ...rest] = [own, ...others].map(({ mesh, matrix }) => moveMesh(mesh, matrix));
    return ([1, -1] as const).reduce(
      (sum, side) => sum + looseVolume({ side, surface, own: first, others: rest, clearance }),
      0,
    );
  });
}
