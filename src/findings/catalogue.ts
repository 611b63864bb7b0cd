import { arrangeCodes } from './codes/arrange.ts';
import { batchCodes } from './codes/batch.ts';
import { canCodes } from './codes/can.ts';
import { channelCodes } from './codes/channels.ts';
import { checkCodes } from './codes/checks.ts';
import type { CodeEntry } from './codes/entry.ts';
import { fillCodes } from './codes/fill.ts';
import { fitCodes } from './codes/fit.ts';
import { flatCodes } from './codes/flat.ts';
import { heatCodes } from './codes/heat.ts';
import { layoutCodes } from './codes/layout.ts';
import { makingCodes } from './codes/making.ts';
import { meshCodes } from './codes/mesh.ts';
import { moldCodes } from './codes/mold.ts';
import { orderCodes } from './codes/order.ts';
import { outlineCodes } from './codes/outline.ts';
import { packageCodes } from './codes/package.ts';
import { pinCodes } from './codes/pins.ts';
import { planCodes } from './codes/plan.ts';
import { pouringCodes } from './codes/pouring.ts';
import { releaseCodes } from './codes/release.ts';
import { repairCodes } from './codes/repair.ts';
import { sizeCodes } from './codes/sizes.ts';
import { solidCodes } from './codes/solids.ts';
import { trialCodes } from './codes/trials.ts';
import { turningCodes } from './codes/turning.ts';

/** Every code the program can report, by the room that reports it. */
export const catalogue = {
  ...planCodes,
  ...meshCodes,
  ...packageCodes,
  ...outlineCodes,
  ...repairCodes,
  ...layoutCodes,
  ...moldCodes,
  ...sizeCodes,
  ...solidCodes,
  ...checkCodes,
  ...arrangeCodes,
  ...channelCodes,
  ...pinCodes,
  ...releaseCodes,
  ...canCodes,
  ...turningCodes,
  ...pouringCodes,
  ...orderCodes,
  ...heatCodes,
  ...fillCodes,
  ...fitCodes,
  ...makingCodes,
  ...flatCodes,
  ...trialCodes,
  ...batchCodes,
} as const satisfies Record<string, CodeEntry>;

export type FindingCode = keyof typeof catalogue;

/** What is known of a code beforehand. */
export const entryOf = (code: FindingCode): CodeEntry => catalogue[code];
