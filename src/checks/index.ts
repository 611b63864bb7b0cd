import type { Check } from '../mold/index.ts';
import {
  canClosing,
  canWall,
  fitBolts,
  fitCan,
  fitSprue,
  pack,
  rubberBlanks,
  rubberLedger,
  rubberLeftover,
  spew,
} from './can/index.ts';
import { coverOfCavities, coverOfFixtures, coverOfParting, leastCover } from './cover/index.ts';
import { cureInhibition, cureReached, heatOfCure, heatOfPour, superheat } from './heat/index.ts';
import { cost, order, pours, setting } from './pouring/index.ts';
import { closing, mismatch, play } from './registration/index.ts';
import { draft, release, support } from './release/index.ts';
import { balance, flash, plates, pressure, speedBand, spin, squeeze } from './turning/index.ts';
import {
  channelCourse,
  channelsApart,
  channelsOpen,
  channelsOverBuildUps,
  channelsWebs,
  wallsBetweenCavities,
  wallsField,
  wallsToBolts,
  wallsToBosses,
  wallsToChannels,
  wallsToRim,
  wallsToTabs,
  wallsToWell,
} from './walls/index.ts';

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
  channelCourse,
  channelsApart,
  channelsOpen,
  channelsOverBuildUps,
  channelsWebs,
  closing,
  play,
  mismatch,
  release,
  draft,
  support,
  canClosing,
  canWall,
  pack,
  rubberBlanks,
  rubberLedger,
  rubberLeftover,
  spew,
  cureReached,
  fitCan,
  fitSprue,
  fitBolts,
  heatOfCure,
  heatOfPour,
  superheat,
  cureInhibition,
  balance,
  pressure,
  flash,
  squeeze,
  speedBand,
  plates,
  setting,
  pours,
  order,
  cost,
  spin,
];

/** Tasks that give fields, a number for each vertex: they take longer, and are run where a field is asked for. */
export const fieldChecks: readonly Check[] = [wallsField];
