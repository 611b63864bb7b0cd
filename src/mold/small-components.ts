import { boundsOf, midpoint, type Vec3 } from '../geometry/index.ts';
import type { Body, Scope } from '../kernel/index.ts';

/** Pieces under this (mm3) are left out: less than a grain, and below what the gap round a master may be. */
const smallVolume = 0.01;

/** A piece of a half that hangs on nothing: mm3, middle of its box in the bodies' frame. */
export interface LooseComponent {
  readonly volume: number;
  readonly place: Vec3;
}

export interface JoinedHalves {
  readonly lower: Body;
  readonly upper: Body;
  /** Pieces that went over to the other half. */
  readonly joined: number;
  /** Volume left out as small components, mm3. */
  readonly dropped: number;
  /** Pieces neither half holds, left out of both. */
  readonly stuck: readonly LooseComponent[];
}

/**
 * Makes each half one piece after the cut by the parting surface: pieces under 0.01 mm3 are left out, others go over
 * to the other half where they grow onto it. All are tried in one batch. What hangs on neither (a master encloses
 * it) is left out and told. Bodies in one piece come back as they are; what is not needed any more, the bodies given
 * among it, is freed. Throws KernelFault where a half is empty.
 */
export function joinLooseComponents(scope: Scope, lower: Body, upper: Body): JoinedHalves {
  const below = sorted(scope, lower, 'lower half');
  const above = sorted(scope, upper, 'upper half');
  const loose = below.loose.length + above.loose.length;
  const dropped = below.dropped + above.dropped;
  if (loose === 0) return { lower: below.main, upper: above.main, joined: 0, dropped, stuck: [] };
  const grownLower = grow(scope, below.main, above.loose, 'lower half');
  const grownUpper = grow(scope, above.main, below.loose, 'upper half');
  const stuck = [...grownLower.apart, ...grownUpper.apart];
  return {
    lower: grownLower.main,
    upper: grownUpper.main,
    joined: loose - stuck.length,
    dropped,
    stuck: stuck.map((piece) => ({ volume: piece.volume(), place: middleOf(scope, piece) })),
  };
}

interface Sorted {
  readonly main: Body;
  readonly loose: readonly Body[];
  readonly dropped: number;
}

function sorted(scope: Scope, body: Body, what: string): Sorted {
  const pieces = scope.pieces(scope.expectSolid(body, what), what);
  const volumes = pieces.map((piece) => piece.volume());
  const largest = volumes.indexOf(Math.max(...volumes));
  // The kernel takes the wall of an enclosed hole for a piece of negative volume: that belongs to the body round it.
  const others = pieces
    .map((piece, i) => ({ piece, volume: volumes[i] }))
    .filter(({ volume }, i) => i !== largest && volume > 0);
  const loose = others.filter(({ volume }) => volume >= smallVolume);
  const dropped = others.reduce((sum, { volume }) => sum + (volume < smallVolume ? volume : 0), 0);
  const main = without(scope, body, others, pieces[largest], pieces.length, what);
  const kept = [main, ...loose.map(({ piece }) => piece)];
  for (const done of [body, ...pieces]) if (!kept.includes(done)) scope.drop(done);
  return { main, loose: kept.slice(1), dropped };
}

/** The body less its other pieces; `largest` itself where it has no holes that would be lost. */
function without(
  scope: Scope,
  body: Body,
  others: readonly { readonly piece: Body }[],
  largest: Body,
  count: number,
  what: string,
): Body {
  if (others.length === 0) return body;
  const holes = count - 1 - others.length;
  return holes === 0
    ? largest
    : scope.subtract(
        body,
        others.map(({ piece }) => piece),
        what,
      );
}

function grow(
  scope: Scope,
  main: Body,
  loose: readonly Body[],
  what: string,
): { readonly main: Body; readonly apart: readonly Body[] } {
  if (loose.length === 0) return { main, apart: [] };
  const whole = scope.unite([main, ...loose], what);
  for (const done of [main, ...loose]) scope.drop(done);
  const grown = sorted(scope, whole, what);
  return { main: grown.main, apart: grown.loose };
}

function middleOf(scope: Scope, piece: Body): Vec3 {
  const { min, max } = boundsOf(scope.toMesh(piece).positions);
  return midpoint(min, max);
}
