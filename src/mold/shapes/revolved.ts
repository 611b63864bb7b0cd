import { circumscribed, defaultChordError, type TriangleMesh } from '../../geometry/index.ts';
import { KernelFault } from '../../kernel/index.ts';

/** A point of a revolved body's outline: distance from its axis and height, mm. */
export type RevolvedPoint = readonly [r: number, z: number];

/** A revolved body's outline in its (r, z) half-plane, counter-clockwise, closed. */
export type RevolvedOutline = readonly RevolvedPoint[];

/** Points of the arc about `center` from one angle to another (rad), both ends included, to a chord error in mm. */
export function arcPoints(
  center: RevolvedPoint,
  radius: number,
  fromRad: number,
  toRad: number,
  chordError = defaultChordError,
): RevolvedPoint[] {
  if (!(radius > 0)) return [center];
  const step = 2 * Math.acos(Math.max(0, 1 - chordError / radius));
  const count = Math.max(1, Math.ceil(Math.abs(toRad - fromRad) / step - 1e-9));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = fromRad + ((toRad - fromRad) * i) / count;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
}

/**
 * The corner of a path rounded by an arc that touches both its edges. Throws KernelFault naming `what` where an edge
 * is too short for it.
 */
export function roundedCorner(
  before: RevolvedPoint,
  corner: RevolvedPoint,
  after: RevolvedPoint,
  radius: number,
  what: string,
  chordError = defaultChordError,
): RevolvedPoint[] {
  if (!(radius > 0)) return [corner];
  const [ux, uy] = direction(corner, before);
  const [vx, vy] = direction(corner, after);
  const half = halfAngle(before, corner, after);
  const tangent = radius / Math.tan(half);
  if (!(radius < mostRounding(before, corner, after))) {
    throw new KernelFault(what, `no room for a fillet of ${radius} mm`);
  }
  const toCenter = radius / Math.sin(half);
  const length = Math.hypot(ux + vx, uy + vy);
  const center = [
    corner[0] + (toCenter * (ux + vx)) / length,
    corner[1] + (toCenter * (uy + vy)) / length,
  ] as const;
  const angleTo = (x: number, y: number): number =>
    Math.atan2(corner[1] + tangent * y - center[1], corner[0] + tangent * x - center[0]);
  const from = angleTo(ux, uy);
  let to = angleTo(vx, vy);
  if (to - from > Math.PI) to -= 2 * Math.PI;
  if (from - to > Math.PI) to += 2 * Math.PI;
  return arcPoints(center, radius, from, to, chordError);
}

/** Half the angle between the two edges of a corner, rad. */
function halfAngle(before: RevolvedPoint, corner: RevolvedPoint, after: RevolvedPoint): number {
  const [ux, uy] = direction(corner, before);
  const [vx, vy] = direction(corner, after);
  return Math.acos(Math.min(1, Math.max(-1, ux * vx + uy * vy))) / 2;
}

/** The radius at which a corner's arc would take up the whole of its shorter edge, mm. */
export function mostRounding(before: RevolvedPoint, corner: RevolvedPoint, after: RevolvedPoint): number {
  const [, , toBefore] = direction(corner, before);
  const [, , toAfter] = direction(corner, after);
  return Math.min(toBefore, toAfter) * Math.tan(halfAngle(before, corner, after));
}

function direction(from: RevolvedPoint, to: RevolvedPoint): readonly [number, number, number] {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length, length];
}

/** Volume (mm3) of what an outline leaves when it is turned: V = pi times the integral of r^2 dz round it. */
export const turnedVolume = (outline: RevolvedOutline): number =>
  outline.reduce((sum, [r, z], i) => {
    const [next, above] = outline[(i + 1) % outline.length];
    return sum + (Math.PI / 3) * (r * r + r * next + next * next) * (above - z);
  }, 0);

/** From the foot (a, z) up to the axis (0, z + h). */
export function capPoints(a: number, h: number, z: number, chordError: number): RevolvedPoint[] {
  const radius = (a * a + h * h) / (2 * h);
  const centerZ = z + h - radius;
  const inner = arcPoints([0, centerZ], radius, Math.asin((radius - h) / radius), Math.PI / 2, chordError);
  return [[a, z], ...inner.slice(1, -1), [0, z + h]];
}

/** Sides of the polygon drawn round a turned body: it stands out by 0.2 % of the radius, 0.03 mm on 12 mm. */
const fewSides = 48;

/**
 * A closed mesh round a turned body about the axis at (x, y): its polygons stand outside the circles, so distances
 * from it are a hair too small and never too great.
 */
export function revolvedMesh(outline: RevolvedOutline, x: number, y: number, sides = fewSides): TriangleMesh {
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

/** A round rod, or a ring where it has an inner radius, through z from low to high; outside the true round on all sides. */
export function rodMesh(
  { inner = 0, outer, low, high }: Record<'outer' | 'low' | 'high', number> & { readonly inner?: number },
  x: number,
  y: number,
): TriangleMesh {
  // A wide ring has more sides, so that they leave its round no more than those of a rod do.
  const sides = inner > 0 ? 720 : fewSides;
  const within = inner * Math.cos(Math.PI / sides);
  const outline: RevolvedOutline = [
    [within, low],
    [outer, low],
    [outer, high],
    [within, high],
  ];
  return revolvedMesh(outline, x, y, sides);
}
