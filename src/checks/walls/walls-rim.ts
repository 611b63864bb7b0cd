import { type Finding, finding, makeFigure } from '../../findings/index.ts';
import { type Matrix4, movedAlong, movePoint, type TriangleMesh, type Vec3 } from '../../geometry/index.ts';
import { bossSpace, type Check, check, masterOf } from '../../mold/index.ts';
import { everyProcess, floorOf, isUnder, type ProcessFloor } from '../from-mold/index.ts';

interface RimInput {
  readonly id: string;
  readonly radius: number;
  readonly limit: number;
  readonly floor?: ProcessFloor;
  readonly estimated: boolean;
  readonly body:
    | { readonly mesh: TriangleMesh; readonly matrix: Matrix4 }
    | { readonly x: number; readonly y: number; readonly reach: number };
}

/**
 * What is left between each cavity or boss and the rim: the disc's radius less the distance of the outermost point
 * from the axis. For a mesh that point is one of its vertices, so this is exact. Bosses count as the round through
 * their hexagon's corners.
 */
export const wallsToRim: Check = check<RimInput>({
  id: 'walls-rim',
  title: 'Walls to the rim',
  follows: true,
  processes: everyProcess,
  units: (mold) => {
    const { radius } = mold.disc;
    const floor = floorOf(mold);
    const cavities = mold.placements.map(({ id, master, matrix, estimated }) => ({
      subject: id,
      about: [id],
      input: {
        id,
        radius,
        limit: mold.limits.cavityToRim,
        ...(floor && { floor }),
        estimated,
        body: { mesh: masterOf(mold, { id, master }).mesh, matrix },
      },
    }));
    const bosses = mold.bosses.map((boss) => ({
      subject: boss.id,
      about: [boss.id],
      input: {
        id: boss.id,
        radius,
        limit: mold.limits.bossToRim,
        ...(floor && { floor }),
        estimated: false,
        body: { x: boss.x, y: boss.y, reach: bossSpace(boss, mold.process).reach },
      },
    }));
    return [...cavities, ...bosses];
  },
  run: ({ id, radius, limit, floor, estimated, body }) => {
    const outermost = 'mesh' in body ? farthestVertex(body.mesh, body.matrix) : farthestOfRound(body);
    const distance = radius - Math.hypot(outermost[0], outermost[1]);
    const source = 'outermost point against the radius of the disc';
    const places = [outermost, onRim(outermost, radius)];
    const figures = [makeFigure('walls.rim', { subject: id, value: distance, source, estimated, places })];
    if (distance >= Math.max(limit, floor?.least ?? 0)) return { figures };
    return { findings: [tooNear(id, outermost, distance, limit, floor)], figures };
  },
});

function tooNear(
  id: string,
  place: Vec3,
  distance: number,
  limit: number,
  floor: ProcessFloor | undefined,
): Finding {
  const details = { subject: id, place };
  if (distance <= 0)
    return finding('walls.rim-open', {
      ...details,
      values: { measured: distance, limit, beyond: -distance },
    });
  if (isUnder(distance, floor)) {
    const values = { which: 'rim', measured: distance, limit: floor.least, making: floor.process } as const;
    return finding('cover.under-process', { ...details, values });
  }
  return finding('walls.rim', { ...details, values: { measured: distance, limit } });
}

function farthestVertex({ positions }: TriangleMesh, matrix: Matrix4): Vec3 {
  let [most, at] = [-1, 0];
  for (let i = 0; i < positions.length; i += 3) {
    const x = movedAlong(0, matrix, positions[i], positions[i + 1], positions[i + 2]);
    const y = movedAlong(1, matrix, positions[i], positions[i + 1], positions[i + 2]);
    const square = x * x + y * y;
    if (square > most) [most, at] = [square, i];
  }
  return movePoint(matrix, [positions[at], positions[at + 1], positions[at + 2]]);
}

function farthestOfRound({ x, y, reach }: { x: number; y: number; reach: number }): Vec3 {
  const angle = Math.atan2(y, x);
  return [x + reach * Math.cos(angle), y + reach * Math.sin(angle), 0];
}

function onRim([x, y, z]: Vec3, radius: number): Vec3 {
  const angle = Math.atan2(y, x);
  return [radius * Math.cos(angle), radius * Math.sin(angle), z];
}
