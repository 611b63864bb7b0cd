import { type Matrix4, movedAlong, movePoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type Check, check, cropSurface, heightAt, masterOf, type PartingSurface } from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { coverOf, type Reaching } from './cover-of.ts';
import { type HalfThickness, halfThicknessOf } from './half-thickness.ts';

interface PlacedInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly surface: PartingSurface;
  readonly estimated: boolean;
  readonly halves: HalfThickness;
}

/**
 * Depth below and height above the parting surface of each master, where it is; and the cover it leaves to both outer
 * faces, which are flat, so that the true distance to them is along z.
 */
export const coverOfCavities: Check = check<PlacedInput>({
  id: 'cover',
  title: 'Cover over the cavities',
  follows: true,
  processes: everyProcess,
  units: (mold) =>
    mold.placements.map(({ id, master, matrix, estimated, x, y, reach }) => ({
      subject: id,
      about: [id],
      input: {
        id,
        mesh: masterOf(mold, { id, master }).mesh,
        matrix,
        surface: cropSurface(mold.parting, { min: [x - reach, y - reach], max: [x + reach, y + reach] }),
        estimated,
        halves: halfThicknessOf(mold),
      },
    })),
  run: ({ id, mesh, matrix, surface, estimated, halves }) =>
    coverOf({ id, estimated, ...extremes(mesh, matrix, surface) }, halves),
});

function extremes(
  { positions }: TriangleMesh,
  matrix: Matrix4,
  surface: PartingSurface,
): Omit<Reaching, 'id' | 'estimated'> {
  const [low, high] = [new Farthest(), new Farthest()];
  const [deep, tall] = [new Farthest(0), new Farthest(0)];
  for (let i = 0; i < positions.length; i += 3) {
    const [px, py, pz] = [positions[i], positions[i + 1], positions[i + 2]];
    const z = movedAlong(2, matrix, px, py, pz);
    low.take(-z, i);
    high.take(z, i);
    const over = surface.flat
      ? z
      : z - heightAt(surface, movedAlong(0, matrix, px, py, pz), movedAlong(1, matrix, px, py, pz));
    deep.take(-over, i);
    tall.take(over, i);
  }
  const placeOf = ({ at }: Farthest): Vec3 =>
    movePoint(matrix, [positions[at], positions[at + 1], positions[at + 2]]);
  const [lowest, highest] = [placeOf(low), placeOf(high)];
  return {
    lowest,
    highest,
    deepest: { reach: deep.reach, place: deep.reach > 0 ? placeOf(deep) : lowest },
    tallest: { reach: tall.reach, place: tall.reach > 0 ? placeOf(tall) : highest },
  };
}

/** The vertex that reaches farthest of those taken, the first of several. */
class Farthest {
  at = 0;
  constructor(public reach = Number.NEGATIVE_INFINITY) {}

  take(reach: number, vertex: number): void {
    if (!(reach > this.reach)) return;
    this.reach = reach;
    this.at = vertex;
  }
}
