import { type Matrix4, movePoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type Mold, masterOf, type Placement } from '../../mold/index.ts';

/** A placed mesh is known by about this many of its vertices where only a bound of its distance is asked for. */
const sampled = 200;

/** A thing in the disc, seen from above, by which to tell what can be near it without measuring. Lengths in mm. */
export interface SearchBounds {
  /** At least this far, seen from above, is its nearest point from that of another about (x, y) with this reach. */
  gapTo(x: number, y: number, reach: number): number;
  /** Some of its points: it is no farther from another thing than the nearest of these. */
  readonly points: readonly Vec3[];
}

export function searchBoundsOf(mold: Mold, { id, master, matrix, x, y, reach }: Placement): SearchBounds {
  return {
    gapTo: (u, v, other) => Math.hypot(x - u, y - v) - reach - other,
    points: someVertices(masterOf(mold, { id, master }).mesh, matrix),
  };
}

function someVertices({ positions }: TriangleMesh, matrix: Matrix4): Vec3[] {
  const step = 3 * Math.max(1, Math.floor(positions.length / 3 / sampled));
  const points: Vec3[] = [];
  for (let i = 0; i < positions.length; i += step) {
    points.push(movePoint(matrix, [positions[i], positions[i + 1], positions[i + 2]]));
  }
  return points;
}

/** No less than the distance of the two. */
export function distanceAtMost(a: SearchBounds, b: SearchBounds): number {
  let least = Number.POSITIVE_INFINITY;
  for (const p of a.points) {
    const [x, y, z] = p;
    for (const q of b.points) {
      const [dx, dy, dz] = [x - q[0], y - q[1], z - q[2]];
      const square = dx * dx + dy * dy + dz * dz;
      if (square < least) least = square;
    }
  }
  return Math.sqrt(least);
}

/**
 * Which of `gaps` (each no more than the distance it stands for) have to be measured so that everything within `searchRadius`
 * is, and the nearest of all as well, however far it is. `atMost` gives for one of them a bound its distance does not
 * exceed, and is asked from the smallest gap on for as long as that may matter.
 */
export function worthMeasuring(
  gaps: readonly number[],
  searchRadius: number,
  atMost: (index: number) => number,
): number[] {
  const order = gaps.map((_, index) => index).sort((a, b) => gaps[a] - gaps[b]);
  let bound = Number.POSITIVE_INFINITY;
  for (const index of order) {
    if (gaps[index] > bound) break;
    bound = Math.min(bound, atMost(index));
  }
  return order.filter((index) => gaps[index] <= Math.max(searchRadius, bound));
}
