import type { Part } from '../mold/index.ts';
import { leftByCutter } from './cutting/index.ts';
import { canParts, depthGauge, knifeStencil, layoutPlate } from './flat/index.ts';
import { discBlank, halves, patternPlate } from './halves/index.ts';
import { scaledMaster } from './printing/index.ts';
import { bossCups, bosses, notch, registrationJig, tab } from './registration/index.ts';
import { plug, sprueForm } from './sprue/index.ts';
import { buildUp, nest } from './supports/index.ts';

export { judgePrintable, splitToBed } from './printing/index.ts';

/** Every kind of solid the user can ask for. A new kind is one file and one line here. */
export const parts: readonly Part[] = [
  discBlank,
  halves,
  leftByCutter,
  sprueForm,
  plug,
  bosses,
  bossCups,
  tab,
  notch,
  buildUp,
  scaledMaster,
  patternPlate,
  registrationJig,
  canParts,
  depthGauge,
  knifeStencil,
  layoutPlate,
  nest,
];
