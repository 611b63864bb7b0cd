import { type Figure, type FigureName, type Finding, finding, type ReportPart } from '../findings/index.ts';
import { type Matrix4, movePoint, type TriangleMesh, type Vec3 } from '../kernel/index.ts';
import { type Boss, type Check, cornerShare, type Mold, sidewaysGap, work } from '../mold/index.ts';
import { largestMismatch, largestTurn, type Pin } from '../physics/index.ts';
import { everyProcess, masterMesh } from './cover.ts';

const source =
  'largest |t + theta k x p| with |t + theta k x p_i| <= c_i for every boss; Drake, Dimensioning and Tolerancing Handbook, ch. 24';
const degrees = 180 / Math.PI;

/**
 * The bosses as pins with the way they may move: in rigid halves what their sockets leave, in rubber the flex the plan
 * gives. Undefined where the plan gives none.
 */
function pinsOf({ process, bosses, flex }: Mold): Pin[] | undefined {
  if (process === 'rigid') return bosses.map((boss) => ({ x: boss.x, y: boss.y, clearance: playOf(boss) }));
  return flex === undefined ? undefined : bosses.map(({ x, y }) => ({ x, y, clearance: flex }));
}

/** In its socket, and of a cap nut in its pocket as well, toward the corners of that. */
const playOf = (boss: Boss): number =>
  sidewaysGap(boss) + (boss.kind === 'cap nut' ? boss.clearance * cornerShare : 0);

/** Fewer than two bosses are the closing check's to report. */
const holds = ({ bosses }: Mold): boolean =>
  bosses.some(({ x, y }) => Math.hypot(x - bosses[0].x, y - bosses[0].y) > 0);

interface PlayInput {
  readonly pins: readonly Pin[] | null;
  readonly estimated: boolean;
}

/** How far one half can shift and turn on the other, closed. */
export const play: Check = work<PlayInput, ReportPart>({
  id: 'play',
  title: 'Play of the closed halves',
  scope: 'whole',
  processes: everyProcess,
  jobs: (mold) =>
    holds(mold)
      ? [{ subject: 'mold', input: { pins: pinsOf(mold) ?? null, estimated: mold.process !== 'rigid' } }]
      : [],
  run: ({ pins, estimated }) => {
    if (!pins) return { findings: [noFlex()] };
    const figure = (name: FigureName, value: number, unit: Figure['unit']): Figure => ({
      name,
      subject: 'mold',
      value,
      unit,
      source,
      estimated,
    });
    const shift = largestMismatch(pins, [[0, 0]])?.distance ?? 0;
    return {
      figures: [
        figure('registration.shift', shift, 'mm'),
        figure('registration.turn', largestTurn(pins) * degrees, 'deg'),
      ],
    };
  },
});

const noFlex = (): Finding => finding('registration.no-flex', { subject: 'mold' });

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
export const mismatch: Check = work<MismatchInput, ReportPart>({
  id: 'mismatch',
  title: 'Mismatch at the cavities',
  scope: 'placement',
  processes: everyProcess,
  jobs: (mold) => {
    const pins = holds(mold) && pinsOf(mold);
    if (!pins) return [];
    return mold.placements.map(({ id, master, matrix, estimated }) => ({
      subject: id,
      input: {
        id,
        mesh: masterMesh(mold, master),
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
    const figures: Figure[] = [
      {
        name: 'registration.mismatch',
        subject: id,
        value: most,
        unit: 'mm',
        source,
        estimated,
        places: [place],
      },
    ];
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
