import type { Point2 } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import type { Side } from '../../mold/index.ts';
import { footLevel } from './build-up-mark.ts';

/** Points nearer than this to the line between their neighbors are left out, mm. */
const drawnTo = 0.01;

/** What one build-up stands on: its number as it is engraved, its side of the plane, and its outlines, mold frame. */
export interface Foot {
  readonly words: string;
  readonly side: Side;
  /** Counter-clockwise, hollows clockwise. */
  readonly rings: readonly (readonly Point2[])[];
}

/** Under what name feet are remembered; the build-ups themselves find them first. */
export const feetOf = 'feet of build-ups';

/** A build-up's foot, cut just off the plane it stands on: its sides lean inward from there. */
export const footOf = (
  scope: Scope,
  { body, side }: { readonly body: Body; readonly side: Side },
  words: string,
): Foot => ({
  words,
  side,
  rings: scope
    .outlinesOf(scope.inset(scope.slice(body, side * footLevel), 0, drawnTo))
    .map((ring) => ring.map(([x, y]): Point2 => [x, y])),
});
