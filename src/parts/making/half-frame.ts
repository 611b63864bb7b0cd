import { compose, type Matrix4, translation, upsideDown } from '../../geometry/index.ts';
import type { Disc } from '../../mold/index.ts';

export type HalfName = 'lower' | 'upper';

export const halfNames: readonly HalfName[] = ['lower', 'upper'];

/** Resting on the outer face, parting face up: the lower half as it lies, the upper half turned over. */
export const halfToPrint = (half: HalfName, disc: Disc): Matrix4 =>
  half === 'lower' ? translation(0, 0, disc.lower) : compose(translation(0, 0, disc.upper), upsideDown);

/**
 * Brings what is drawn on the outer face as a reader of that face sees it (x right, y up, z out of the face, face at
 * z = 0) to the mold frame. The lower face is read from below.
 */
export const fromOuterFace = (half: HalfName, disc: Disc): Matrix4 =>
  half === 'lower' ? compose(translation(0, 0, -disc.lower), upsideDown) : translation(0, 0, disc.upper);
