import { finding, makeFigure } from '../../findings/index.ts';
import { type Matrix4, movePoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { type Check, check, masterOf } from '../../mold/index.ts';
import { largestMismatch, type Pin } from '../../physics/index.ts';
import { everyProcess } from '../from-mold/index.ts';
import { holds, pinsOf, source } from './pins.ts';

interface MismatchInput {
  readonly id: string;
  readonly mesh: TriangleMesh;
  readonly matrix: Matrix4;
  readonly pins: readonly Pin[];
  readonly limit: number;
  readonly estimated: boolean;
}

/** Directions in which a cavity's outermost points are looked at; mismatch is convex, so it is greatest there. */
const directions = 24;

/** What that play does at each cavity: the largest step it can leave along the parting line. */
export const mismatch: Check = check<MismatchInput>({
  id: 'mismatch',
  title: 'Mismatch at the cavities',
  follows: false,
  processes: everyProcess,
  units: (mold) => {
    const pins = holds(mold) && pinsOf(mold);
    if (!pins) return [];
    return mold.placements.map(({ id, master, matrix, estimated }) => ({
      subject: id,
      about: [id],
      input: {
        id,
        mesh: masterOf(mold, { id, master }).mesh,
        matrix,
        pins,
        limit: mold.limits.mismatch,
        estimated: estimated || mold.process !== 'rigid',
      },
    }));
  },
  run: ({ id, mesh, matrix, pins, limit, estimated }) => {
    const points = outermost(mesh, matrix);
    const found = largestMismatch(
      pins,
      points.map(([x, y]) => [x, y]),
    );
    if (!found) return {};
    const most = found.distance;
    const place = points[found.point];
    const figure = { subject: id, value: most, source, estimated, places: [place] };
    const figures = [makeFigure('registration.mismatch', figure)];
    if (most <= limit) return { figures };
    const one = finding('registration.mismatch', { subject: id, place, values: { measured: most, limit } });
    return { findings: [one], figures };
  },
});

/** The vertices farthest out, seen from above, in evenly spread directions (mold frame). */
function outermost({ positions }: TriangleMesh, matrix: Matrix4): Vec3[] {
  const ways = Array.from({ length: directions }, (_, k) => {
    const angle = (2 * Math.PI * k) / directions;
    return { x: Math.cos(angle), y: Math.sin(angle), most: Number.NEGATIVE_INFINITY, vertex: 0 };
  });
  const [m0, m1, m4, m5, m8, m9] = [0, 1, 4, 5, 8, 9].map((at) => matrix[at]);
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i], positions[i + 1], positions[i + 2]];
    const [u, v] = [m0 * x + m4 * y + m8 * z, m1 * x + m5 * y + m9 * z];
    for (const way of ways) {
      const out = way.x * u + way.y * v;
      if (out <= way.most) continue;
      way.most = out;
      way.vertex = i;
    }
  }
  const vertices = [...new Set(ways.map(({ vertex }) => vertex))];
  return vertices.map((i) => movePoint(matrix, [positions[i], positions[i + 1], positions[i + 2]]));
}
