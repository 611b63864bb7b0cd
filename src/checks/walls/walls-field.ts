import {
  boundsOf,
  identity,
  inverse,
  type Matrix4,
  movePoint,
  type TriangleMesh,
} from '../../geometry/index.ts';
import { treeOf } from '../../mesh/index.ts';
import { type Check, check, type Disc, type Mold, masterOf, type Placement } from '../../mold/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { everyFixture } from './fixtures.ts';
import { type Cavity, cavityOf, meshOf, type Shape } from './measure-wall.ts';

interface Placed {
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
}

interface FieldInput {
  readonly cavity: Cavity;
  /** What may be the nearest thing to some vertex. */
  readonly cavities: readonly Placed[];
  readonly fixtures: readonly Shape[];
  readonly disc: Omit<Disc, 'label'>;
}

/**
 * Thickness of the wall at every vertex of each cavity, mm: true distance to the nearest other thing (other cavities,
 * bosses, well, pouring hole, channels of others, tabs, notches, outer faces, rim and its chamfer), 0 where it lies
 * within one. One field for each placement, a value for each vertex of its master's mesh in the order of that mesh.
 * A vertex is never farther from the nearer outer face than half the thickness of both halves, so that only what is
 * as near as that is looked at, and a field stays true when anything farther off is moved.
 */
export const wallsField: Check = check<FieldInput>({
  id: 'walls-field',
  title: 'Thickness of the walls',
  follows: false,
  processes: everyProcess,
  units: (mold) => {
    const { label: _, ...disc } = mold.disc;
    const known = everyFixture(mold).map((fixture) => ({ fixture, shape: once(fixture.shape) }));
    return mold.placements.map((placement) => {
      const { id, x, y, reach } = placement;
      const searchRadius = deepest(placement, mold);
      const near = mold.placements.filter(
        (other) =>
          other.id !== id && Math.hypot(x - other.x, y - other.y) - reach - other.reach < searchRadius,
      );
      const fixtures = known
        .filter(({ fixture }) => fixture.own !== id && fixture.gapTo(x, y, reach) < searchRadius)
        .map(({ shape }) => shape());
      const cavities = near.map((other) => ({
        mesh: masterOf(mold, other).mesh,
        matrix: other.matrix,
      }));
      return {
        subject: id,
        about: [id],
        input: { cavity: cavityOf(mold, placement), cavities, fixtures, disc },
      };
    });
  },
  run: ({ cavity, cavities, fixtures, disc }) => {
    const placed = fixtures.map((shape) => ({ mesh: meshOf(shape), matrix: identity }));
    const values = thickness(cavity, [...cavities, ...placed], disc);
    return { fields: [{ name: 'walls.thickness', subject: cavity.id, unit: 'mm', values }] };
  },
});

/** Made when first asked for, so that many jobs share one. */
function once<T extends object>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** How far a point of the placement can be from the nearer outer face at most. */
function deepest({ lowest, highest }: Placement, { disc: { lower, upper } }: Mold): number {
  const middle = Math.min(highest, Math.max(lowest, (upper - lower) / 2));
  return Math.max(0, Math.min(middle + lower, upper - middle));
}

function thickness(cavity: Cavity, others: readonly Placed[], disc: FieldInput['disc']): Float32Array {
  const { positions } = cavity.mesh;
  const values = new Float32Array(positions.length / 3);
  const placed = new Float64Array(positions.length);
  for (let v = 0; v < values.length; v++) {
    const at = 3 * v;
    const [x, y, z] = movePoint(cavity.matrix, [positions[at], positions[at + 1], positions[at + 2]]);
    placed[at] = x;
    placed[at + 1] = y;
    placed[at + 2] = z;
    values[v] = toOutside(disc, x, y, z);
  }
  for (const { mesh, matrix } of others) nearer(values, placed, mesh, matrix);
  return values;
}

/** Depth under the surface of the disc: it is convex, so the nearest of its faces' planes and of its rim tells it. */
function toOutside(
  { radius, lower, upper, rimChamfer }: FieldInput['disc'],
  x: number,
  y: number,
  z: number,
) {
  const inward = radius - Math.hypot(x, y);
  const [down, up] = [z + lower, upper - z];
  const chamfer = (inward + Math.min(down, up) - rimChamfer) / Math.SQRT2;
  return Math.max(0, Math.min(inward, down, up, chamfer));
}

/** Lowers each value to the distance from a placed body, where that is less. */
function nearer(values: Float32Array, placed: Float64Array, mesh: TriangleMesh, matrix: Matrix4): void {
  const tree = treeOf(mesh);
  const toBody = inverse(matrix);
  const scale = Math.hypot(matrix[0], matrix[1], matrix[2]);
  const { min, max } = boundsOf(mesh.positions);
  // A distance changes by no more than the way from one vertex to the next: often that alone shows it is not less.
  let [lastX, lastY, lastZ, atLeast] = [0, 0, 0, Number.NEGATIVE_INFINITY];
  for (let v = 0; v < values.length; v++) {
    const [px, py, pz] = [placed[3 * v], placed[3 * v + 1], placed[3 * v + 2]];
    const x = toBody[0] * px + toBody[4] * py + toBody[8] * pz + toBody[12];
    const y = toBody[1] * px + toBody[5] * py + toBody[9] * pz + toBody[13];
    const z = toBody[2] * px + toBody[6] * py + toBody[10] * pz + toBody[14];
    const wall = values[v] / scale;
    const [bx, by, bz] = [
      Math.max(0, min[0] - x, x - max[0]),
      Math.max(0, min[1] - y, y - max[1]),
      Math.max(0, min[2] - z, z - max[2]),
    ];
    const box2 = bx * bx + by * by + bz * bz;
    if (box2 >= wall * wall) continue;
    const way = Math.sqrt((x - lastX) ** 2 + (y - lastY) ** 2 + (z - lastZ) ** 2);
    if (atLeast - way >= wall) continue;
    const found = box2 === 0 && tree.windingAt(x, y, z) > 0.5 ? 0 : tree.distanceTo(x, y, z, wall);
    [lastX, lastY, lastZ, atLeast] = [x, y, z, found];
    if (found < wall) values[v] = found * scale;
  }
}
