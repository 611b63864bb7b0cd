import type { Point2 } from '../geometry/index.ts';
import { angularSpeed, standardGravity } from './spinning.ts';

/**
 * The room in the middle of a mold that metal stands in, turned about the axis: at each radius up to `radius` (mm) it
 * reaches from `floorAt` up to `ceilingAt` (z in mm).
 */
export interface Well {
  readonly radius: number;
  /** Radii at which floor or ceiling have a corner, so that none is missed. */
  readonly corners: readonly number[];
  floorAt(radius: number): number;
  ceilingAt(radius: number): number;
}

/** How fast the free surface rises: z = z0 + rise r^2, omega^2 / 2 g, in 1/mm. */
export const surfaceRise = (speedRpm: number): number =>
  angularSpeed(speedRpm) ** 2 / (2 * standardGravity * 1000);

/**
 * Volume in mm3 of the metal under the free surface z = z0 + rise r^2 of a liquid turning with its vessel (rotating
 * liquid in rigid motion, any text on fluid mechanics). Gauss-Legendre of three points on 200 steps between corners.
 */
export function volumeUnder(well: Well, z0: number, rise: number): number {
  const edges = [...new Set([0, ...well.corners, well.radius])].sort((a, b) => a - b);
  let volume = 0;
  for (let i = 1; i < edges.length; i++) volume += ringVolume(well, z0, rise, edges[i - 1], edges[i]);
  return volume;
}

const steps = 200;
const nodes = [-Math.sqrt(0.6), 0, Math.sqrt(0.6)];
const weights = [5 / 9, 8 / 9, 5 / 9];

function ringVolume(well: Well, z0: number, rise: number, from: number, to: number): number {
  const half = (to - from) / steps / 2;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const middle = from + (2 * i + 1) * half;
    for (let k = 0; k < 3; k++) {
      const r = middle + nodes[k] * half;
      const floor = well.floorAt(r);
      const height = Math.min(well.ceilingAt(r), z0 + rise * r * r) - floor;
      if (height > 0) sum += weights[k] * half * 2 * Math.PI * r * height;
    }
  }
  return sum;
}

/**
 * The height z0 (mm, on the axis, also below the floor) of the free surface under which just `volume` mm3 stand in the
 * well, by halving to 1e-9 mm. More than the well holds gives the height at which it is full.
 */
export function surfaceHeight(well: Well, volume: number, rise: number): number {
  let low = well.floorAt(0) - rise * well.radius ** 2 - 1000;
  let high = well.ceilingAt(0) + 1000;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (volumeUnder(well, middle, rise) < volume) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A flat area and the integral of r^2 over it: all that pressure on it needs. mm2, mm4. */
export interface PressedArea {
  readonly area: number;
  readonly secondMoment: number;
}

/**
 * Area of a triangle seen along the axis and the integral of r^2 over it:
 * A / 12 (|a|^2 + |b|^2 + |c|^2 + |a + b + c|^2), exact. Negative where its corners run clockwise.
 */
export function trianglePressed(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
): PressedArea {
  const area = ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / 2;
  const sum = (ax + bx + cx) ** 2 + (ay + by + cy) ** 2;
  return {
    area,
    secondMoment: (area / 12) * (ax * ax + ay * ay + bx * bx + by * by + cx * cx + cy * cy + sum),
  };
}

/** A ring between two radii. */
export const ringPressed = (from: number, to: number): PressedArea => ({
  area: Math.PI * (to ** 2 - from ** 2),
  secondMoment: (Math.PI / 2) * (to ** 4 - from ** 4),
});

/** A place of a strip's middle line and how wide the strip is there, mm. */
interface StripEnd {
  readonly at: Point2;
  readonly width: number;
}

/**
 * A straight strip from one place to another, its width changing evenly; exact but for its width, w^2 / 12 against r^2.
 * Simpson's rule on what grows by a cube at most.
 */
export function stripPressed(from: StripEnd, to: StripEnd): PressedArea {
  const length = Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]);
  const middle = [(from.at[0] + to.at[0]) / 2, (from.at[1] + to.at[1]) / 2] as const;
  const width = (from.width + to.width) / 2;
  const square = ([x, y]: Point2): number => x * x + y * y;
  const ends = from.width * square(from.at) + to.width * square(to.at);
  return { area: width * length, secondMoment: (length * (ends + 4 * width * square(middle))) / 6 };
}

/**
 * Force in N with which metal pushes the halves apart over an area: the integral of rho omega^2 (r^2 - r_s^2) / 2,
 * with the free surface at `surfaceRadiusSquared` (mm2, in the parting plane).
 */
export const forceApart = (
  { area, secondMoment }: PressedArea,
  densityKgM3: number,
  speedRpm: number,
  surfaceRadiusSquared: number,
): number =>
  (densityKgM3 * angularSpeed(speedRpm) ** 2 * (secondMoment - surfaceRadiusSquared * area) * 1e-12) / 2;
