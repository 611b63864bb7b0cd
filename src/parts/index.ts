import type { Part } from '../mold/index.ts';
import { bossCups } from './boss-cups.ts';
import { bosses } from './bosses.ts';
import { buildUp } from './build-up.ts';
import { canParts } from './can-parts.ts';
import { depthGauge } from './depth-gauge.ts';
import { discBlank } from './disc-blank.ts';
import { halves } from './halves.ts';
import { knifeStencil } from './knife-stencil.ts';
import { layoutPlate } from './layout-plate.ts';
import { leftByCutter } from './left-by-cutter.ts';
import { nest } from './nest.ts';
import { notch } from './notch.ts';
import { patternPlate } from './pattern-plate.ts';
import { plug } from './plug.ts';
import { registrationJig } from './registration-jig.ts';
import { scaledMaster } from './scaled-master.ts';
import { sprueForm } from './sprue-form.ts';
import { tab } from './tab.ts';

export { judgePrintable } from './printable.ts';
export { splitToBed } from './split-to-bed.ts';

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
