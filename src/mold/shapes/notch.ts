import {
  defaultChordError,
  moveMesh,
  type Point2,
  rotation,
  type TriangleMesh,
  type Vec3,
} from '../../geometry/index.ts';
import type { Disc, Notch } from '../mold.ts';
import { lofted } from './lofted.ts';
import { bandBeyond, type Lump, polar } from './lump.ts';
import { arcPoints } from './revolved.ts';

/** Radius of a notch's root as a share of its depth: rubber tears from a sharp one. Common practice, no published source. */
const rootShare = 0.25;

/**
 * A notch seen from above at angle 0, x outward from the disc's axis, mm: its mouth is the chord at x = `outer` of the
 * rim, its root an arc of `rootRadius` about (tip + rootRadius, 0) that both flanks touch, `touchRad` round from +x.
 */
export interface NotchShape {
  readonly tip: number;
  readonly outer: number;
  readonly halfMouth: number;
  readonly rootRadius: number;
  readonly touchRad: number;
}

/** Undefined where the chord of its width lies inside its depth: there is no such notch. */
export function notchShape(
  { width, depth }: Pick<Notch, 'width' | 'depth'>,
  radius: number,
): NotchShape | undefined {
  const outer = Math.sqrt(Math.max(0, radius ** 2 - (width / 2) ** 2));
  const tip = radius - depth;
  const deep = outer - tip;
  if (!(deep > 0 && depth < radius)) return undefined;
  // No wider than the mouth, or the flanks would lean inward.
  const rootRadius = Math.min(rootShare * deep, width / 2);
  const [ahead, aside] = [deep - rootRadius, width / 2];
  const touchRad = Math.atan2(aside, ahead) + Math.acos(rootRadius / Math.hypot(ahead, aside));
  return { tip, outer, halfMouth: width / 2, rootRadius, touchRad };
}

/** Its outline, counter-clockwise; the flanks go on straight to `beyond` mm past the mouth. */
export function notchOutline(
  { tip, outer, halfMouth, rootRadius, touchRad }: NotchShape,
  beyond = 0,
  chordError = defaultChordError,
): (readonly [number, number])[] {
  // In two halves, so that its deepest point is a corner.
  const root = [
    [touchRad, Math.PI],
    [Math.PI, 2 * Math.PI - touchRad],
  ].flatMap(([from, to], half) =>
    arcPoints([tip + rootRadius, 0], rootRadius, from, to, chordError).slice(half),
  );
  const [x, y] = root[0];
  const half = halfMouth + (beyond * (halfMouth - y)) / (outer - x);
  return [[outer + beyond, -half], [outer + beyond, half], ...root];
}

/** Its outline seen from above, mold frame; nothing where its width leaves no such notch. */
export function notchCorners(notch: Notch, discRadius: number): Point2[] {
  const shape = notchShape(notch, discRadius);
  const [c, s] = [Math.cos(notch.angleRad), Math.sin(notch.angleRad)];
  return shape ? notchOutline(shape).map(([x, y]): Point2 => [x * c - y * s, x * s + y * c]) : [];
}

/** A notch through both halves, its mouth on the rim; undefined where its width leaves no such notch. */
export function notchMesh(
  notch: Notch,
  { radius, lower, upper }: Pick<Disc, 'radius' | 'lower' | 'upper'>,
): TriangleMesh | undefined {
  const shape = notchShape(notch, radius);
  if (!shape) return undefined;
  const outline = notchOutline(shape);
  const section = (z: number): Vec3[] => outline.map(([x, y]) => [x, y, z]);
  return moveMesh(lofted([section(-lower), section(upper)]), rotation('z', notch.angleRad));
}

/** A V with its rounded root through both halves, and the sliver between its chord and the rim. */
export function notchLumps(
  notch: Notch,
  { radius, lower, upper }: Pick<Disc, 'radius' | 'lower' | 'upper'>,
): Lump[] {
  const shape = notchShape(notch, radius);
  if (!shape) return [];
  const parts = [
    ...notchAreas(shape),
    { area: bandBeyond(radius, notch.width, shape.outer), x: (shape.outer + radius) / 2 },
  ];
  const area = parts.reduce((sum, part) => sum + part.area, 0);
  const center = parts.reduce((sum, part) => sum + part.area * part.x, 0) / area;
  return [{ volume: area * (lower + upper), ...polar(center, notch.angleRad), z: (upper - lower) / 2 }];
}

/**
 * Areas and centroids about the root's middle: the sector that is the root (centroid 2 r sin(a) / (3 a) from it), a
 * right triangle to where each flank touches it, and the triangle to the mouth.
 */
function notchAreas({ tip, outer, halfMouth, rootRadius: r, touchRad }: NotchShape) {
  const middle = tip + r;
  const half = Math.PI - touchRad;
  const flank = Math.sqrt((outer - middle) ** 2 + halfMouth ** 2 - r ** 2);
  return [
    { area: half * r ** 2, x: middle - (2 * r * Math.sin(half)) / (3 * half) },
    { area: r * flank, x: (middle + (middle + r * Math.cos(touchRad)) + outer) / 3 },
    { area: halfMouth * (outer - middle), x: (middle + 2 * outer) / 3 },
  ];
}
