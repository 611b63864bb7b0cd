import type { Check } from '../mold/index.ts';
import { canClosing } from './can-closing.ts';
import { closing } from './closing.ts';
import { coverOfCavities, coverOfFixtures, leastCover } from './cover.ts';
import { mismatch, play } from './play.ts';
import { wallsToRim } from './rim.ts';
import { wallsBetweenCavities, wallsToBosses, wallsToWell } from './walls.ts';

/** Every check, in the order the report shows them. */
export const checks: readonly Check[] = [
  coverOfCavities,
  coverOfFixtures,
  leastCover,
  wallsBetweenCavities,
  wallsToBosses,
  wallsToWell,
  wallsToRim,
  closing,
  play,
  mismatch,
  canClosing,
];
