import {
  compose,
  joinMeshes,
  moveMesh,
  type Point2,
  rotation,
  type TriangleMesh,
  translation,
} from '../../geometry/index.ts';
import { nutBore } from '../../tables/index.ts';
import type { Boss, Process } from '../mold.ts';
import {
  bossOutline,
  cornerShare,
  socketMouth,
  socketOutline,
  socketTop,
  topOfHexagon,
} from './boss-outline.ts';
import type { Lump } from './lump.ts';
import { type RevolvedOutline, revolvedMesh, rodMesh } from './revolved.ts';
import type { Space } from './space.ts';

/** Laid in as a body of its own; in rigid and poured halves domes, cones and hexagons are one with the lower half. */
export const isLoose = ({ kind }: Pick<Boss, 'kind'>, process: Process): boolean =>
  process === 'rubber' || kind === 'cap nut';

/** Radius of the circle round a boss's head at the parting plane. */
export const headReach = ({ kind, headRadius }: Pick<Boss, 'kind' | 'headRadius'>): number =>
  kind === 'hexagon' ? headRadius * cornerShare : headRadius;

/** Radius of the circle round a boss, root and head: whichever way a hexagon is turned, it stays within. */
export const bossReach = ({ headRadius, acrossFlats }: Pick<Boss, 'headRadius' | 'acrossFlats'>): number =>
  Math.max(headRadius, (acrossFlats / 2) * cornerShare);

/** Corners of a hexagon of that width across flats about the origin, counter-clockwise, the first on +x. */
export const hexagonCorners = (acrossFlats: number): Point2[] =>
  Array.from({ length: 6 }, (_, k): Point2 => {
    const [reach, angle] = [acrossFlats / Math.sqrt(3), (k * Math.PI) / 3];
    return [reach * Math.cos(angle), reach * Math.sin(angle)];
  });

/**
 * What a boss takes out of the halves: all of it where it is laid in; in rigid and poured halves domes, cones and
 * hexagons are one with the lower half. A rigid socket is higher and wider than its head, a rigid pocket than its nut.
 */
export function bossSpace(boss: Boss, process: Process): Space {
  const depth = isLoose(boss, process) ? boss.rootDepth : 0;
  if (process !== 'rigid') return { depth, height: boss.headHeight, reach: bossReach(boss) };
  const mouth = socketMouth(boss) * (boss.kind === 'hexagon' ? cornerShare : 1);
  return { depth, height: socketTop(boss), reach: depth > 0 ? Math.max(mouth, pocketReach(boss)) : mouth };
}

/** Radius of the circle round the pocket of a cap nut, its clearance square to its walls. */
const pocketReach = (boss: Boss): number => (boss.acrossFlats / 2 + boss.clearance) * cornerShare;

/** Chord error of meshes that distances are measured to, mm. */
const chordError = 0.02;

/** What a boss takes out of the halves as a mesh to measure walls to. */
export const bossMesh = (boss: Boss, process: Process): TriangleMesh =>
  process === 'rigid'
    ? rigidMesh(boss)
    : wholeMesh(isLoose(boss, process) ? boss : { ...boss, rootDepth: 0 });

/** Head as it is turned; root as the cylinder round a nut's hexagon, else as wide as the head. A hexagon exactly. */
function wholeMesh(boss: Boss): TriangleMesh {
  if (boss.kind === 'hexagon') {
    const outline = bossOutline(boss, -boss.rootDepth);
    return moveMesh(
      revolvedMesh(outline, 0, 0, 6),
      compose(translation(boss.x, boss.y, 0), rotation('z', boss.turnRad)),
    );
  }
  const head = revolvedMesh(bossOutline(boss, 0, chordError), boss.x, boss.y);
  if (!(boss.rootDepth > 0)) return head;
  const radius = bossReach(boss);
  const root: RevolvedOutline = [
    [0, -boss.rootDepth],
    [radius, -boss.rootDepth],
    [radius, 0],
    [0, 0],
  ];
  return joinMeshes([revolvedMesh(root, boss.x, boss.y), head]);
}

/** What is cut out of rigid halves for a boss: its socket with lead-in, and of a cap nut the pocket, in the round. */
function rigidMesh(boss: Boss): TriangleMesh {
  const [start, , ...wall] = socketOutline(boss, 0, chordError);
  const sides = boss.kind === 'hexagon' ? 6 : undefined;
  const socket = moveMesh(
    revolvedMesh([start, ...wall], 0, 0, sides),
    compose(translation(boss.x, boss.y, 0), rotation('z', boss.turnRad)),
  );
  if (boss.kind !== 'cap nut') return socket;
  const pocket = { outer: pocketReach(boss), low: -boss.rootDepth, high: 0 };
  return joinMeshes([rodMesh(pocket, boss.x, boss.y), socket]);
}

/** Root and head; of a cap nut the hexagon, collar and half ball (DIN 1587: r = d_k / 2), less the bore. */
export function bossLumps(boss: Boss): Lump[] {
  const { x, y, headRadius: r, headHeight: h, rootDepth: depth } = boss;
  const at = (volume: number, z: number): Lump => ({ volume, x, y, z });
  if (boss.kind === 'hexagon') return hexagonLumps(boss);
  if (boss.kind === 'cone')
    return [at(Math.PI * r * r * depth, -depth / 2), at((Math.PI * r * r * h) / 3, h / 4)];
  const rootArea = boss.kind === 'cap nut' ? (Math.sqrt(3) / 2) * boss.acrossFlats ** 2 : Math.PI * r * r;
  const rise = Math.min(h, r);
  const collar = h - rise;
  const ball = (r * r + rise * rise) / (2 * rise);
  // Cap of height a of a ball R: V = pi a^2 (3 R - a) / 3, centroid 3 (2 R - a)^2 / (4 (3 R - a)) from its center.
  const capVolume = (Math.PI * rise * rise * (3 * ball - rise)) / 3;
  const capCenter = (3 * (2 * ball - rise) ** 2) / (4 * (3 * ball - rise)) - (ball - rise);
  const solid = [
    at(rootArea * depth, -depth / 2),
    at(Math.PI * r * r * collar, collar / 2),
    at(capVolume, collar + capCenter),
  ];
  const bore = boss.kind === 'cap nut' ? nutBore(boss.size) : undefined;
  return bore
    ? [...solid, at((-Math.PI / 4) * bore.diameter ** 2 * bore.depth, bore.depth / 2 - depth)]
    : solid;
}

/** A prism, A = (sqrt 3 / 2) s^2, and a frustum on it from s to t: V = A_s h (s^2 + s t + t^2) / (3 s^2). */
function hexagonLumps(boss: Boss): Lump[] {
  const { x, y, headHeight: h, acrossFlats: s, rootDepth: depth } = boss;
  const t = 2 * topOfHexagon(boss);
  const sum = s * s + s * t + t * t;
  const unit = Math.sqrt(3) / 2;
  return [
    { volume: unit * s * s * depth, x, y, z: -depth / 2 },
    { volume: (unit * h * sum) / 3, x, y, z: (h * (s * s + 2 * s * t + 3 * t * t)) / (4 * sum) },
  ];
}
