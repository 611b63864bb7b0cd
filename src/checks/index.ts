import type { Check } from '../mold/index.ts';
import { balance } from './balance.ts';
import { canClosing } from './can-closing.ts';
import { clearOfBolts } from './clear-of-bolts.ts';
import { closing } from './closing.ts';
import { coverOfCavities, coverOfFixtures } from './cover.ts';
import { coverOfParting, leastCover } from './cover-least.ts';
import { cureReached } from './cure.ts';
import { discInCan } from './disc-in-can.ts';
import { draft } from './draft.ts';
import { cureInhibition, heatOfCure, heatOfPour } from './heat-limits.ts';
import { pack } from './pack.ts';
import { mismatch, play } from './play.ts';
import { pressure } from './pressure.ts';
import { release } from './release.ts';
import { wallsToRim } from './rim.ts';
import { rubberLedger } from './rubber-ledger.ts';
import { spin } from './spin.ts';
import { sprueInHole } from './sprue-in-hole.ts';
import { support } from './support.ts';
import { wallField } from './wall-field.ts';
import { wallsBetweenCavities } from './walls.ts';
import { wallsToBolts, wallsToBosses, wallsToChannels, wallsToTabs, wallsToWell } from './walls-fixtures.ts';

/** Every check, in the order the report shows them. */
export const checks: readonly Check[] = [
  coverOfCavities,
  coverOfFixtures,
  leastCover,
  coverOfParting,
  wallsBetweenCavities,
  wallsToBosses,
  wallsToWell,
  wallsToChannels,
  wallsToTabs,
  wallsToBolts,
  wallsToRim,
  closing,
  play,
  mismatch,
  release,
  draft,
  support,
  canClosing,
  pack,
  rubberLedger,
  cureReached,
  discInCan,
  sprueInHole,
  clearOfBolts,
  heatOfCure,
  heatOfPour,
  cureInhibition,
  balance,
  pressure,
  spin,
];

/** Works that give fields, a number for each vertex: they take longer, and are run where a field is asked for. */
export const fieldChecks: readonly Check[] = [wallField];

// What is asked about one thing alone while it is moved by hand.
export {
  coverOfCavities,
  coverOfFixtures,
  wallsBetweenCavities,
  wallsToBolts,
  wallsToBosses,
  wallsToRim,
  wallsToTabs,
  wallsToWell,
};
