import { circumscribed, segmentsFor } from '../../geometry/index.ts';
import type { Body, Scope } from '../../kernel/index.ts';
import {
  type Disc,
  overlap,
  type Sprue,
  shaftOutline,
  soundSprue,
  sprueFormOutline,
  wellOutline,
} from '../../mold/index.ts';
import type { HalfName } from '../making/index.ts';

export interface Around {
  readonly disc: Disc;
  readonly chordError: number;
}

/** The center sprue form in the mold frame, its polygons inscribed. */
export function sprueFormBody(scope: Scope, sprue: Sprue, { disc, chordError }: Around): Body {
  return scope.revolve(
    sprueFormOutline(sprue, disc.upper, chordError),
    segmentsFor(sprue.wellRadius, chordError),
    'sprue form',
  );
}

/**
 * Cutter of the sprue form's place in one half: the well in the lower, the shaft in the upper. Its polygons are
 * circumscribed, so that the opening is nowhere smaller than the plan says.
 * None for a form that cannot be made.
 */
export function sprueOpening(
  scope: Scope,
  side: HalfName,
  { disc, chordError, sprue: wished }: Around & { readonly sprue?: Sprue | undefined },
): Body[] {
  const sprue = soundSprue({ sprue: wished, disc });
  if (!sprue) return [];
  const segments = segmentsFor(sprue.wellRadius, chordError);
  const outline =
    side === 'lower'
      ? wellOutline(sprue, overlap, chordError)
      : shaftOutline(sprue, disc.upper, overlap, chordError);
  const wider = outline.map(([r, z]) => [circumscribed(r, segments), z] as const);
  return [scope.revolve(wider, segments, 'sprue opening')];
}
