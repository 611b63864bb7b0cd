import type { Point2 } from '../geometry/index.ts';
import type { Shape } from './shape.ts';

/** Where a gate may open into a piece, in the piece's frame: on its outline, and so far within that it is sure to open. */
export interface Mouth {
  readonly entry: Point2;
  readonly within: Point2;
}

/** Pieces of one master. Lengths in mm. */
export interface Kind {
  readonly id: string;
  readonly shape: Shape;
  /** How much larger than the plan's own measures of it. */
  readonly scale: number;
  /** So many have to lie on the disc; `more` than these are laid where there is room. */
  readonly count: number;
  readonly more: number;
  /** What one is worth against others. */
  readonly worth: number;
  /** What one weighs, for the balance, in any unit. */
  readonly weight: number;
  readonly place?: 'inner' | 'outer' | undefined;
  /** How high the parting surface meets it, mm over the plane; left out, 0. */
  readonly level?: number | undefined;
  /** A straight gate to the well, through any one of the mouths. */
  readonly gate?: { readonly width: number; readonly mouths: readonly Mouth[] } | undefined;
  /** Width of a vent straight outward from it. */
  readonly vent?: number | undefined;
}

/** What lies there already, and the walls that pieces and gates keep to it. */
export interface Fixed {
  readonly id: string;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
  readonly turnRad: number;
  readonly limit: number;
  readonly gateLimit: number;
  /** Walls to it grow to the ample ones as those between pieces do. */
  readonly isPiece: boolean;
  readonly level?: number | undefined;
}

/** The disc and the limits on it, mm. */
export interface Ground {
  readonly radius: number;
  readonly rim: number;
  readonly well?: { readonly radius: number; readonly limit: number } | undefined;
  readonly wall: number;
  /** Walls wider than this are of no more use; infinite where they always are. */
  readonly ample: number;
  /** Rubber left between two gates, and how far one may lean from the radius. */
  readonly gateGap: number;
  readonly leanRad: number;
  /** How steep the parting surface may rise from one level to another; left out, levels take no room. */
  readonly slope?: number | undefined;
}

/** Room the parting surface takes between two levels, mm: their difference over the slope. */
export const roomToRise = ({ slope }: Ground, one = 0, other = 0): number =>
  slope === undefined ? 0 : Math.abs(one - other) / slope;

export interface Problem {
  readonly ground: Ground;
  readonly kinds: readonly Kind[];
  readonly fixed: readonly Fixed[];
}

/** So many like pieces evenly round the axis: one place says them all, and they are in balance by themselves. */
export interface Orbit {
  readonly kind: Kind;
  readonly copies: number;
}

/** The pieces as orbits of `fold` copies, what is left over each by itself. */
export const orbitsOf = (kind: Kind, count: number, fold: number): Orbit[] => [
  ...Array.from({ length: Math.floor(count / fold) }, () => ({ kind, copies: fold })),
  ...Array.from({ length: count % fold }, () => ({ kind, copies: 1 })),
];
