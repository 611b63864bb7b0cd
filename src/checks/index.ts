import type { Check } from '../mold/index.ts';
import { balance } from './balance.ts';
import { canClosing } from './can-closing.ts';
import { clearOfBolts, discInCan, sprueInHole } from './can-fit.ts';
import { closing } from './closing.ts';
import { coverOfCavities, coverOfFixtures, leastCover } from './cover.ts';
import { cureReached } from './cure.ts';
import { draft } from './draft.ts';
import { cureInhibition, heatOfCure, heatOfPour } from './heat-limits.ts';
import { mismatch, play } from './play.ts';
import { release } from './release.ts';
import { wallsToRim } from './rim.ts';
import { support } from './support.ts';
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
  release,
  draft,
  support,
  canClosing,
  cureReached,
  discInCan,
  sprueInHole,
  clearOfBolts,
  heatOfCure,
  heatOfPour,
  cureInhibition,
  balance,
];
