import {
  circumscribed,
  compose,
  joinMeshes,
  moveMesh,
  rotation,
  type TriangleMesh,
  translation,
} from '../kernel/index.ts';
import {
  type Boss,
  bossOutline,
  bossReach,
  cornerShare,
  type Sprue,
  socketOutline,
  sprueFormOutline,
  type TurnedOutline,
} from '../mold/index.ts';

/** Sides of the polygon drawn round a turned body: it stands out by 0.2 % of the radius, 0.03 mm on 12 mm. */
const fewSides = 48;
const chordError = 0.02;

/**
 * A closed mesh round a turned body about the axis at (x, y): its polygons stand outside the circles, so distances
 * from it are a hair too small and never too great.
 */
function turnedMesh(outline: TurnedOutline, x: number, y: number, sides = fewSides): TriangleMesh {
  const positions: number[] = [];
  const first = outline.map(([r, z]) => {
    const at = positions.length / 3;
    const round = circumscribed(r, sides);
    for (let k = 0; k < (r === 0 ? 1 : sides); k++) {
      const angle = (2 * Math.PI * k) / sides;
      positions.push(x + round * Math.cos(angle), y + round * Math.sin(angle), z);
    }
    return at;
  });
  const triangles: number[] = [];
  const vertex = (row: number, k: number): number => first[row] + (outline[row][0] === 0 ? 0 : k % sides);
  for (let i = 0; i < outline.length; i++) {
    const j = (i + 1) % outline.length;
    for (let k = 0; k < sides; k++) {
      if (outline[i][0] !== 0) triangles.push(vertex(i, k), vertex(i, k + 1), vertex(j, k));
      if (outline[j][0] !== 0) triangles.push(vertex(i, k + 1), vertex(j, k + 1), vertex(j, k));
    }
  }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Head as it is turned; root as the cylinder round a nut's hexagon, else as wide as the head. A hexagon exactly. */
export function bossMesh(boss: Boss): TriangleMesh {
  if (boss.kind === 'hexagon') {
    const outline = bossOutline(boss, -boss.rootDepth);
    return moveMesh(
      turnedMesh(outline, 0, 0, 6),
      compose(translation(boss.x, boss.y, 0), rotation('z', boss.turnRad)),
    );
  }
  const head = turnedMesh(bossOutline(boss, 0, chordError), boss.x, boss.y);
  if (!(boss.rootDepth > 0)) return head;
  const radius = bossReach(boss);
  const root: TurnedOutline = [
    [0, -boss.rootDepth],
    [radius, -boss.rootDepth],
    [radius, 0],
    [0, 0],
  ];
  return joinMeshes([turnedMesh(root, boss.x, boss.y), head]);
}

/** What is cut out of rigid halves for a boss: its socket with lead-in, and of a cap nut the pocket, in the round. */
export function bossSpaceMesh(boss: Boss): TriangleMesh {
  const [start, , ...wall] = socketOutline(boss, 0, chordError);
  const hexagon = boss.kind === 'hexagon';
  const socket = moveMesh(
    turnedMesh([start, ...wall], 0, 0, hexagon ? 6 : fewSides),
    compose(translation(boss.x, boss.y, 0), rotation('z', boss.turnRad)),
  );
  if (boss.kind !== 'cap nut') return socket;
  const reach = bossReach(boss) + boss.clearance * cornerShare;
  return joinMeshes([rodMesh({ outer: reach, low: -boss.rootDepth, high: 0 }, boss.x, boss.y), socket]);
}

/** Well and pouring hole in one. Throws KernelFault where the sprue's numbers leave no such body. */
export const sprueMesh = (sprue: Sprue, upper: number): TriangleMesh =>
  turnedMesh(sprueFormOutline(sprue, upper, chordError), 0, 0);

/** A round rod, or a ring where it has an inner radius, through z from low to high; outside the true round on all sides. */
export function rodMesh(
  { inner = 0, outer, low, high }: Record<'outer' | 'low' | 'high', number> & { readonly inner?: number },
  x: number,
  y: number,
): TriangleMesh {
  // A wide ring has more sides, so that they leave its round no more than those of a rod do.
  const sides = inner > 0 ? 720 : fewSides;
  const within = inner * Math.cos(Math.PI / sides);
  const outline: TurnedOutline = [
    [within, low],
    [outer, low],
    [outer, high],
    [within, high],
  ];
  return turnedMesh(outline, x, y, sides);
}
