import { type Body, circumscribed, type Scope, segmentsFor } from '../kernel/index.ts';
import { type Disc, type Sprue, sprueFormOutline } from '../mold/index.ts';

/**
 * The center sprue form in the mold frame. As a `pin` its polygons are inscribed; as a `hole` circumscribed, so that
 * the opening is nowhere smaller than the plan says, and it stands out of the upper face even without a grip.
 */
export function sprueFormBody(
  scope: Scope,
  sprue: Sprue,
  { disc, chordError }: { readonly disc: Disc; readonly chordError: number },
  as: 'pin' | 'hole',
): Body {
  const segments = segmentsFor(sprue.wellRadius, chordError);
  if (as === 'pin') {
    return scope.revolve(sprueFormOutline(sprue, disc.upper, chordError), segments, 'sprue form');
  }
  const outline = sprueFormOutline({ ...sprue, grip: Math.max(sprue.grip, 1) }, disc.upper, chordError);
  const wider = outline.map(([r, z]) => [circumscribed(r, segments), z] as const);
  return scope.revolve(wider, segments, 'sprue opening');
}
